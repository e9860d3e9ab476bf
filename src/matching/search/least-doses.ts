import type { Mix } from '../mix/mix.ts';

/** By so much ΔE00 nobody tells two proposals apart, and the smaller dose is the better one. Convention of this book. */
export const UNSEEN = 0.1;
// Each try takes so much less; after the last there is a thousandth of the dose left.
const LESS = 0.8;
const MOST_TRIES = 31;

/**
 * The smallest doses of a set that nobody tells from the given ones: of a material that has done nearly all it can, a fifth often
 * does as well as the whole. What is within a tolerance stays so.
 *
 * @param tolerance ΔE00; unset: none
 */
export function leastDoses(
  mix: Mix,
  set: readonly number[],
  doses: Float64Array,
  tolerance: number = Number.POSITIVE_INFINITY,
): Float64Array {
  const now = mix.worst(doses);
  const most = now <= tolerance ? Math.min(now + UNSEEN, tolerance) : now + UNSEEN;
  let least = doses;
  for (const j of set) {
    for (let tries = 0; tries < MOST_TRIES; tries++) {
      const tried = least.slice();
      tried[j]! *= LESS;
      if (mix.worst(tried) > most) break;
      least = tried;
    }
  }
  return least;
}
