import type { FieldPath } from '../../recipe/field-path.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { kindOfPath } from '../../recipe/source.ts';
import type { LeftOut } from '../left-out.ts';
import type { Report } from '../report.ts';

/** Tells of each file that is left out of a book for nothing but others that wait to be filled in, where it names one of them. */
export function reportWaiting(leftOut: ReadonlyMap<string, LeftOut>, things: readonly Thing[], report: Report): void {
  const byPath = new Map(things.map((thing) => [thing.source.path, thing]));
  for (const { path, needs, why } of leftOut.values()) {
    const [first] = needs;
    if (why === 'errors' || first === undefined) continue;
    const thing = byPath.get(path);
    const place = thing?.place(placeOfName(thing.fields, kindOfPath(first)?.id ?? '', []) ?? [], 'value');
    const itself = leftOut.get(first)?.needs.length === 0;
    report.tell('field/waits-for', path, {
      ...place,
      found: `need of \`${needs.join('`, `')}\``,
      expected: 'files that are filled in',
      why: `${itself ? 'that is still empty in places' : 'that waits for another'}, and this file is left out until then`,
      fix: itself ? `fill in \`${first}\`` : `see what \`${first}\` waits for`,
    });
  }
}

/** Where fields name another file: as a value, as the name of an amount, or as the recipe of a cup. */
function placeOfName(value: unknown, id: string, path: FieldPath): FieldPath | undefined {
  if (typeof value === 'string') return value === id || value.startsWith(`${id}/`) ? path : undefined;
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [name, inside] of Object.entries(value)) {
    const at = [...path, Array.isArray(value) ? Number(name) : name];
    if (name === id) return at;
    const found = placeOfName(inside, id, at);
    if (found) return found;
  }
  return undefined;
}
