import { KINDS } from '../../kinds/kinds.ts';
import { bareName } from '../../recipe/bare-name.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import type { Publish } from '../model/publish.ts';
import type { Secret } from './check-secrets.ts';

/**
 * Recipes and targets that are left out of a book and would not be published: what is published must not tell of them either.
 *
 * @param isLeftOut by the path of a file
 * @param ofBook what is published where a file says nothing
 */
export function leftOutSecrets(
  things: readonly Thing[],
  isLeftOut: (path: string) => boolean,
  ofBook: Publish,
): readonly Secret[] {
  const recipes = new Map(things.flatMap((thing) => (thing.kind === 'recipe' ? [[thing.id, thing] as const] : [])));
  return things.flatMap((thing) => {
    if ((thing.kind !== 'recipe' && thing.kind !== 'target') || !isLeftOut(thing.source.path)) return [];
    const isHidden = thing.kind === 'recipe' ? isUnpublished(thing, recipes, ofBook) : saysNo(thing, ofBook);
    return isHidden ? [{ id: thing.id, title: thing.fields.title, folder: KINDS[thing.kind].folder }] : [];
  });
}

const saysNo = ({ fields }: Thing<'recipe' | 'target'>, ofBook: Publish): boolean =>
  (fields.publish ?? ofBook) === 'no';

/** Whether a recipe is not published, or comes from one that is not and does not say that it is itself. */
function isUnpublished(
  recipe: Thing<'recipe'>,
  recipes: ReadonlyMap<string, Thing<'recipe'>>,
  ofBook: Publish,
): boolean {
  const line = new Set([recipe]);
  for (const { fields } of line) {
    if (fields.publish !== undefined) {
      if (fields.publish === 'no') return true;
      continue;
    }
    if (ofBook === 'no') return true;
    const origins = [fields.from, ...Object.values(fields.cups ?? {}).map(({ from }) => from)];
    for (const name of origins) {
      const origin = name === undefined ? undefined : recipes.get(bareName(name).replace(/\/.*/s, ''));
      if (origin) line.add(origin);
    }
  }
  return false;
}
