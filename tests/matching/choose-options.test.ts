import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Choice, chooseOptions } from '../../src/matching/measure/choose-options.ts';

/** A sum of squares about places that lie between the options, with each list leaning on the one before. */
const bowl =
  (places: readonly number[]) =>
  (choice: Choice): number =>
    choice.reduce((sum, at, i) => sum + (at + 0.3 * (choice[i - 1] ?? 0) - places[i]!) ** 2, 0);

const places = (lists: number): fc.Arbitrary<number[]> =>
  fc.array(fc.double({ min: 0, max: 4, noNaN: true }), { minLength: lists, maxLength: lists });

/** The least cost of all choices, one by one. */
function leastOf(lengths: readonly number[], cost: (choice: Choice) => number): number {
  const all = lengths.reduce<readonly (readonly number[])[]>(
    (choices, length) => choices.flatMap((each) => Array.from({ length }, (_, option) => [...each, option])),
    [[]],
  );
  return Math.min(...all.map(cost));
}

test('chooseOptions(…) finds the least of all, where the estimate is right', () => {
  fc.assert(
    fc.property(places(4), (at) => {
      const lengths = [5, 4, 5, 6];
      const cost = bowl(at);
      const chosen = chooseOptions({ lengths, cost, estimateNear: () => cost });
      expect(cost(chosen)).toBeCloseTo(leastOf(lengths, cost), 9);
    }),
  );
});

test('chooseOptions(…) tries all where they are few, whatever the estimate says', () => {
  fc.assert(
    fc.property(places(2), (at) => {
      const cost = bowl(at);
      const chosen = chooseOptions({ lengths: [4, 5], cost, estimateNear: () => (choice) => -cost(choice) });
      expect(cost(chosen)).toBeCloseTo(leastOf([4, 5], cost), 9);
    }),
  );
});

test('chooseOptions(…) estimates a second time near the best that it has worked out', () => {
  const cost = bowl([2, 2, 2]);
  const asked: (Choice | undefined)[] = [];
  const chosen = chooseOptions({
    lengths: [5, 5, 5],
    cost,
    estimateNear: (near) => {
      asked.push(near);
      return near ? cost : () => 0;
    },
  });
  expect(asked).toHaveLength(2);
  expect(cost(chosen)).toBeCloseTo(leastOf([5, 5, 5], cost), 9);
});
