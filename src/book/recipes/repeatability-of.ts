import type { Batch, BatchCup } from '../../cup/batch.ts';
import { bottleGrams } from '../../cup/cut-measures.ts';
import { filledMl } from '../../cup/filled-ml.ts';
import type { Amounts } from '../../cup/ledger.ts';
import { asPrinted } from '../../cup/plan-batch.ts';
import { handSpread, repeatability, type Spread } from '../../cup/repeatability.ts';
import { cupMixer, viewsDifference } from '../../optics/cup-body.ts';
import type { Pattern } from '../../patterns/patterns.ts';
import { required } from '../../values/required.ts';
import { baitFaces } from '../cups/appearances.ts';
import type { Repeatability, SpreadAdvice } from '../model/recipe.ts';
import type { Settings } from '../model.ts';
import type { BaitLookedAt, BatchRecipe, BatchShelf } from './batch-of-recipe.ts';

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
  { bodyMm, optics }: BaitLookedAt,
): Repeatability {
  if (cups.every(({ contents }) => contents.length === 0)) return {};
  const plasticMl = batch.cups.map(({ plastics }) => plastics.reduce((sum, { ml }) => sum + ml, 0));
  const mixed = cups.map(({ plastics, share }, index) => {
    const contents = batch.cups[index]!.amounts.map((amount) => ({
      material: amount.material,
      gramsPerMl: bottleGrams(amount, amount.grams) / plasticMl[index]!,
    }));
    const { doses, mixed: mix } = cupMixer({ plastics, contents }, shelf, optics);
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
      bodyMm,
      optics,
    );
  const measured = batch.cups.flatMap(({ amounts }, index) =>
    amounts.map((amount) => ({
      key: keyOf(index, amount.material),
      grams: bottleGrams(amount, amount.grams),
      tool: amount.tool,
      // A step of the scale, as a part of what it is a step of.
      part: bottleGrams(amount, 1),
    })),
  );
  const exact: Amounts = Object.fromEntries(measured.map(({ key, grams }) => [key, grams]));
  const wanted = faces(exact);
  const colourError = (grams: Amounts): number =>
    Math.max(...faces(grams).map((face, index) => viewsDifference(wanted[index]!, face)));
  const byKey = new Map(measured.map((amount) => [amount.key, amount]));
  const spreadOf = (key: string): Spread => {
    const { tool, part } = required(byKey, key);
    const spread = handSpread(tool, settings);
    return spread.kind === 'step' ? { ...spread, grams: spread.grams * part } : spread;
  };
  const byHand = repeatability(exact, spreadOf, colourError);
  const { scaleGrams } = settings;
  const byScale =
    scaleGrams === undefined
      ? 0
      : repeatability(exact, (key) => ({ kind: 'step', grams: scaleGrams * required(byKey, key).part }), colourError);
  const byDrops = batch.cups.flatMap((cup, index) => dropAdvice(cup, shelf, settings, plasticMl[index]!));
  const advice =
    byDrops.length === 0 && asPrinted(byHand) > settings.tolerance ? [handAdvice(byHand, byScale, settings)] : byDrops;
  return {
    bySpoonAndDrop: byHand,
    ...(scaleGrams === undefined ? {} : { byScale }),
    ...(advice.length === 0 ? {} : { advice }),
  };
}

function handAdvice(byHand: number, byScale: number, { scaleGrams, tolerance }: Settings): SpreadAdvice {
  const remedy = scaleGrams === undefined ? 'get-a-scale' : byScale < byHand ? 'weigh' : 'larger-batch';
  return { kind: 'hands-vary', tolerance, remedy };
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
): readonly SpreadAdvice[] {
  return amounts.flatMap(({ material, cut, dropDeltaE, betterWeighed }): SpreadAdvice[] => {
    if (dropDeltaE === undefined) return [];
    // The colour moves about in proportion to the drop's part of the cup, so a cup larger by that ratio brings it within tolerance.
    const enoughMl = Math.ceil((plasticMl * dropDeltaE) / settings.tolerance / 10) * 10;
    return [
      {
        kind: 'drop',
        title: cut?.title ?? shelf(material).title,
        deltaE: asPrinted(dropDeltaE),
        ...(enoughMl <= filledMl(settings) ? { enoughMl } : {}),
        ...(betterWeighed ? { weigh: together ? 'all' : 'it' } : {}),
      },
    ];
  });
}
