import type { Batch } from '../../cup/batch.ts';
import { type BatchLine, planBatch } from '../../cup/plan-batch.ts';
import { handSpread } from '../../cup/repeatability.ts';
import { measuringError, type OpticalMaterial } from '../../optics/cup-body.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';
import { METHODS } from '../../patterns/methods.ts';
import { PATTERNS, type Pattern } from '../../patterns/patterns.ts';
import { defined } from '../../values/defined.ts';
import type { Cup } from '../model/cup.ts';
import type { Material, Mold } from '../model/shelf.ts';
import type { Settings } from '../model.ts';

/** What a batch needs of a recipe. The browser has it from the page, the build from the book. */
export interface BatchRecipe {
  readonly pattern: Pattern;
  readonly cups: readonly Pick<Cup, 'name' | 'share' | 'plastics' | 'contents' | 'volumePerPlastic'>[];
}

/** A material as batches need it. */
export type BatchShelf = (
  material: string,
) => OpticalMaterial &
  Pick<Material, 'title' | 'gramsPerMl' | 'gramsPerDrop' | 'price' | 'packGrams' | 'stockGrams' | 'flake'>;

/** A mold as batches need it. */
export type FilledMold = Pick<Mold, 'id' | 'cavities' | 'cavityMl' | 'sprueMl' | 'method' | 'rejects'>;

/** What a bait is looked at by: its thickness in mm, and the optics of the book. */
export interface BaitLookedAt {
  readonly bodyMm: number;
  readonly optics: OpticalModel;
}

/**
 * A batch of one recipe: amounts, cost, shopping. The same code runs in the build and in the page's planner.
 *
 * @param looked by which the colour error of measuring is judged
 */
export function batchOfRecipe(
  recipe: BatchRecipe,
  lines: readonly { readonly mold: FilledMold; readonly baits: number }[],
  shelf: BatchShelf,
  settings: Settings,
  { bodyMm, optics }: BaitLookedAt,
): Batch {
  const errors = recipe.cups.map((cup) => measuringError(cup, shelf, bodyMm, optics));
  return planBatch({
    cups: recipe.cups,
    lines: lines.map((line) => ({ ...line, ...wasteOf(line.mold, recipe.pattern, settings) })),
    shop: settings,
    stock: shelf,
    colourError: (cup, plasticMl) => errors[cup]!(plasticMl),
  });
}

/** What is lost and thrown away with a mold, and whether its shots come out of an injector. */
function wasteOf(
  { method, rejects }: FilledMold,
  pattern: Pattern,
  settings: Pick<Settings, 'lossByMethod'>,
): Pick<BatchLine, 'loss' | 'rejects' | 'injected'> {
  const how = method === undefined ? undefined : METHODS[PATTERNS[pattern].byHand ? 'poured' : method];
  return defined({
    loss: settings.lossByMethod ? how?.loss : undefined,
    rejects,
    injected: how?.injects,
  });
}

/** Standard deviation of a dose of a batch as it is measured with the bench's tools, as a part of it; more than 1 where a scale is far too coarse. */
export function doseDeviation(
  { amounts }: Pick<Batch['cups'][number], 'amounts'>,
  material: string,
  settings: Settings,
): number {
  const amount = amounts.find((each) => each.material === material);
  if (!amount) return 0;
  const spread = handSpread(amount.tool, settings);
  return spread.kind === 'relative' ? spread.deviation : stepDeviation(amount.grams, spread.grams) / amount.grams;
}

/**
 * Standard deviation of a weighed amount, g: evenly spread over a step of the scale, 1/√12 of it, and where the step is wider than
 * twice the amount, with all that would be less than nothing at nothing.
 */
function stepDeviation(grams: number, step: number): number {
  const most = grams + step / 2;
  if (grams >= step / 2) return step / Math.sqrt(12);
  const part = most / step;
  return Math.sqrt((part * most ** 2) / 3 - ((part * most) / 2) ** 2);
}
