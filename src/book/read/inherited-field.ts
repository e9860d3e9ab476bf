import type { Thing } from '../../recipe/read-thing.ts';

type Inherited = 'pattern' | 'order' | 'mold' | 'baits' | 'for' | 'streak';

/** A field of a recipe, or of the nearest recipe above it that has one. */
export type InheritedField = <K extends Inherited>(recipe: Thing<'recipe'>, name: K) => Thing<'recipe'>['fields'][K];

/** Reads inherited fields, each generation once, however long the line of recipes is. A ring has none. */
export function inheritedFields(recipes: ReadonlyMap<string, Thing<'recipe'>>): InheritedField {
  const known = new Map<Inherited, Map<string, unknown>>();
  return <K extends Inherited>(recipe: Thing<'recipe'>, name: K) => {
    const values = known.get(name) ?? new Map<string, unknown>();
    known.set(name, values);
    const line: string[] = [];
    let at: Thing<'recipe'> | undefined = recipe;
    while (at && !values.has(at.id) && at.fields[name] === undefined) {
      // Until it is known, so that a ring ends.
      values.set(at.id, undefined);
      line.push(at.id);
      at = recipes.get(at.fields.from ?? '');
    }
    const value = at && (at.fields[name] ?? values.get(at.id));
    for (const id of line) values.set(id, value);
    return value as Thing<'recipe'>['fields'][K];
  };
}

/** The recipe that the line of a recipe leads to and that could not be read, by its name; undefined where all of the line was read, or it is a ring. */
export function unreadOrigin(
  recipe: Thing<'recipe'>,
  recipes: ReadonlyMap<string, Thing<'recipe'>>,
): string | undefined {
  const line = new Set([recipe]);
  for (const { fields } of line) {
    const origin = recipes.get(fields.from ?? '');
    if (origin) line.add(origin);
    else return fields.from;
  }
  return undefined;
}
