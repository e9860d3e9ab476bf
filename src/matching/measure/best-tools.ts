import type { Bench } from '../../cup/bench.ts';
import { WORTH_WEIGHING } from '../../cup/measured-amounts.ts';

/** What a proposal leaves, ΔE00: measured by drops and spoons, and weighed instead. */
export interface LeftByTools {
  readonly deltaE: number;
  readonly weighedDeltaE?: number;
}

/** Proposals by the tools that serve best. */
export interface ByBestTools<P> {
  readonly proposals: readonly P[];
  /** ΔE00 that the best by drops and spoons leaves, where these are by the scale alone instead. */
  readonly byHandDeltaE?: number;
}

/**
 * Proposals by drops and spoons; by the scale alone, where the best of those misses and weighing does not, or where weighing is clearly
 * nearer. Differences below half the tolerance are alike.
 *
 * @param now ΔE00 of what there is without a proposal
 */
export function byBestTools<P, B extends Bench>(
  bench: B,
  propose: (tools: B) => readonly P[],
  leftBy: (proposal: P) => LeftByTools,
  tolerance: number,
  now: number = Number.POSITIVE_INFINITY,
): ByBestTools<P> {
  const byHand = propose(bench);
  if (bench.scaleGrams === undefined) return { proposals: byHand };
  const alike = (deltaE: number): number => Math.max(deltaE, tolerance / 2);
  const [best] = byHand;
  const hand = best === undefined ? { deltaE: now } : leftBy(best);
  const isNearer = (weighed: number): boolean =>
    (weighed <= tolerance && hand.deltaE > tolerance) || alike(weighed) < alike(hand.deltaE) - WORTH_WEIGHING;
  // What is right by hand already is worked out anew only where its own weights promise something.
  if (hand.deltaE <= tolerance && !isNearer(hand.weighedDeltaE ?? hand.deltaE)) return { proposals: byHand };
  const byScale = propose({ ...bench, drops: false, spoons: [] });
  const [weighed] = byScale;
  if (weighed === undefined || !isNearer(leftBy(weighed).deltaE)) return { proposals: byHand };
  return { proposals: byScale, ...(best === undefined ? {} : { byHandDeltaE: hand.deltaE }) };
}

/** The smaller of what a proposal leaves by hand and weighed, ΔE00. */
export function leastLeft({ deltaE, weighedDeltaE = deltaE }: LeftByTools): number {
  return Math.min(deltaE, weighedDeltaE);
}

// Weighing leads where drops and spoons miss and it comes this much nearer, ΔE00 (convention of this book).
const CLEARLY_NEARER = 0.5;

/** Whether something is better weighed than dropped and spooned. */
export function leadsByWeight(deltaE: number, within: boolean, weighedDeltaE: number | undefined): boolean {
  return weighedDeltaE !== undefined && !within && weighedDeltaE < deltaE - CLEARLY_NEARER;
}
