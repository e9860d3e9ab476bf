import { asPrinted, type Batch, type BatchCup, planBatch } from '../cup/plan-batch.ts';
import { handSpread, repeatability } from '../cup/repeatability.ts';
import { measuringError, type OpticalMaterial } from '../optics/cup-body.ts';
import { formatDecimal } from '../units/format-quantity.ts';
import { volumeText } from '../units/volume-text.ts';
import type { Cup, Material, Mold, Repeatability, Settings } from './model.ts';

/** What a batch needs of a recipe. The browser has it from the page, the build from the book. */
export interface BatchRecipe {
  readonly cups: readonly Pick<Cup, 'name' | 'share' | 'plastics' | 'contents' | 'volumePerPlastic'>[];
}

/** A material as batches need it. */
export type BatchShelf = (
  material: string,
) => OpticalMaterial & Pick<Material, 'title' | 'gramsPerMl' | 'gramsPerDrop' | 'price' | 'packGrams' | 'stockGrams'>;

/**
 * A batch of one recipe: amounts, cost, shopping. The same code runs in the build and in the page's planner.
 *
 * @param thicknessMm body at which the colour error of measuring is judged
 */
export function batchOfRecipe(
  recipe: BatchRecipe,
  lines: readonly { readonly mold: Pick<Mold, 'id' | 'cavities' | 'cavityMl' | 'sprueMl'>; readonly baits: number }[],
  shelf: BatchShelf,
  settings: Settings,
  thicknessMm: number,
): Batch {
  const errors = recipe.cups.map((cup) => measuringError(cup, shelf, thicknessMm));
  return planBatch({
    cups: recipe.cups,
    lines,
    shop: settings,
    stock: shelf,
    colourError: (cup, plasticMl) => errors[cup]!(plasticMl),
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

/** How far apart batches come out that are made with the bench's tools: the worst of the cups. */
export function repeatabilityOf(
  recipe: BatchRecipe,
  batch: Batch,
  shelf: BatchShelf,
  settings: Settings,
  thicknessMm: number,
): Repeatability {
  let byHand = 0;
  let byScale = 0;
  const advice: string[] = [];
  for (const [index, cup] of recipe.cups.entries()) {
    const { amounts, plastics } = batch.cups[index]!;
    if (amounts.length === 0) continue;
    const plasticMl = plastics.reduce((sum, { ml }) => sum + ml, 0);
    const colourError = measuringError(cup, shelf, thicknessMm)(plasticMl);
    const exact = Object.fromEntries(amounts.map(({ material, grams }) => [material, grams]));
    const tools = new Map(amounts.map(({ material, tool }) => [material, tool]));
    byHand = Math.max(
      byHand,
      repeatability(exact, (material) => handSpread(tools.get(material)!, settings), colourError),
    );
    const { scaleGrams } = settings;
    if (scaleGrams !== undefined) {
      byScale = Math.max(
        byScale,
        repeatability(exact, () => ({ kind: 'step', grams: scaleGrams }), colourError),
      );
    }
    advice.push(...dropAdvice(batch.cups[index]!, shelf, settings, plasticMl));
  }
  const measures = recipe.cups.some((cup) => cup.contents.length > 0);
  if (!measures) return {};
  if (advice.length === 0 && asPrinted(byHand) > settings.tolerance) advice.push(handAdvice(byHand, byScale, settings));
  return {
    bySpoonAndDrop: byHand,
    ...(settings.scaleGrams === undefined ? {} : { byScale }),
    ...(advice.length === 0 ? {} : { advice: advice.join(' ') }),
  };
}

function handAdvice(byHand: number, byScale: number, settings: Settings): string {
  const why = `Drops and spoons vary more than the tolerance of ΔE ${formatDecimal(settings.tolerance)}`;
  if (settings.scaleGrams === undefined) return `${why}: a scale that shows 0.01 g would mend it.`;
  return byScale < byHand
    ? `${why}: weigh instead.`
    : `${why}, and the scale is too coarse for this batch: make a larger one.`;
}

/**
 * Where one drop alone moves the colour by more than the tolerance: the batch from which it does not, if a cup holds that, and the
 * scale if it is finer.
 */
function dropAdvice(
  { amounts, together }: Pick<BatchCup, 'amounts' | 'together'>,
  shelf: BatchShelf,
  settings: Settings,
  plasticMl: number,
): string[] {
  return amounts.flatMap(({ material, dropDeltaE, betterWeighed }) => {
    if (dropDeltaE === undefined) return [];
    // The colour moves about in proportion to the drop's part of the cup, so a cup larger by that ratio brings it within tolerance.
    const enoughMl = Math.ceil((plasticMl * dropDeltaE) / settings.tolerance / 10) * 10;
    const { cupMl, fill } = settings;
    const mends = [
      ...(enoughMl <= cupMl * fill ? [`make at least ${volumeText(enoughMl, settings)} in a cup`] : []),
      ...(betterWeighed ? [together ? 'weigh all of its cup' : 'weigh it'] : []),
    ];
    const mend = mends.length === 0 ? 'a scale finer than that would mend it' : mends.join(', or ');
    return [
      `One drop of ${shelf(material).title} moves the colour by ΔE ${asPrinted(dropDeltaE).toFixed(1)}: ${mend}.`,
    ];
  });
}
