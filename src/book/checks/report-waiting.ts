import type { FieldPath } from '../../recipe/field-path.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { kindOfPath } from '../../recipe/source.ts';
import type { LeftOut } from '../left-out.ts';
import { NAMED_BY } from '../read/named-by.ts';
import type { Report } from '../report.ts';

/** Tells of each file that is left out of a book for nothing but others that wait to be filled in, where it names one of them. */
export function reportWaiting(leftOut: ReadonlyMap<string, LeftOut>, things: readonly Thing[], report: Report): void {
  const byPath = new Map(things.map((thing) => [thing.source.path, thing]));
  for (const { path, needs, why } of leftOut.values()) {
    if (why === 'errors' || needs.length === 0) continue;
    const thing = byPath.get(path);
    const named = needs.map((need) => thing && placeIn(thing, need));
    const empty = emptyFile(needs, leftOut);
    const waits = needs.includes(empty) ? 'waits to be filled in' : `waits for \`${empty}\``;
    report.tell('field/waits-for', path, {
      ...thing?.place(named.find((place) => place !== undefined) ?? [], 'value'),
      found: `\`${needs.includes(empty) ? empty : needs[0]!}\`, which ${waits}`,
      expected: 'files that are ready',
      why: 'this file is left out of the book until then',
      fix: `fill in \`${empty}\``,
    });
  }
}

/** The nearest file that is to be filled in, behind those that a file needs. */
function emptyFile(needs: readonly string[], leftOut: ReadonlyMap<string, LeftOut>): string {
  const line = new Set(needs);
  for (const path of line) {
    const next = leftOut.get(path)?.needs ?? [];
    if (next.length === 0) return path;
    for (const each of next) line.add(each);
  }
  throw new Error(`${needs.join(', ')} wait for each other`);
}

/** Fields that name other files by the names in them. */
const NAMED_INSIDE: ReadonlySet<string> = new Set(['add', 'set']);

/** Where a thing names another file, and not where a title, a tag or a cup has the same name; undefined where any file of a folder may be meant. */
function placeIn({ fields }: Thing, need: string): FieldPath | undefined {
  const id = kindOfPath(need)?.id;
  return id === undefined ? undefined : placeOfName(fields, id, [], '');
}

/** @param field the nearest with a name: what is in a list belongs to the field of the list */
function placeOfName(value: unknown, id: string, path: FieldPath, field: string): FieldPath | undefined {
  if (typeof value === 'string')
    return Object.hasOwn(NAMED_BY, field) && (value === id || value.startsWith(`${id}/`)) ? path : undefined;
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [name, inside] of Object.entries(value)) {
    const isItem = Array.isArray(value);
    const at = [...path, isItem ? Number(name) : name];
    if (name === id && !isItem && NAMED_INSIDE.has(field)) return at;
    const found = placeOfName(inside, id, at, isItem ? field : name);
    if (found) return found;
  }
  return undefined;
}
