/**
 * What a page of a PDF paints, as far as flat colours go: for tests that measure what was printed.
 *
 * Source of the operators and their order: ISO 32000-1:2008, 8.4 and 8.5 (from memory). Clips, text and pictures are left out.
 *
 * @packageDocumentation
 */
import {
  decodePDFRawStream,
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFName,
  PDFNumber,
  type PDFPage,
  PDFRawStream,
} from 'pdf-lib';

type Matrix = readonly [number, number, number, number, number, number];
type Point = readonly [x: number, y: number];

/** One painted path; x to the right and y down from the paper's left top corner, mm. */
export interface Painted {
  readonly subpaths: readonly (readonly Point[])[];
  /** `#rrggbb` */
  readonly colour: string;
  /** Of a line: its width, mm. */
  readonly lineMm?: number;
}

export interface PaintedPage {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly paths: readonly Painted[];
}

const MM = 25.4 / 72;

/** The pages of a PDF, each with what it paints, the first thing first. */
export async function paintedPages(pdf: Uint8Array): Promise<readonly PaintedPage[]> {
  return (await PDFDocument.load(pdf)).getPages().map(paintedPage);
}

/** A page as an SVG of its own, `perMm` pixels to the millimetre. */
export function paintedSvg({ widthMm, heightMm, paths }: PaintedPage, perMm: number): string {
  const drawn = paths.map(({ subpaths, colour, lineMm }) => {
    const closed = lineMm === undefined ? 'z' : '';
    const d = subpaths.map((points) => `M${points.map((point) => point.join(' ')).join('L')}${closed}`).join('');
    return lineMm === undefined
      ? `<path d="${d}" fill="${colour}"/>`
      : `<path d="${d}" fill="none" stroke="${colour}" stroke-width="${lineMm}"/>`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${widthMm * perMm}" height="${heightMm * perMm}" viewBox="0 0 ${widthMm} ${heightMm}">${drawn.join('')}</svg>`;
}

function paintedPage(page: PDFPage): PaintedPage {
  const { width, height } = page.getSize();
  const paths: Painted[] = [];
  const contents = page.node.Contents();
  const streams =
    contents instanceof PDFArray ? contents.asArray().map((each) => page.doc.context.lookup(each)) : [contents];
  const text = streams.map((stream) => (stream instanceof PDFRawStream ? textOf(stream) : '')).join('\n');
  const toPaper: Matrix = [MM, 0, 0, -MM, 0, height * MM];
  paint(text, page.node.Resources(), toPaper, paths);
  return { widthMm: width * MM, heightMm: height * MM, paths };
}

function textOf(stream: PDFRawStream): string {
  return Buffer.from(decodePDFRawStream(stream).decode()).toString('latin1');
}

interface State {
  readonly at: Matrix;
  readonly fill: string;
  readonly stroke: string;
  readonly line: number;
}

/** The matrix that does first one and then the other. */
function after([a, b, c, d, e, f]: Matrix, [A, B, C, D, E, F]: Matrix): Matrix {
  return [a * A + b * C, a * B + b * D, c * A + d * C, c * B + d * D, e * A + f * C + E, e * B + f * D + F];
}

function hex(parts: readonly number[]): string {
  const three = parts.length === 1 ? [parts[0]!, parts[0]!, parts[0]!] : parts;
  return `#${three
    .map((part) =>
      Math.round(part * 255)
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;
}

/** Strings, names, operators and numbers of a content stream; dictionaries and lists come as their signs. */
const TOKEN = /\((?:\\.|[^\\)])*\)|<<|>>|<[0-9a-fA-F\s]*>|[[\]]|\/[^\s/[\]<>()]*|[^\s/[\]<>()]+/g;

function paint(text: string, resources: PDFDict | undefined, start: Matrix, paths: Painted[]): void {
  let state: State = { at: start, fill: '#000000', stroke: '#000000', line: 1 };
  const saved: State[] = [];
  let subpaths: Point[][] = [];
  let operands: (number | string)[] = [];
  const point = (x: number, y: number): Point => {
    const [a, b, c, d, e, f] = state.at;
    return [a * x + c * y + e, b * x + d * y + f];
  };
  const finish = (colour?: string, lineMm?: number): void => {
    if (colour !== undefined && subpaths.length > 0)
      paths.push({ subpaths, colour, ...(lineMm === undefined ? {} : { lineMm }) });
    subpaths = [];
  };
  const lineMm = (): number => state.line * Math.sqrt(Math.abs(state.at[0] * state.at[3] - state.at[1] * state.at[2]));
  const operators: Readonly<Record<string, (numbers: readonly number[]) => void>> = {
    q: () => saved.push(state),
    Q: () => {
      state = saved.pop() ?? state;
    },
    cm: (matrix) => {
      state = { ...state, at: after(matrix as unknown as Matrix, state.at) };
    },
    w: ([line]) => {
      state = { ...state, line: line! };
    },
    rg: (parts) => {
      state = { ...state, fill: hex(parts) };
    },
    g: (parts) => {
      state = { ...state, fill: hex(parts) };
    },
    RG: (parts) => {
      state = { ...state, stroke: hex(parts) };
    },
    G: (parts) => {
      state = { ...state, stroke: hex(parts) };
    },
    m: ([x, y]) => subpaths.push([point(x!, y!)]),
    l: ([x, y]) => subpaths.at(-1)?.push(point(x!, y!)),
    c: ([, , , , x, y]) => subpaths.at(-1)?.push(point(x!, y!)),
    re: ([x, y, width, height]) =>
      subpaths.push([point(x!, y!), point(x! + width!, y!), point(x! + width!, y! + height!), point(x!, y! + height!)]),
    f: () => finish(state.fill),
    F: () => finish(state.fill),
    'f*': () => finish(state.fill),
    S: () => finish(state.stroke, lineMm()),
    s: () => finish(state.stroke, lineMm()),
    n: () => finish(),
  };
  for (const [token] of text.matchAll(TOKEN)) {
    if (/^[+-]?(?:\d|\.\d)/.test(token)) operands.push(Number(token));
    else if (/^[[\]<>(/]/.test(token)) operands.push(token);
    else {
      const name = String(operands.at(-1)).slice(1);
      if (token === 'Do') paintForm(name, resources, state.at, paths);
      else if (token === 'gs') state = { ...state, line: lineOf(name, resources) ?? state.line };
      else operators[token]?.(operands.filter((each) => typeof each === 'number'));
      operands = [];
    }
  }
}

/** How wide lines are by a graphics state that has a name. */
function lineOf(name: string, resources: PDFDict | undefined): number | undefined {
  const states = resources?.lookupMaybe(PDFName.of('ExtGState'), PDFDict);
  return states?.lookupMaybe(PDFName.of(name), PDFDict)?.lookupMaybe(PDFName.of('LW'), PDFNumber)?.asNumber();
}

/** A part of the page that is kept as a stream of its own. */
function paintForm(name: string, resources: PDFDict | undefined, at: Matrix, paths: Painted[]): void {
  const form = resources?.lookupMaybe(PDFName.of('XObject'), PDFDict)?.lookup(PDFName.of(name));
  if (!(form instanceof PDFRawStream) || form.dict.lookup(PDFName.of('Subtype')) !== PDFName.of('Form')) return;
  const matrix = form.dict.lookupMaybe(PDFName.of('Matrix'), PDFArray)?.asArray();
  const own = matrix?.map((each) => (each instanceof PDFNumber ? each.asNumber() : 0)) as unknown as Matrix | undefined;
  const inner = form.dict.lookupMaybe(PDFName.of('Resources'), PDFDict) ?? resources;
  paint(textOf(form), inner, own === undefined ? at : after(own, at), paths);
}
