/**
 * A cup whose colour has moved though the log says of nothing that went in: what was done is asked before anything is made of it.
 *
 * @packageDocumentation
 */
import { type HowLooked, lookedAlike } from '../../cup/how-looked.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import type { ToAdd } from '../proposals/to-add.ts';
import { isReversed, type SeenViews } from '../target/target-part.ts';

/** From one test pour to the next the same cup moves by no more than this, ΔE00: two looks together. Convention of this book. */
const BETWEEN_POURS = 3;

/** By how much a colour moved with nothing logged, ΔE00, the view that moved further. */
export interface UnloggedMove {
  readonly deltaE: number;
}

/** How two looks at the same cup differ, where that is more than two test pours can; undefined where it is not, or no view is known of both. */
function movedBetween(one: SeenViews, other: SeenViews): UnloggedMove | undefined {
  const moved = (['overWhite', 'overBlack'] as const).flatMap((view) => {
    const [before, after] = [one[view], other[view]];
    return before && after ? [deltaE00(before, after)] : [];
  });
  const deltaE = Math.max(0, ...moved);
  return deltaE > BETWEEN_POURS ? { deltaE } : undefined;
}

/**
 * By how much each of some rounds has moved with nothing logged since the one before it, where both were looked at alike and nobody says that
 * the look stands. A look that cannot be says nothing of the next.
 */
export function unloggedMoves(
  rounds: readonly { readonly seen: SeenViews; readonly unlogged?: true; readonly how?: HowLooked }[],
): readonly (UnloggedMove | undefined)[] {
  let before: SeenViews = {};
  let howBefore: HowLooked = {};
  return rounds.map(({ seen, unlogged, how = {} }) => {
    // A chip is another colour than the bait, and a cup that has cooled than a hot one.
    if (!unlogged || !lookedAlike(howBefore, how)) before = {};
    const move = isReversed(seen) || how.checked ? undefined : movedBetween(before, seen);
    before = isReversed(seen) ? {} : { ...before, ...seen };
    howBefore = how;
    return move;
  });
}

/** What is to be asked of such a move, before anything is made of the cup: what went in. */
export interface WhatWentIn extends UnloggedMove {
  /** Number of the round before. */
  readonly since: number;
  /** What had been proposed then, as it was to be measured. */
  readonly proposed?: ToAdd;
}
