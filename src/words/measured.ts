/**
 * A measured amount in words: the same on the page, in its planner, on the card and on the command line.
 *
 * @packageDocumentation
 */

import type { BatchCup, Measured } from '../cup/batch.ts';
import { isNear } from '../cup/measures.ts';
import { formatDecimal } from '../units/format-quantity.ts';
import { weighedText } from '../units/scale-step.ts';
import { measuredName } from './cut.ts';
import { differenceText } from './difference.ts';
import { ONE_IN_TEN } from './scale.ts';
import { listText } from './sentence-text.ts';

// Below this the exact and the measured cup are one to every eye, and to most instruments.
const SAME_CUP = 0.05;

/** What drops or spoons weigh: `= 0.68 g`; nothing for what is weighed already. */
export function weighsText({ tool, measuredGrams }: Measured): string | undefined {
  return tool === 'drops' || tool === 'spoons' ? `= ${weighedText(measuredGrams)}` : undefined;
}

const OFF_SCALE: Readonly<Record<NonNullable<Measured['offScale']>, string>> = {
  'too-little': 'too little for this scale',
  'between-steps': 'finer than the scale can show',
};

/** The exact amount: as the scale shows it, `0.04 oz (1.13 g)`; in grams where none does, with the reason if its step is too coarse. */
export function exactWords({ grams, byWeight, offScale }: Measured): {
  readonly amount: string;
  readonly note?: string;
} {
  return {
    amount: byWeight ?? weighedText(grams),
    ...(offScale === undefined ? {} : { note: OFF_SCALE[offScale] }),
  };
}

/** Whether all that is dropped and spooned into a cup can be weighed instead. */
export function canWeighAll({ amounts }: Pick<BatchCup, 'amounts'>): boolean {
  return amounts.every(({ tool, byWeight }) => tool === 'scale' || byWeight !== undefined);
}

/** How far off a measure is: `2.4 times too much`, `24 % short`. */
function amissText(measured: number, exact: number): string {
  const ratio = measured / exact;
  if (ratio >= 1.5) return `${formatDecimal(ratio, 2)} times too much`;
  return `${Math.round(Math.abs(ratio - 1) * 100)} % ${ratio > 1 ? 'too much' : 'short'}`;
}

/** How far off the measure is where no tool of the bench comes near; nothing where one does. */
export function amissNote({ measuredGrams, grams, nearInFullCup, tool }: Measured): string | undefined {
  if (isNear(measuredGrams, grams)) return undefined;
  const mend = nearInFullCup
    ? `${tool === 'drops' ? `make a cut of it, ${ONE_IN_TEN}, or ` : ''}make a larger batch`
    : `no cup is large enough for that, but ${tool === 'scale' ? 'a finer scale' : tool === 'drops' ? 'a cut, or a scale,' : 'a scale'} would do`;
  return `about ${amissText(measuredGrams, grams)}: ${mend}`;
}

/** That drops are better weighed, since one moves the colour too far; what belongs together is weighed together, or not at all. */
export function betterWeighedWords(
  { dropDeltaE, betterWeighed }: Measured,
  cup: Pick<BatchCup, 'together' | 'amounts'>,
): string | undefined {
  if (dropDeltaE === undefined || !betterWeighed) return undefined;
  if (!cup.together) return 'better weighed';
  return canWeighAll(cup) ? 'better to weigh it all' : undefined;
}

/** That a measure is the scale's and why, that it is better weighed, how far off it is; nothing where there is nothing to say. */
export function measureNote(measured: Measured, cup: Pick<BatchCup, 'together' | 'amounts'>): string | undefined {
  const { tool, tooCoarse } = measured;
  const amiss = amissNote(measured);
  if (tool !== 'scale') {
    const better = betterWeighedWords(measured, cup);
    return (
      amiss ?? (better && `${better}: one drop more is ${differenceText(measured.dropDeltaE!)}`) ?? cutNote(measured)
    );
  }
  const why = tooCoarse === undefined ? '' : `: ${coarseText(measured, tooCoarse)}`;
  return amiss === undefined ? `by scale${why}` : `by scale${why}; even this is ${amiss}`;
}

/** Why a cut is taken: what the bottle's own measure would be. */
function cutNote({ cut, tooCoarse, grams }: Measured): string | undefined {
  return cut && tooCoarse && coarseText({ cut, grams }, tooCoarse);
}

/** What the measure would be that another stands in for: `1 drop of the bottle would be 2.3 times too much`. */
function coarseText(
  { cut, grams }: Pick<Measured, 'cut' | 'grams'>,
  coarse: NonNullable<Measured['tooCoarse']>,
): string {
  return `${coarse.text}${cut ? ' of the bottle' : ''} would be ${amissText(coarse.grams, grams)}`;
}

/** What drops and spoons alone would leave, ΔE00. */
export function withoutScaleText(byHandDeltaE: number): string {
  return `Without a scale: ${differenceText(byHandDeltaE)}.`;
}

/**
 * What is to be known of a cup as it is measured: how its colour comes out, what is far off, what belongs together.
 *
 * @param leastDeltaE smallest colour error that is worth its line, ΔE00
 */
export function measuringNotes(
  cup: BatchCup,
  title: (material: string) => string,
  leastDeltaE: number = SAME_CUP,
): readonly string[] {
  const { amounts, measuringDeltaE, byHandDeltaE, together } = cup;
  const off = amounts.filter(({ measuredGrams, grams }) => !isNear(measuredGrams, grams));
  const doses = off.map(
    (amount) => `${formatDecimal(amount.measuredGrams / amount.grams, 2)} times the ${measuredName(amount, title)}`,
  );
  const withDoses = doses.length === 0 ? '' : ` The cup gets ${listText(doses)} of the recipe.`;
  const all = `Rounded as a set: use all drops and spoons${canWeighAll(cup) ? ', or weigh everything' : ''}.`;
  return [
    ...(measuringDeltaE >= leastDeltaE || doses.length > 0
      ? [`What rounding does to the colour: ${differenceText(measuringDeltaE)}.${withDoses}`]
      : []),
    ...(byHandDeltaE === undefined || byHandDeltaE < leastDeltaE ? [] : [withoutScaleText(byHandDeltaE)]),
    ...(together ? [amounts.some(({ tool }) => tool === 'scale') ? `Weigh what says “by scale”. ${all}` : all] : []),
  ];
}
