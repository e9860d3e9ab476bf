import { orderByParents } from '../../lineage/order-by-parents.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import type { CupSpec } from '../cups/cup-specs.ts';
import type { Publish } from '../model/publish.ts';

/** From the least to the most. */
const ORDER: readonly Publish[] = ['no', 'look', 'full'];

/**
 * What is published of each recipe: what its own file says. Where it says nothing, no more than the book says, and no more than is
 * published of any recipe that it comes from, whole or with a cup: its doses would tell theirs.
 */
export function publishOf(
  recipes: ReadonlyMap<string, Thing<'recipe'>>,
  cups: ReadonlyMap<string, readonly CupSpec[]>,
  ofBook: Publish,
): (id: string) => Publish {
  const known = new Map<string, Publish>();
  const originsOf = (id: string): readonly string[] =>
    [recipes.get(id)?.fields.from, ...(cups.get(id) ?? []).map((cup) => cup.from?.recipe)].flatMap(
      (each) => each ?? [],
    );
  const of = (id: string): Publish => {
    const before = known.get(id);
    if (before !== undefined) return before;
    // Until it is worked out, so that a ring ends.
    known.set(id, ofBook);
    const fields = recipes.get(id)?.fields;
    const from = new Set(originsOf(id));
    const published =
      fields?.publish ??
      [...from].reduce<Publish>((least, origin) => {
        const ofOrigin = recipes.has(origin) ? of(origin) : least;
        return ORDER.indexOf(ofOrigin) < ORDER.indexOf(least) ? ofOrigin : least;
      }, ofBook);
    known.set(id, published);
    return published;
  };
  // Parents first, so that no line of recipes is too long for the stack.
  const nodes = [...recipes.keys()].map((id) => ({ id, parents: originsOf(id) }));
  for (const id of orderByParents(nodes).order) of(id);
  return of;
}
