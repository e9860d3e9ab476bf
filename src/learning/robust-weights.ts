import { type GroupWeights, groupName } from './believed-groups.ts';
import type { GroupTest } from './group-tests.ts';
import type { TaughtLook } from './learning-data.ts';

/**
 * Up to this mean square of what it is off by, in its deviations, something is believed as noted. From our own study on simulated benches:
 * true looks lose next to nothing by it, and false ones no longer spoil a shelf.
 */
const BELIEVED_UP_TO = 1.9;

/** Beyond, belief falls with this power of the mean square. */
const FALLS_WITH = 2;

/** Nothing is believed less: with this what is off by 30 counts for no more than what is off by 1. */
export const LEAST_BELIEVED = 1e-3;

/**
 * How far each group is believed after a test: min(1, (1.9 / (chi²/dof))²). A look that was checked always is.
 *
 * Rounded to three digits.
 * @param looks those that the tests are of, at least
 */
export function robustWeights(looks: readonly TaughtLook[], tests: readonly GroupTest[]): GroupWeights {
  const checked = new Set(looks.flatMap(({ key, checked }) => (checked ? key : [])));
  const weights = new Map<string, number>();
  for (const test of tests) {
    if (test.kind === 'look' && checked.has(test.key)) continue;
    const weight = (BELIEVED_UP_TO / test.unlike) ** FALLS_WITH;
    if (weight < 1) weights.set(groupName(test), Number(Math.max(LEAST_BELIEVED, weight).toPrecision(3)));
  }
  return weights;
}
