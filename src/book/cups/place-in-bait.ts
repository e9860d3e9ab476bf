import { PATTERNS, type Pattern } from '../../patterns/patterns.ts';
import { MIDDLE } from '../../patterns/place.ts';

/** What of a bait's lines of sight goes through a cup, both 0..1. */
export interface CupPlace {
  /** Part of the lines of sight that meet the cup. */
  readonly face: number;
  /** Part of the bait's thickness that those run through it. */
  readonly depth: number;
}

/**
 * Where a cup lies in a bait: one beside others takes its share of the lines of sight, all the way; one behind or before others all of
 * them, through its part of the thickness, as a line through the middle runs.
 *
 * @param shares of the bait's volume, 1 together
 */
export function placeInBait(pattern: Pattern, shares: readonly number[], index: number): CupPlace {
  const { beside, through } = PATTERNS[pattern];
  if (beside) return { face: shares[index]!, depth: 1 };
  const own = through(shares, MIDDLE).filter(({ cup }) => cup === index);
  return { face: 1, depth: own.reduce((sum, { part }) => sum + part, 0) };
}
