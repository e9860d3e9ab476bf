/**
 * Batches in the browser, with the build's own code.
 *
 * @packageDocumentation
 */

import type { BatchAmounts } from '../book/model.ts';
import { batchOfRecipe } from '../book/recipes/batch-of-recipe.ts';
import type { PlannedMold, PlannedRecipe, PlannerData } from '../render/planner-data.ts';

/** One line of a plan. */
export interface PlanLine {
  readonly mold: string;
  readonly baits: number;
}

/** The largest batch that a form takes. */
export const MOST_BAITS = 100_000;

/** What is said of anything else, in place of a plan. `where` is a part of the sentence: " on every line". */
export function baitsWanted(where = ''): string {
  return `Enter a whole number of baits${where}, from 1 to ${MOST_BAITS.toLocaleString('en')}.`;
}

/** A number of baits from a form; undefined for anything but a whole number that a batch can have. */
export function baitsFrom(text: string): number | undefined {
  const baits = /^\d+$/.test(text.trim()) ? Number(text) : 0;
  return baits > 0 && baits <= MOST_BAITS ? baits : undefined;
}

/**
 * A recipe's batch for some lines; with its costs only in the maker's edition, which has the prices.
 *
 * Throws: RangeError if a line names a mold, or the recipe a material, that is not in the data.
 */
export function plannedBatch(data: PlannerData, recipe: PlannedRecipe, lines: readonly PlanLine[]): BatchAmounts {
  const materials = new Map(data.materials.map((material) => [material.id, material]));
  const molds = new Map(data.molds.map((mold) => [mold.id, mold]));
  const known = <T>(things: ReadonlyMap<string, T>, id: string): T => {
    const thing = things.get(id);
    if (thing === undefined) throw new RangeError(`the page's data has no ${id}`);
    return thing;
  };
  const batch = batchOfRecipe(
    recipe,
    lines.map(({ mold, baits }) => ({ mold: known<PlannedMold>(molds, mold), baits })),
    (id) => known(materials, id),
    data.settings,
    { bodyMm: recipe.bodyMm, optics: data.optics },
  );
  return data.edition === 'mine' ? batch : withoutCosts(batch);
}

function withoutCosts({ lines, baits, cups, materials }: BatchAmounts): BatchAmounts {
  return { lines, baits, cups, materials: materials.map(({ material, grams, ml }) => ({ material, grams, ml })) };
}
