import type { Bench } from '../../cup/bench.ts';
import { WORTH_WEIGHING } from '../../cup/measured-amounts.ts';
import { type Expectation, expectationIn, isLikelyRight } from '../belief/expectation.ts';

/** What a proposal promises: measured by drops and spoons, and weighed instead. */
export interface PromisedByTools extends Expectation {
  readonly weighed?: Expectation;
}

/** Proposals by the tools that serve best. */
export interface ByBestTools<P> {
  readonly proposals: readonly P[];
  /** What the best by drops and spoons promises, where these are by the scale alone instead. */
  readonly byHand?: Expectation;
}

/**
 * Proposals by drops and spoons; by the scale alone, where the best of those is not likely right and weighing is, or where weighing is
 * clearly nearer. Differences below half the tolerance are alike.
 *
 * @param now what there is without a proposal
 */
export function byBestTools<P extends PromisedByTools, B extends Bench>(
  bench: B,
  propose: (tools: B) => readonly P[],
  tolerance: number,
  now: Expectation = { expected: Number.POSITIVE_INFINITY, bound90: Number.POSITIVE_INFINITY, likely: 0 },
): ByBestTools<P> {
  const byHand = propose(bench);
  if (bench.scaleGrams === undefined) return { proposals: byHand };
  const alike = ({ expected }: Expectation): number => Math.max(expected, tolerance / 2);
  const [best] = byHand;
  const hand = best ?? now;
  const isNearer = (weighed: Expectation): boolean =>
    (isLikelyRight(weighed) && !isLikelyRight(hand)) || alike(weighed) < alike(hand) - WORTH_WEIGHING;
  // What is right by hand already is worked out anew only where its own weights promise something.
  if (isLikelyRight(hand) && !isNearer(best?.weighed ?? hand)) return { proposals: byHand };
  const byScale = propose({ ...bench, drops: false, spoons: [] });
  const [weighed] = byScale;
  if (weighed === undefined || !isNearer(weighed)) return { proposals: byHand };
  return { proposals: byScale, ...(best && { byHand: expectationIn(best) }) };
}

/** The better of what a proposal promises by hand and weighed. */
export function bestPromise(promised: PromisedByTools): Expectation {
  const { weighed } = promised;
  return weighed && weighed.expected < promised.expected ? weighed : promised;
}

// Weighing leads where drops and spoons miss and it comes this much nearer, ΔE00 (convention of this book).
const CLEARLY_NEARER = 0.5;

/** Whether something is better weighed than dropped and spooned. */
export function leadsByWeight(promised: PromisedByTools): boolean {
  const { expected, weighed } = promised;
  return weighed !== undefined && !isLikelyRight(promised) && weighed.expected < expected - CLEARLY_NEARER;
}
