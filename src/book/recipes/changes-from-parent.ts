import type { Amounts } from '../../cup/ledger.ts';
import { cupBody, type OpticalMaterial } from '../../optics/cup-body.ts';
import { appearanceOf } from '../cups/appearances.ts';
import type { Cup, Recipe } from '../model.ts';
import type { RecipeCore } from './compile-recipe.ts';
import { describeChange } from './describe-change.ts';

/** A cup of the book with its contents as the ledger has them. */
export interface KnownCup {
  readonly cup: Cup;
  readonly contents: Amounts;
}

/**
 * Changes from the parent, cup by cup: each cup against the one that it comes from, or that has its name there. Both are looked
 * at as thick as this recipe's bait is, so that another mold is no change of the colour.
 *
 * @param bodyMm thickness of this recipe's bait
 */
export function changesFromParent(
  recipe: RecipeCore,
  known: (recipe: string, cup: string) => KnownCup | undefined,
  shelf: (material: string) => OpticalMaterial,
  bodyMm: number,
): Recipe['changes'] {
  return recipe.cups.flatMap((cup) => {
    const from = cup.from ?? (recipe.parent === undefined ? undefined : { recipe: recipe.parent, cup: cup.name });
    const before = from && known(from.recipe, from.cup);
    const after = known(recipe.id, cup.name);
    if (!from || !before || !after) return [];
    const change = describeChange(
      { look: appearanceOf(cupBody(before.cup, shelf), bodyMm), contents: before.contents },
      { look: cup.body, contents: after.contents },
    );
    return [{ cup: cup.name, fromRecipe: from.recipe, fromCup: from.cup, change }];
  });
}
