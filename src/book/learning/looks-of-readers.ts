import type { ChipSpec } from '../cups/chip-spec.ts';
import type { FilledCup } from '../cups/fill-cup.ts';
import type { Prepared } from '../prepare-book.ts';
import type { LookedRecipe } from './looked-recipe.ts';

/** Things whose looks are learned from. */
export interface LookedThings {
  readonly recipes: readonly LookedRecipe[];
  readonly chips: readonly FilledCup<ChipSpec>[];
}

/**
 * What readers get the looks of: recipes and chips that are published in full. Of a cup that starts with as much plastic as only a hidden
 * recipe says, readers have no rounds, and so none of their looks.
 */
export function looksOfReaders({ recipes, filledChips }: Pick<Prepared, 'recipes' | 'filledChips'>): LookedThings {
  const full = new Set(recipes.flatMap(({ recipe, publish }) => (publish === 'full' ? [recipe.id] : [])));
  return {
    recipes: recipes.filter(({ recipe }) => full.has(recipe.id)).map((parts) => withoutHidden(parts, full)),
    chips: [...filledChips.values()].filter(({ spec }) => spec.recipe.fields.publish === 'full'),
  };
}

/** A recipe without the looks at cups of which readers have no rounds, and at baits that were poured after such rounds. */
function withoutHidden(parts: LookedRecipe, full: ReadonlySet<string>): LookedRecipe {
  const hidden = parts.cups.filter(({ startOf }) => startOf !== undefined && !full.has(startOf.recipe));
  if (hidden.length === 0) return parts;
  const names = new Set(hidden.map(({ spec }) => spec.name));
  const { recipe } = parts;
  const { seen = [], ...fields } = recipe.fields;
  const kept = seen.filter(({ rounds = {} }) => !Object.keys(rounds).some((cup) => names.has(cup)));
  return {
    ...parts,
    recipe: { ...recipe, fields: { ...fields, ...(kept.length > 0 ? { seen: kept } : {}) } },
    cups: parts.cups.map((cup) => (hidden.includes(cup) ? withoutLooks(cup) : cup)),
  };
}

function withoutLooks(cup: FilledCup): FilledCup {
  return { ...cup, rounds: cup.rounds.map((round) => ({ ...round, seen: [] })) };
}
