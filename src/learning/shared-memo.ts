import type { LinearLook, Placed } from './linear-views.ts';
import { sharedVariance } from './look-covariance.ts';

/** How much of their errors two compositions share along each axis, ΔE00²: `sharedVariance`. */
export type SharedVariance = (one: Placed, other: Placed) => number;

// As many squares of looks are 8 MB.
const MOST_REMEMBERED = 1000;

/** `sharedVariance` that remembers what looks of one shelf share: neighbours are asked about again and again. Of a shelf with very many it remembers nothing. */
export function sharedMemo(looks: readonly LinearLook[]): SharedVariance {
  const count = looks.reduce((most, { place }) => Math.max(most, place! + 1), 0);
  if (count > MOST_REMEMBERED) return (one, other) => sharedVariance(one.errors, other.errors);
  const known = new Float64Array(count * count).fill(Number.NaN);
  return (one, other) => {
    if (one.place === undefined || other.place === undefined) return sharedVariance(one.errors, other.errors);
    const at = Math.max(one.place, other.place) * count + Math.min(one.place, other.place);
    let shared = known[at]!;
    if (Number.isNaN(shared)) {
      shared = sharedVariance(one.errors, other.errors);
      known[at] = shared;
    }
    return shared;
  };
}
