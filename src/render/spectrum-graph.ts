import { type Html, html } from './html.ts';

/** One line of a graph over wavelength. */
export interface GraphLine {
  readonly name: string;
  readonly values: readonly number[];
  readonly mark: 'solid' | 'dashed' | 'dotted' | 'dash-dot';
}

/** Between what a line may be. */
export interface GraphBand {
  readonly low: readonly number[];
  readonly high: readonly number[];
  /** A narrow one is darker, and may lie in a wide one. */
  readonly mark: 'wide' | 'narrow';
}

export interface SpectrumGraph {
  /** Beginning of the ids in the drawing; one that the page has once. */
  readonly id: string;
  readonly title: string;
  /** What the lines show, for those who don't see them. */
  readonly description: string;
  /** nm, as many as each line has values. Unset: the bands of the book, 380 to 730 nm by 10. */
  readonly wavelengths?: readonly number[];
  readonly lines: readonly GraphLine[];
  /** Drawn behind the lines, in their order. */
  readonly bands?: readonly GraphBand[];
  /** Unit of the lines; the scale ends at the next round number above them. Unset: shares, and the scale ends at 1. */
  readonly unit?: string;
  /** What 1 means, where the lines are shares. */
  readonly whole?: string;
  readonly height?: number;
}

const WIDTH = 330;
const LEFT = 6;
const RIGHT = 70;
const FOOT = 34;
const HEAD = 20;
const NAME_STEP = 15;
const [FIRST, LAST] = [380, 730];
const TICKS: readonly (readonly [nm: number, colour: string])[] = [
  [400, 'violet'],
  [500, 'green'],
  [600, 'orange'],
  [700, 'red'],
];

/** A place in a drawing: to a tenth, which nobody sees. */
export const fixed = (value: number): string => value.toFixed(1).replace(/\.0$/, '');

/** The next number of 1, 2, 5, 10, … that is not below a value. */
export function roundTop(value: number): number {
  if (!(value > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(value));
  return ([1, 2, 5, 10].find((step) => step * power >= value * (1 - 1e-9)) ?? 10) * power;
}

/** Places for names, in their order from the top, none nearer to the next than a line of text. */
function placed(heights: readonly number[], lowest: number): readonly number[] {
  const order = heights.map((_, index) => index).sort((one, other) => heights[one]! - heights[other]!);
  const places = [...heights];
  let above = Number.NEGATIVE_INFINITY;
  for (const index of order) {
    places[index] = Math.max(places[index]!, above + NAME_STEP);
    above = places[index]!;
  }
  const overflow = Math.max(0, above - lowest);
  return overflow === 0 ? places : places.map((place) => place - overflow);
}

/** Lines over wavelength with their names at their ends: no colours, so that it reads in grey, on paper and in the dark. */
export function spectrumGraph(graph: SpectrumGraph): Html {
  const { id, title, description, lines, bands = [], unit, whole = '', height = 200 } = graph;
  const wavelengths = graph.wavelengths ?? Array.from({ length: 36 }, (_, band) => FIRST + 10 * band);
  const top = unit === undefined ? 1 : roundTop(Math.max(...lines.flatMap(({ values }) => values)));
  const scale = unit === undefined ? whole : `${Number(top.toPrecision(3))} ${unit}`;
  const foot = height - FOOT;
  const x = (nm: number): number => LEFT + ((WIDTH - LEFT - RIGHT) * (nm - FIRST)) / (LAST - FIRST);
  const y = (value: number): number => foot - ((foot - HEAD) * Math.min(value, top)) / top;
  const point = (value: number, at: number): string => `${fixed(x(wavelengths[at]!))},${fixed(y(value))}`;
  const names = placed(
    lines.map(({ values }) => y(values.at(-1)!)),
    foot,
  );
  return html`<svg class="graph" role="img" aria-labelledby="${id}-title ${id}-desc" viewBox="0 0 ${WIDTH} ${height}" width="${WIDTH}" height="${height}"><title id="${id}-title">${title}</title><desc id="${id}-desc">${description}</desc>
<path class="graph-top" d="M${LEFT} ${HEAD}H${WIDTH - RIGHT}"/><text class="graph-scale" x="${LEFT}" y="${HEAD - 6}">${scale}</text><path class="graph-foot" d="M${LEFT} ${foot}H${WIDTH - RIGHT}"/>
${TICKS.map(([nm, colour]) => html`<path class="graph-tick" d="M${fixed(x(nm))} ${foot}v5"/><text class="graph-scale" x="${fixed(x(nm))}" y="${foot + 17}" text-anchor="middle">${nm}</text><text class="graph-scale" x="${fixed(x(nm))}" y="${foot + 30}" text-anchor="middle">${colour}</text>`)}
${bands.map(({ low, high, mark }) => html`<polygon class="graph-band ${mark}" points="${[...high.map(point), ...low.map(point).reverse()].join(' ')}"/>`)}${lines.map(({ name, values, mark }, index) => html`<polyline class="graph-line ${mark}" points="${values.map(point).join(' ')}"/><text class="graph-name" x="${WIDTH - RIGHT + 6}" y="${fixed(names[index]! + 4)}">${name}</text>`)}</svg>`;
}
