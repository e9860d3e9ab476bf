/** A bound on doses together: the sum of each times its weight is at most so much. */
export interface JointBound {
  /** Of every candidate; 0 of those that it does not concern, below 0 of what makes room, as plastic does. */
  readonly weights: Float64Array;
  readonly most: number;
}

const ROUNDING = 1e-9;
const HALVINGS = 60;

/** By how much doses are above the bounds, in their own measure; 0 where they are above none. */
export function excess(bounds: readonly JointBound[], doses: Float64Array): number {
  let most = 0;
  for (const bound of bounds) most = Math.max(most, above(bound, doses));
  return most > ROUNDING ? most : 0;
}

function above({ weights, most }: JointBound, doses: Float64Array): number {
  let sum = -most;
  for (let j = 0; j < doses.length; j++) sum += weights[j]! * doses[j]!;
  return sum;
}

/**
 * Moves doses of a set back within bounds that they are above: to the nearest that are within, where nearness of each dose counts by its
 * curvature, so that a step of least squares stays one. Doses keep within 0 and their own most.
 *
 * @param curvature of each member of the set, above 0
 */
export function backWithin(
  bounds: readonly JointBound[],
  doses: Float64Array,
  set: readonly number[],
  most: Float64Array,
  curvature: (index: number) => number,
): void {
  for (const bound of bounds) {
    if (above(bound, doses) <= ROUNDING) continue;
    const from = doses.slice();
    const pull = (by: number): number => {
      for (const [i, j] of set.entries())
        doses[j] = Math.min(most[j]!, Math.max(0, from[j]! - (by * bound.weights[j]!) / curvature(i)));
      return above(bound, doses);
    };
    let high = 1e-12;
    while (pull(high) > 0 && high < 1e24) high *= 8;
    let low = 0;
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (low + high) / 2;
      if (pull(middle) > 0) low = middle;
      else high = middle;
    }
    pull(high);
  }
}
