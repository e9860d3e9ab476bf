import type { z } from 'zod';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Kind } from '../kinds/kinds.ts';
import { explainIssue } from './explain-issue.ts';
import type { FieldFault } from './field-fault.ts';
import { type FrontMatter, readFrontMatter } from './front-matter.ts';
import type { NamesOf } from './reference-fix.ts';
import { type FieldsOf, SCHEMAS } from './schema.ts';
import type { Source } from './source.ts';
import { valueAt, writtenPath } from './value-at.ts';

interface ThingOf<K extends Kind> {
  readonly kind: K;
  readonly id: string;
  readonly source: Source;
  readonly fields: FieldsOf<K>;
  /** Markdown after the front matter. */
  readonly notes: string;
  readonly place: FrontMatter['place'];
  readonly written: FrontMatter['written'];
}

/** One file of the book, read and checked by itself: not yet against the others. Its `kind` tells which fields it has. */
export type Thing<K extends Kind = Kind> = { [E in K]: ThingOf<E> }[K];

/**
 * Reads one file of a known kind: a thing, or all the faults that its text has by itself.
 *
 * @param namesOf names of the book's files, so that none is offered which is not there
 */
export function readThing<K extends Kind>(
  kind: K,
  id: string,
  source: Source,
  namesOf: NamesOf = () => undefined,
): Thing<K> | readonly Diagnostic[] {
  const frontMatter = readFrontMatter(source);
  if (!('place' in frontMatter)) return frontMatter;
  const { result } = parsed(kind, frontMatter, frontMatter.data);
  if (!result.success || frontMatter.unseen.length > 0) {
    const { issues = [] } = result.error ?? {};
    const file = { kind, source, frontMatter, namesOf };
    return [...issues.flatMap((issue) => explainIssue(issue, file)), ...frontMatter.unseen];
  }
  return thingOf(kind, id, source, result.data, frontMatter);
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
    if (result.success) return thingOf(kind, id, source, result.data, frontMatter);
    for (const issue of result.error.issues) if (!takeOut(data, issue, id)) return undefined;
  }
  return undefined;
}

function thingOf<K extends Kind>(
  kind: K,
  id: string,
  source: Source,
  fields: FieldsOf<Kind>,
  { body, place, written }: FrontMatter,
): Thing<K> {
  // The schema was that of the kind, which a compiler cannot follow through a table.
  return { kind, id, source, fields, notes: body.trim(), place, written } as ThingOf<Kind> as Thing<K>;
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
