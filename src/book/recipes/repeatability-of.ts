import { filledMl } from '../../cup/filled-ml.ts';
import type { Amounts } from '../../cup/ledger.ts';
import { asPrinted, type Batch, type BatchCup } from '../../cup/plan-batch.ts';
import { handSpread, repeatability } from '../../cup/repeatability.ts';
import { cupMixer, viewsDifference } from '../../optics/cup-body.ts';
import type { Pattern } from '../../patterns/patterns.ts';
import { formatDecimal } from '../../units/format-quantity.ts';
import { volumeText } from '../../units/volume-text.ts';
import { required } from '../../values/required.ts';
import { baitFaces } from '../cups/appearances.ts';
import type { Repeatability, Settings } from '../model.ts';
import type { BatchRecipe, BatchShelf } from './batch-of-recipe.ts';

/** Grams of a batch by cup and material: "0 peat". */
const keyOf = (cup: number, material: string): string => `${cup} ${material}`;

/**
 * How far apart baits come out whose batches are made with the bench's tools: every cup is measured anew, and the bait is looked at as
 * its cups lie in it.
 *
 * Units: thickness in mm; ΔE00, over white or over black and on either side, where it is largest.
 */
export function repeatabilityOf(
  { pattern, cups }: BatchRecipe & { readonly pattern: Pattern },
  batch: Pick<Batch, 'cups'>,
  shelf: BatchShelf,
  settings: Settings,
  thicknessMm: number,
): Repeatability {
  if (cups.every(({ contents }) => contents.length === 0)) return {};
  const plasticMl = batch.cups.map(({ plastics }) => plastics.reduce((sum, { ml }) => sum + ml, 0));
  const mixed = cups.map(({ plastics, share }, index) => {
    const contents = batch.cups[index]!.amounts.map(({ material, grams }) => ({
      material,
      gramsPerMl: grams / plasticMl[index]!,
    }));
    const { doses, mixed: mix } = cupMixer({ plastics, contents }, shelf);
    const keys = contents.map(({ material }) => keyOf(index, material));
    return { share, mix, doses: Array.from(doses), keys, first: plastics.length, ml: plasticMl[index]! };
  });
  const faces = (grams: Amounts): ReturnType<typeof baitFaces> =>
    baitFaces(
      pattern,
      mixed.map(({ share, mix, doses, keys, first, ml }) => {
        for (const [place, key] of keys.entries()) doses[first + place] = grams[key]! / ml;
        return { share, body: mix(doses) };
      }),
      thicknessMm,
    );
  const measured = batch.cups.flatMap(({ amounts }, index) =>
    amounts.map(({ material, grams, tool }) => ({ key: keyOf(index, material), grams, tool })),
  );
  const exact: Amounts = Object.fromEntries(measured.map(({ key, grams }) => [key, grams]));
  const wanted = faces(exact);
  const colourError = (grams: Amounts): number =>
    Math.max(...faces(grams).map((face, index) => viewsDifference(wanted[index]!, face)));
  const tools = new Map(measured.map(({ key, tool }) => [key, tool]));
  const byHand = repeatability(exact, (key) => handSpread(required(tools, key), settings), colourError);
  const { scaleGrams } = settings;
  const byScale =
    scaleGrams === undefined ? 0 : repeatability(exact, () => ({ kind: 'step', grams: scaleGrams }), colourError);
  const advice = batch.cups.flatMap((cup, index) => dropAdvice(cup, shelf, settings, plasticMl[index]!));
  if (advice.length === 0 && asPrinted(byHand) > settings.tolerance) advice.push(handAdvice(byHand, byScale, settings));
  return {
    bySpoonAndDrop: byHand,
    ...(scaleGrams === undefined ? {} : { byScale }),
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
    const mends = [
      ...(enoughMl <= filledMl(settings) ? [`make at least ${volumeText(enoughMl, settings)} in a cup`] : []),
      ...(betterWeighed ? [together ? 'weigh all of its cup' : 'weigh it'] : []),
    ];
    const mend = mends.length === 0 ? 'a scale finer than that would mend it' : mends.join(', or ');
    return [
      `One drop of ${shelf(material).title} moves the colour by ΔE ${asPrinted(dropDeltaE).toFixed(1)}: ${mend}.`,
    ];
  });
}
