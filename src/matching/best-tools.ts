import type { Bench } from '../cup/bench.ts';

/** What a proposal leaves, ΔE00: measured by drops and spoons, and weighed instead. */
export interface LeftByTools {
  readonly deltaE: number;
  readonly weighedDeltaE?: number;
}

// Putting drops and spoons away altogether must gain this much, ΔE00.
const WORTH_WEIGHING = 0.5;

/**
 * Proposals by drops and spoons; by the scale alone, where the best of those misses, weighed or not, and only that gets nearer.
 *
 * @param now ΔE00 of what there is without a proposal
 */
export function byBestTools<P>(
  bench: Bench,
  propose: (tools: Bench) => readonly P[],
  leftBy: (proposal: P) => LeftByTools,
  tolerance: number,
  now: number = Number.POSITIVE_INFINITY,
): readonly P[] {
  const least = ([best]: readonly P[]): number => {
    if (best === undefined) return now;
    const { deltaE, weighedDeltaE = deltaE } = leftBy(best);
    return Math.min(deltaE, weighedDeltaE);
  };
  const byHand = propose(bench);
  if (bench.scaleGrams === undefined || least(byHand) <= tolerance) return byHand;
  const byScale = propose({ ...bench, drops: false, spoons: [] });
  return least(byScale) < least(byHand) - WORTH_WEIGHING ? byScale : byHand;
}
