import type { Thing } from '../../recipe/read-thing.ts';
import { defined } from '../../values/defined.ts';
import { computed } from '../computed.ts';
import type { CupMaterial, CupShelf } from '../cups/cup-shelf.ts';
import { type CupSpec, cupKey } from '../cups/cup-specs.ts';
import { type FilledCup, fillCup } from '../cups/fill-cup.ts';
import type { Publish } from '../model/publish.ts';
import { type InheritedField, unreadOrigin } from '../read/inherited-field.ts';
import type { Things } from '../read/read-things.ts';
import { usualMold } from '../read/usual-things.ts';
import type { Remembered } from '../remembered.ts';
import type { Report } from '../report.ts';
import type { MaterialCore } from '../shelf/compile-material.ts';
import { compileRecipe, orderOf, patternOf, type RecipeContext, type RecipeCore, sharesOf } from './compile-recipe.ts';

/** Keeps the ledger of every cup, parents first; without those that cannot be filled. */
export function fillCups(
  cups: readonly CupSpec[],
  shelf: CupShelf,
  kept: Remembered<FilledCup, CupMaterial>,
  report: Report,
): ReadonlyMap<string, FilledCup> {
  const filled = new Map<string, FilledCup>();
  for (const spec of cups) {
    const { recipe, name, path, inheritedShare, from } = spec;
    const parent = from && filled.get(cupKey(from.recipe, from.cup));
    const key = cupKey(recipe.id, name);
    // What the file says of the cup is the recipe's, at that path.
    const inputs = [recipe, JSON.stringify([path, inheritedShare, from]), parent, shelf.plastic];
    const cup = kept.of(key, inputs, shelf.materials, report, (telling, materials) =>
      computed(recipe, telling, () => fillCup(spec, parent, { ...shelf, materials }, telling)),
    );
    if (cup) filled.set(key, cup);
  }
  return filled;
}

/** What all recipes are compiled with. */
export interface RecipesContext extends Omit<RecipeContext, 'publish'> {
  readonly inherited: InheritedField;
  readonly publish: (id: string) => Publish;
  readonly kept: Remembered<RecipeCore, MaterialCore>;
}

/** Compiles every recipe whose cups are filled, each by itself. */
export function compileRecipes(
  things: Things,
  specs: ReadonlyMap<string, readonly CupSpec[]>,
  filled: ReadonlyMap<string, FilledCup>,
  context: RecipesContext,
): ReadonlyMap<string, RecipeCore> {
  const { inherited, molds, settings, kept, report } = context;
  const cores = new Map<string, RecipeCore>();
  for (const recipe of things.recipes.values()) {
    const cups = specs.get(recipe.id);
    if (!cups || comesFromWaiting(recipe, things)) continue;
    const pattern = patternOf(recipe, inherited, cups, report);
    const shares = sharesOf(recipe, cups, report);
    const mold = usualMold(recipe, inherited, things, report);
    const full = cups.flatMap((cup) => filled.get(cupKey(recipe.id, cup.name)) ?? []);
    if (!pattern || !shares || !mold || !molds.has(mold) || full.length < cups.length) continue;
    const [baits, target, streak] = [inherited(recipe, 'baits'), recipe.fields.for, inherited(recipe, 'streak')];
    const order = orderOf(recipe, inherited, pattern, report);
    const parts = {
      pattern,
      mold,
      ...defined({ baits, target, streak, order }),
    };
    const publish = context.publish(recipe.id);
    const inputs = [recipe, JSON.stringify(parts), ...full, ...shares, molds.get(mold), settings, publish];
    const core = kept.of(recipe.id, inputs, context.shelf, report, (telling, shelf) =>
      computed(recipe, telling, () =>
        compileRecipe(recipe, parts, full, shares, { shelf, molds, settings, publish, report: telling }),
      ),
    );
    if (core) cores.set(recipe.id, core);
  }
  return cores;
}

/** Whether a recipe comes from one that waits to be filled in: what it has from that nobody knows yet. */
function comesFromWaiting(recipe: Thing<'recipe'>, { recipes, faulty }: Things): boolean {
  if (faulty.waiting.size === 0) return false;
  const origin = unreadOrigin(recipe, recipes);
  return origin !== undefined && faulty.isWaiting('recipe', origin);
}
