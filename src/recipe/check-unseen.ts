import { type Document, type Scalar, visit } from 'yaml';
import type { Diagnostic, Position } from '../diagnostics/diagnostic.ts';
import { codeOf, type UnseenSign, unseenSigns, withoutUnseen } from './unseen-signs.ts';

/** The parts of a file in which signs are looked for. */
export interface SearchedFile {
  readonly path: string;
  readonly text: string;
  readonly document: Document.Parsed;
  /** Where the YAML begins and ends in the text, in UTF-16 units. */
  readonly yamlAt: number;
  readonly yamlTo: number;
  position(offset: number): Position;
}

const WHY: Readonly<Record<UnseenSign['kind'], string>> = {
  control: 'it is an order to a machine, and no page may hold it',
  turning: 'it turns the letters beside it round, so a reader sees something else than you wrote',
  invisible: 'nobody sees it, and a search does not find the word that it is in',
};

// Of more, which value each stands in is not looked for.
const MOST_SIGNS = 200;

// Longer ones are not told in a line.
const LONGEST_EDIT = 100;

// What Markdown makes of `&#8238;`.
const ENTITY = /&#(?:x([0-9a-f]{1,6})|([0-9]{1,7}));/gi;

/**
 * Signs that nobody sees, or that turn others round, in the names and values of the front matter, its comments and the notes: of each value
 * and of the notes the first, with how many there are.
 */
export function unseenIn({ path, text, document, yamlAt, yamlTo, position }: SearchedFile): readonly Diagnostic[] {
  const found: Diagnostic[] = [];
  const tell = (at: number, signs: readonly UnseenSign[], fix: string): void => {
    const [first] = signs;
    if (first === undefined) return;
    const code = `${first.kind} sign ${codeOf(first.sign)}`;
    found.push({
      code: 'file/unseen-sign',
      severity: 'error',
      file: path,
      start: position(at),
      found: signs.length === 1 ? code : `${code}, the first of ${signs.length} such signs`,
      expected: 'signs that are seen',
      why: WHY[first.kind],
      fix,
    });
  };

  const inFile = unseenSigns(text);
  const inYaml = inFile.filter(({ at }) => at >= yamlAt && at < yamlTo);
  if (inYaml.length > MOST_SIGNS) {
    tell(inYaml[0]!.at, inYaml, 'remove them');
    return found;
  }
  const told = new Set<UnseenSign>();
  visit(document, {
    Scalar: (_key, node) => {
      const value = textOf(node);
      const signs = unseenSigns(value);
      const [from, to] = node.range ?? [0, 0];
      const raw = inYaml.filter(({ at }) => at >= yamlAt + from && at < yamlAt + to);
      for (const each of raw) told.add(each);
      const mended = withoutUnseen(value).trim();
      const fix =
        mended === ''
          ? 'write a text that can be read'
          : mended.length > LONGEST_EDIT || /[\n"\\]/.test(mended)
            ? 'remove it'
            : `write \`${mended}\``;
      tell(raw[0]?.at ?? yamlAt + from, raw.length > 0 ? raw : signs, fix);
    },
  });
  for (const sign of inYaml) if (!told.has(sign)) tell(sign.at, [sign], 'remove it');

  const body = inFile.filter(({ at }) => at >= yamlTo);
  const entities = [...text.slice(yamlTo).matchAll(ENTITY)].flatMap(({ 1: hex, 2: decimal, index }): UnseenSign[] => {
    const code = hex === undefined ? Number(decimal) : Number.parseInt(hex, 16);
    const [sign] = code > 0x10ffff ? [] : unseenSigns(String.fromCodePoint(code));
    // Of an order to a machine Markdown writes U+FFFD.
    return sign === undefined || sign.kind === 'control' ? [] : [{ ...sign, at: yamlTo + index }];
  });
  const all = [...body, ...entities].sort((one, other) => one.at - other.at);
  tell(all[0]?.at ?? 0, all, all.length > 1 ? 'remove them' : 'remove it');
  return found;
}

function textOf({ value, source }: Scalar): string {
  return typeof value === 'string' ? value : (source ?? '');
}
