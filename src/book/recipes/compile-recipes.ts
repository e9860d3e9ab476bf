import { computed } from '../computed.ts';
import type { Remembered } from '../remembered.ts';
import type { MaterialCore } from '../shelf/compile-material.ts';
import { compileRecipe, type RecipeContext, type RecipeCore } from './compile-recipe.ts';
import type { RecipeParts } from './recipe-parts.ts';

/** What all recipes are compiled with. */
export interface RecipesContext extends RecipeContext {
  readonly kept: Remembered<RecipeCore, MaterialCore>;
}

/** Compiles every recipe by itself. */
export function compileRecipes(
  recipes: readonly RecipeParts[],
  { kept, shelf, eye, molds, settings, report }: RecipesContext,
): ReadonlyMap<string, RecipeCore> {
  const cores = new Map<string, RecipeCore>();
  for (const parts of recipes) {
    const { recipe, cups, shares, mold, publish, ...others } = parts;
    const inputs = [recipe, JSON.stringify(others), ...cups, ...shares, molds.get(mold), eye, settings, publish];
    const core = kept.of(recipe.id, inputs, shelf, report, (telling, watched) =>
      computed(recipe, telling, () => compileRecipe(parts, { shelf: watched, eye, molds, settings, report: telling })),
    );
    if (core) cores.set(recipe.id, core);
  }
  return cores;
}
