import { coreAcross } from '../../optics/stack.ts';
import { SIDE_BY_SIDE } from '../../tables/patterns.ts';
import type { Pattern } from '../model.ts';

/** What of a bait's lines of sight goes through a cup, both 0..1. */
export interface CupPlace {
  /** Part of the lines of sight that meet the cup. */
  readonly face: number;
  /** Part of the bait's thickness that those run through it. */
  readonly depth: number;
}

/**
 * Where a cup lies in a bait: one beside others takes its share of the lines of sight, all the way; one over others all of them,
 * through its part of the thickness; a core, and the shell on both sides of it, as a line through the middle runs.
 *
 * @param shares of the bait's volume, 1 together
 */
export function placeInBait(pattern: Pattern, shares: readonly number[], index: number): CupPlace {
  const share = shares[index]!;
  if (SIDE_BY_SIDE.has(pattern)) return { face: share, depth: 1 };
  if (pattern !== 'core' || shares.length < 2) return { face: 1, depth: share };
  const across = coreAcross(shares[1]! / (shares[0]! + shares[1]!));
  return { face: 1, depth: index === 0 ? 1 - across : across };
}
