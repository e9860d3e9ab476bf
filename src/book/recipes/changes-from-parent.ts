import type { Amounts } from '../../cup/ledger.ts';
import { askedAlone } from '../cups/asked-bait.ts';
import { believedAppearance } from '../cups/believed-appearance.ts';
import type { BookEye } from '../learning/book-eye.ts';
import { keyOfCup } from '../learning/cup-keys.ts';
import { cupOf } from '../match/asked-cup.ts';
import type { Cup } from '../model/cup.ts';
import type { Recipe } from '../model/recipe.ts';
import type { RecipeCore } from './compile-recipe.ts';
import { describeChange } from './describe-change.ts';

/** A cup of the book with its contents as the ledger has them. */
export interface KnownCup {
  readonly cup: Cup;
  readonly contents: Amounts;
}

/** A cup beside the one that it comes from. */
export interface CupPair {
  readonly from: { readonly recipe: string; readonly cup: string };
  readonly before: KnownCup;
  readonly after: KnownCup;
}

/** Each cup of a recipe that comes from another, or that has the name of one of its parent's. */
export function cupPairs(
  recipe: RecipeCore,
  known: (recipe: string, cup: string) => KnownCup | undefined,
): readonly CupPair[] {
  return recipe.cups.flatMap((cup) => {
    const from = cup.from ?? (recipe.parent === undefined ? undefined : { recipe: recipe.parent, cup: cup.name });
    const before = from && known(from.recipe, from.cup);
    const after = known(recipe.id, cup.name);
    return from && before && after ? [{ from, before, after }] : [];
  });
}

/**
 * Changes from the parent, cup by cup. Both are looked at as thick as this recipe's bait is, so that another mold is no change of the
 * colour.
 *
 * @param bodyMm thickness of this recipe's bait
 */
export function changesFromParent(pairs: readonly CupPair[], bodyMm: number, eye: BookEye): Recipe['changes'] {
  return pairs.map(({ from, before, after }) => {
    const asked = askedAlone(cupOf(before.cup, 1), bodyMm, keyOfCup(from.recipe, before.cup), eye);
    const change = describeChange(
      { look: believedAppearance(asked, eye), contents: before.contents },
      { look: after.cup.body, contents: after.contents },
    );
    return { cup: after.cup.name, fromRecipe: from.recipe, fromCup: from.cup, change };
  });
}
