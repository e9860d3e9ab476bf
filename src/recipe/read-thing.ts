import type { z } from 'zod';
import type { DiagnosticCode } from '../diagnostics/catalogue.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { nearestFix, slips } from '../diagnostics/nearest-name.ts';
import { type FieldFault, shown } from './fields.ts';
import { type FieldPath, type FrontMatter, readFrontMatter } from './front-matter.ts';
import { moveFix } from './known-places.ts';
import { type FieldsOf, SCHEMAS } from './schema.ts';
import type { Kind, Source } from './source.ts';

/** One file of the book, read and checked by itself: not yet against the others. */
export interface Thing<K extends Kind = Kind> {
  readonly kind: K;
  readonly id: string;
  readonly source: Source;
  readonly fields: FieldsOf<K>;
  /** Markdown after the front matter. */
  readonly notes: string;
  readonly place: FrontMatter['place'];
  readonly written: FrontMatter['written'];
}

/** Reads one file of a known kind: a thing, or all the faults that its text has by itself. */
export function readThing<K extends Kind>(kind: K, id: string, source: Source): Thing<K> | readonly Diagnostic[] {
  const frontMatter = readFrontMatter(source);
  if (!('place' in frontMatter)) return frontMatter;
  const { result } = parsed(kind, frontMatter, frontMatter.data);
  if (!result.success || frontMatter.unseen.length > 0) {
    const { issues = [] } = result.error ?? {};
    return [...issues.flatMap((issue) => explain(issue, kind, frontMatter, source.path)), ...frontMatter.unseen];
  }
  return {
    kind,
    id,
    source,
    fields: result.data as FieldsOf<K>,
    notes: frontMatter.body.trim(),
    place: frontMatter.place,
    written: frontMatter.written,
  };
}

/**
 * A file with faults, without the fields that have them, so that what is sound in it can be checked as well. What is missing there
 * may only have been taken out. Undefined where its text cannot be read, or where a field is missing that must be there; a
 * missing title is none of these.
 */
export function soundPart<K extends Kind>(kind: K, id: string, source: Source): Thing<K> | undefined {
  const frontMatter = readFrontMatter(source);
  if (!('place' in frontMatter)) return undefined;
  const { data } = parsed(kind, frontMatter, structuredClone(frontMatter.data));
  // Each round takes something out, and a field may nest only so deep.
  for (let round = 0; round < 20; round++) {
    const result = SCHEMAS[kind].safeParse(data);
    if (result.success) {
      const { place, written, body } = frontMatter;
      return { kind, id, source, fields: result.data as FieldsOf<K>, notes: body.trim(), place, written };
    }
    for (const issue of result.error.issues) if (!takeOut(data, issue, id)) return undefined;
  }
  return undefined;
}

/** Data read by the schema of its kind, with the words that were written where text was meant and YAML has made a number of it. */
function parsed<K extends Kind>(
  kind: K,
  { written }: FrontMatter,
  data: unknown,
): { readonly data: unknown; readonly result: ReturnType<(typeof SCHEMAS)[K]['safeParse']> } {
  const read = (from: unknown): ReturnType<(typeof SCHEMAS)[K]['safeParse']> =>
    SCHEMAS[kind].safeParse(from) as ReturnType<(typeof SCHEMAS)[K]['safeParse']>;
  const result = read(data);
  const reread = (result.error?.issues ?? []).flatMap((issue) => {
    if (issue.code !== 'custom' || !(issue.params as unknown as FieldFault).asWritten) return [];
    const path = writtenPath(data, issue.path);
    const words = written(path);
    return words === undefined ? [] : [{ path, words }];
  });
  if (reread.length === 0) return { data, result };
  const asWritten = structuredClone(data);
  for (const { path, words } of reread) {
    (valueAt(asWritten, path.slice(0, -1)) as Record<PropertyKey, unknown>)[path.at(-1)!] = words;
  }
  return { data: asWritten, result: read(asWritten) };
}

/** Takes out of `data` what an issue is about; false where that leaves nothing. */
function takeOut(data: unknown, issue: z.core.$ZodIssue, id: string): boolean {
  const path = writtenPath(data, issue.path);
  if (issue.code === 'unrecognized_keys') {
    // What holds it may have gone already, with another fault in it.
    const owner = valueAt(data, path);
    if (typeof owner !== 'object' || owner === null) return true;
    for (const key of issue.keys) delete (owner as Record<string, unknown>)[key];
    return true;
  }
  if (path.length === 1 && path[0] === 'title') {
    (data as { title: string }).title = id;
    return true;
  }
  // An entry of a list goes with its list, and what lacks a field goes whole: the places of all others stay what they are.
  const whole = valueAt(data, path) === undefined || typeof path.at(-1) === 'number' ? path.slice(0, -1) : path;
  const last = whole.at(-1);
  if (last === undefined) return false;
  const owner = valueAt(data, whole.slice(0, -1));
  if (typeof owner !== 'object' || owner === null || !(last in owner)) return true;
  if (Array.isArray(owner)) return takeOut(data, { ...issue, code: 'custom', path: [...whole] } as typeof issue, id);
  delete (owner as Record<PropertyKey, unknown>)[last];
  return true;
}

function valueAt(data: unknown, path: FieldPath): unknown {
  return path.reduce<unknown>(
    (value, step) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, step)
        ? (value as Record<PropertyKey, unknown>)[step]
        : undefined,
    data,
  );
}

/** A path without the step into a list of one that was written as its only entry. */
function writtenPath(data: unknown, path: FieldPath): FieldPath {
  return path.filter((step, depth) => typeof step !== 'number' || Array.isArray(valueAt(data, path.slice(0, depth))));
}

function explain(found: z.core.$ZodIssue, kind: Kind, frontMatter: FrontMatter, file: string): Diagnostic[] {
  const issue = { ...found, path: writtenPath(frontMatter.data, found.path) };
  const at = (
    code: DiagnosticCode,
    path: FieldPath,
    part: 'key' | 'value',
    fault: Omit<FieldFault, 'code'>,
  ): Diagnostic => ({
    code,
    severity: 'error',
    file,
    ...frontMatter.place(path, part),
    ...fault,
  });
  const input = valueAt(frontMatter.data, issue.path);
  const name = String(issue.path.at(-1) ?? 'front matter');
  const missing = (expected: string): Diagnostic =>
    at('field/missing', issue.path.slice(0, -1), 'key', {
      found: `${issue.path.length > 1 ? `\`${String(issue.path.at(-2))}\`` : 'front matter'} without \`${name}\``,
      expected: `a field \`${name}\` with ${expected}`,
      fix: `add a line \`${name}: …\``,
    });

  switch (issue.code) {
    case 'custom': {
      const { code, asWritten: _, ...fault } = issue.params as unknown as FieldFault;
      if (input === undefined) return [missing(fault.expected)];
      return [at(code, issue.path, 'value', fault)];
    }
    case 'unrecognized_keys': {
      const allowed = JSON.parse(issue.message) as string[];
      return issue.keys.map((key) => {
        return at('field/unknown', [...issue.path, key], 'key', {
          found: `field \`${key}\``,
          expected: `one of ${allowed.join(', ')}`,
          why: 'a field that nobody reads would be lost without a word',
          ...unknownFix(kind, issue.path, key, allowed, frontMatter.data),
        });
      });
    }
    case 'invalid_value': {
      const allowed = issue.values.map(String);
      if (input === undefined) return [missing(`one of ${allowed.join(', ')}`)];
      return [
        at('field/value', issue.path, 'value', {
          found: shown(input),
          expected: `one of ${allowed.join(', ')}`,
          ...(nearestFix(String(input), allowed) ?? otherWord(String(input), allowed)),
        }),
      ];
    }
    case 'invalid_type': {
      const expected = EXPECTED_TYPES[issue.expected] ?? issue.expected;
      return [
        input === undefined
          ? missing(expected)
          : at('field/type', issue.path, 'value', { found: shown(input), expected, ...listFix(issue.expected, input) }),
      ];
    }
    case 'too_small':
      return [
        at('field/type', issue.path, 'value', { found: shown(input), expected: `at least ${issue.minimum} entry` }),
      ];
    case 'invalid_format':
      return [
        at('field/value', issue.path, 'value', {
          found: shown(input),
          expected: 'an address such as `https://book.example/`',
        }),
      ];
    default:
      return [at('field/value', issue.path, 'value', { found: shown(input), expected: issue.message })];
  }
}

/** Words that makers use for one that the book has: common practice, no source. */
const OTHER_WORDS: ReadonlyMap<string, string> = new Map([
  ['marble', 'swirl'],
  ['marbled', 'swirl'],
  ['crayfish', 'craw'],
  ['colour', 'over-white'],
  ['color', 'over-white'],
]);

function otherWord(
  word: string,
  allowed: readonly string[],
): { readonly fix: string; readonly nearest: string } | undefined {
  const nearest = OTHER_WORDS.get(word.toLowerCase());
  return nearest !== undefined && allowed.includes(nearest) ? { fix: `write \`${nearest}\``, nearest } : undefined;
}

/** The edit for an unknown field: it is misspelt, or belongs elsewhere in the file, or nowhere. */
function unknownFix(
  kind: Kind,
  path: FieldPath,
  key: string,
  allowed: readonly string[],
  data: unknown,
): { readonly fix: string; readonly nearest?: string } {
  const near = nearestFix(key, allowed);
  if (near && slips(near.nearest, key) <= 1) return near;
  const other = otherWord(key, allowed);
  if (other) return other;
  const move = moveFix(SCHEMAS[kind], path, key, (place) => valueAt(data, place) !== undefined);
  // A cup has either amounts or steps.
  if (move?.endsWith('of `log`') && valueAt(data, [...path, 'add']) !== undefined)
    return { fix: `make \`add\` the first step of \`log\`, and ${move.replace(/ of .*$/, ' of it')}` };
  return move === undefined ? (near ?? { fix: 'remove it, or move it to the notes' }) : { fix: move };
}

/** How a list becomes fields, or the other way round. */
function listFix(expected: string, input: unknown): { fix?: string } {
  if ((expected === 'object' || expected === 'record') && Array.isArray(input)) {
    return { fix: 'remove the `- ` before each name' };
  }
  if (expected !== 'array' || input === null) return {};
  return { fix: typeof input === 'object' ? 'begin each entry with `- `' : `write \`[${String(input)}]\`` };
}

const EXPECTED_TYPES: Readonly<Record<string, string>> = {
  object: 'nested fields',
  record: 'nested fields',
  array: 'a list',
  boolean: '`true` or `false`',
  string: 'text',
  number: 'a number',
};
