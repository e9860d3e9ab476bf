/** What proposals are ranked by. */
export interface Standing {
  /** ΔE00 that is left. */
  readonly deltaE: number;
  /** What else counts, on the same scale: bottles to open, a lamp. */
  readonly besides: number;
  readonly cost: number;
  /** Materials, by which two proposals are the same or not. */
  readonly names: readonly string[];
}

// More materials for less than this part of the tolerance are no other proposal.
const WORTH_MORE = 0.15;

/**
 * The best few proposals, by the difference that they leave and what else counts, then by the difference alone and by cost; differences below half the tolerance
 * are alike. Without those that only add something to a better one, or leave something out of it, for no gain.
 */
export function distinctBest<T>(
  proposals: readonly T[],
  standing: (proposal: T) => Standing,
  tolerance: number,
  count: number,
): readonly T[] {
  const ranked = proposals.map((proposal) => {
    const each = standing(proposal);
    // What is within tolerance comes before what is not, whatever it takes.
    const missed = each.deltaE > tolerance ? tolerance : 0;
    const rank = rounded(Math.max(each.deltaE, tolerance / 2) + missed + each.besides, 0.01);
    return { proposal, ...each, rank, nearness: rounded(each.deltaE, tolerance / 20), key: each.names.join() };
  });
  ranked.sort(
    (one, other) =>
      one.rank - other.rank || one.nearness - other.nearness || one.cost - other.cost || (one.key < other.key ? -1 : 1),
  );
  const kept: typeof ranked = [];
  for (const next of ranked) {
    if (kept.length >= count) break;
    const repeats = kept.some((other) => {
      const alike =
        other.names.every((name) => next.names.includes(name)) ||
        next.names.every((name) => other.names.includes(name));
      return alike && next.deltaE > other.deltaE - WORTH_MORE * tolerance;
    });
    if (!repeats) kept.push(next);
  }
  return kept.map(({ proposal }) => proposal);
}

/** Without the last digits, which hang on the way to them. */
function rounded(deltaE: number, step: number): number {
  return Math.round(deltaE / step) * step;
}
