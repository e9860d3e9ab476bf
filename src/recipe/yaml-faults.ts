/**
 * What can be wrong with the YAML of a file as YAML, each thing once.
 *
 * @packageDocumentation
 */
import { type Document, isScalar, type Node, type Scalar, visit, type YAMLMap } from 'yaml';
import type { Diagnostic, Position } from '../diagnostics/diagnostic.ts';
import { TEXT_FIELDS } from './field-names.ts';
import { yamlSlip } from './yaml-slip.ts';

/** What was found, and the edit that mends it. */
export type Fault = Pick<Diagnostic, 'found' | 'expected' | 'why' | 'fix'>;

/** A stretch of a text. */
export interface Place {
  readonly start: Position;
  readonly end?: Position;
}

type Placed = Fault & Place;

/** Names that stand twice, are no text, or that no map of a program may have. */
export function badNames(map: YAMLMap, yaml: string, first: number): readonly (Placed & Pick<Diagnostic, 'code'>)[] {
  const seen = new Set<string>();
  return map.items.flatMap(({ key }): readonly (Placed & Pick<Diagnostic, 'code'>)[] => {
    const offset = (key as Node | null)?.range?.[0] ?? 0;
    if (!isScalar(key)) {
      return [
        {
          code: 'front-matter/syntax',
          found: 'nested fields as the name of a field',
          expected: '`name: value`',
          ...placeOfName(yaml, offset, 1, first),
        },
      ];
    }
    const name = String(key.value);
    if (seen.has(name)) return [{ code: 'front-matter/syntax', ...secondOfName(yaml, offset, first) }];
    seen.add(name);
    return name === '__proto__'
      ? [
          {
            code: 'field/unknown',
            found: 'field `__proto__`',
            expected: 'a name that a field or a file of the book has',
            why: 'Cupbook would silently ignore it',
            fix: 'remove it',
            ...placeOfName(yaml, offset, name.length, first),
          },
        ]
      : [];
  });
}

/** Numbers with a comma in a map in braces, such as `{ peat: 0,05 g }`: YAML takes what follows the comma for a field of its own. */
export function decimalCommas(
  map: YAMLMap,
): readonly { readonly written: string; readonly from: number; readonly to: number }[] {
  if (!map.flow) return [];
  return map.items.flatMap(({ key, value }, index) => {
    const before = map.items[index - 1]?.value;
    if (
      !isScalar(key) ||
      !isScalar(before) ||
      !/^\d/.test(String(key.source)) ||
      !/^\d+$/.test(String(before.source))
    ) {
      return [];
    }
    return isScalar(value) && value.value !== null
      ? []
      : [{ written: `${before.source},${key.source}`, from: before.range![0], to: key.range![1] }];
  });
}

/** Text with a comma in a map in braces, `{ note: better, still yellow }`: YAML takes what follows the comma for a field of its own. */
export function textCommas(
  map: YAMLMap,
): readonly { readonly written: string; readonly from: number; readonly to: number }[] {
  if (!map.flow) return [];
  return map.items.flatMap(({ key, value }, index) => {
    if (!isScalar(key) || !TEXT_FIELDS.has(String(key.value)) || !isScalar(value) || value.type !== 'PLAIN') return [];
    const more = map.items.slice(index + 1);
    const stop = more.findIndex((item) => !isScalar(item.key) || (item.value !== null && !isNothing(item.value)));
    const rest = (stop === -1 ? more : more.slice(0, stop)).map((item) => item.key as Scalar);
    if (rest.length === 0) return [];
    const written = [value, ...rest].map(({ source }) => source ?? '').join(', ');
    return [{ written, from: value.range![0], to: rest.at(-1)!.range![1] }];
  });
}

/** Whether a field of a map in braces has no value, as a word after a comma has none. */
function isNothing(value: unknown): boolean {
  return isScalar(value) && value.value === null && (value.source ?? '') === '';
}

/** White space that looks like a space and is none to YAML. */
const ODD_SPACE = /^[ \t]*(?:- )?[ \t]*(?:[\w-]+:)?[ \t]*[\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000]/;

/**
 * No-break spaces and the like at the beginning of lines: YAML takes them for letters, so that a line belongs elsewhere than it looks. Told once, and
 * only where names of fields begin with one: a text of several lines may hold them.
 */
function oddSpaces(yaml: string, first: number): readonly Placed[] {
  const lines = yaml
    .split(/\r?\n/)
    .flatMap((line, index) => (ODD_SPACE.test(line) ? [{ line, number: first + index }] : []));
  const [one, ...others] = lines;
  if (one === undefined) return [];
  const column = one.line.search(/[\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000]/) + 1;
  const numbers = lines.slice(0, 10).map(({ number }) => number);
  const where = others.length === 0 ? '' : ` in lines ${numbers.join(', ')}${lines.length > 10 ? ' and others' : ''}`;
  return [
    {
      found: `no-break spaces before a field or its value${where}`,
      expected: 'plain spaces',
      why: 'they look like spaces, as a web page or word processor leaves them, and YAML takes them for letters',
      fix: 'replace each of them by a plain space, also between the words of the line',
      start: { line: one.number, column },
      end: { line: one.number, column: one.line.length - one.line.slice(column - 1).replace(/^\s+/, '').length + 1 },
    },
  ];
}

/** Whether a field of YAML begins with a space that is none. */
function hasOddName(parsed: Document.Parsed): boolean {
  let found = false;
  visit(parsed, {
    Pair: (_key, { key }) => {
      if (!isScalar(key) || !/^[\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000]/.test(String(key.value))) return undefined;
      found = true;
      return visit.BREAK;
    },
  });
  return found;
}

/**
 * What is wrong with YAML, each thing once: of a slip of the pen that is recognised, that alone, since what a parser says after
 * it follows from it; else the parser's first error.
 *
 * @param first number of the first line of the YAML in its file
 */
export function syntaxFaults(parsed: Document.Parsed, yaml: string, first: number): readonly Placed[] {
  const errors = [...parsed.errors, ...parsed.warnings];
  if (errors.length > 0 || hasOddName(parsed)) {
    const odd = oddSpaces(yaml, first);
    if (odd.length > 0) return odd;
  }
  if (errors.length === 0) return [];
  const lines = yaml.replace(/\r$/, '').split(/\r?\n/);
  const lineOf = (offset: number): number => yaml.slice(0, offset).split('\n').length - 1;
  const lastError = errors.reduce((last, { pos }) => Math.max(last, pos[0]), 0);
  const slip = yamlSlip(lines, first, Math.min(lines.length - 1, lineOf(lastError) + 1));
  if (slip) {
    const { line, column, width, ...what } = slip;
    const start = { line: first + line, column: column + 1 };
    return [{ ...what, start, end: { ...start, column: start.column + width } }];
  }
  const { code, message, pos } = errors[0]!;
  const line = lineOf(pos[0]);
  return [
    {
      found: syntaxFound(message),
      expected: 'YAML: `name: value`, nested by spaces',
      fix: SYNTAX_FIXES[code] ?? 'look at this line and the one above: put text with signs in it in quotes',
      start: { line: first + line, column: pos[0] - (yaml.lastIndexOf('\n', pos[0] - 1) + 1) + 1 },
    },
  ];
}

function secondOfName(yaml: string, offset: number, first: number): Placed {
  const name = /^["']?([^:"'\n]{0,200})/.exec(yaml.slice(offset, offset + 210))?.[1]?.trim() ?? '';
  return {
    found: `second \`${name}\``,
    expected: 'each name once among fields that belong together',
    fix: 'keep one of the two',
    ...placeOfName(yaml, offset, name.length, first),
  };
}

function placeOfName(yaml: string, offset: number, width: number, first: number): Place {
  const start = {
    line: first + yaml.slice(0, offset).split('\n').length - 1,
    column: offset - yaml.lastIndexOf('\n', offset - 1),
  };
  return { start, end: { ...start, column: start.column + width } };
}

const SYNTAX_FIXES: Readonly<Record<string, string>> = {
  TAB_AS_INDENT: 'indent with spaces, not with tabs',
  BAD_INDENT: 'give fields of one level the same number of spaces',
  MISSING_CHAR: 'close the quote or bracket',
  MULTILINE_IMPLICIT_KEY: 'give each field a line of its own, `name: value`',
  BLOCK_AS_IMPLICIT_KEY: 'put nested fields on lines of their own, or the value in quotes if it holds a colon',
};

/** The parser's sentence without its full stop, to stand after "Unexpected". */
function syntaxFound(message: string): string {
  return `YAML (${message.replace(/\.$/, '').replace(/ at line \d+, column \d+[\s\S]*$/, '')})`;
}
