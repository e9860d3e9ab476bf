import { DISCREPANCY_SD } from '../tables/model-discrepancy.ts';
import type { LinearLook, Placed } from './linear-views.ts';
import type { SharedVariance } from './shared-memo.ts';

/** How many looks speak of a composition, at most: those behind them add little. Convention of this book. */
const MOST_LOOKS = 24;

/** Part of the theory's errors that a look shares with what is asked about, to speak of it at all. Convention of this book. */
const HARDLY_ALIKE = 0.05;

/** The looks that share most of their errors with any of some compositions, those that share most first. */
export function nearestLooks(
  looks: readonly LinearLook[],
  asked: readonly Placed[],
  shared: SharedVariance,
): readonly LinearLook[] {
  const near: { readonly look: LinearLook; readonly share: number }[] = [];
  for (const look of looks) {
    let share = 0;
    for (const each of asked) share = Math.max(share, shared(look, each) / DISCREPANCY_SD[each.errors.means]);
    if (share > HARDLY_ALIKE * DISCREPANCY_SD[look.errors.means]) near.push({ look, share });
  }
  near.sort((one, other) => other.share - one.share || one.look.place! - other.look.place!);
  return near.slice(0, MOST_LOOKS).map(({ look }) => look);
}
