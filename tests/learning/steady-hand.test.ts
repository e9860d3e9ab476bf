import { describe, expect, test } from 'vitest';
import { Belief } from '../../src/learning/belief.ts';
import { learn } from '../../src/learning/learn.ts';
import { priorBook } from './prior-book.ts';

const USUAL = 0.1;

/** The hand that is told from a book whose doses were off by so much. */
const handOf = (seed: number, spread: number): number =>
  new Belief(learn(priorBook(seed, { materials: 8, recipes: 40, rounds: 1, spread }).data)).hand(() => USUAL);

describe('the hand that doses were measured with', () => {
  test.each([
    ['a steady hand', 0, 0, 0.6],
    ['a usual one', USUAL, 0.6, 1.6],
    ['a shaky one', 3 * USUAL, 1.4, 3.3],
  ])('is told from looks: %s', (_, spread, from, to) => {
    const hands = [1, 2, 3].map((seed) => handOf(seed, spread));
    const mean = hands.reduce((sum, hand) => sum + hand, 0) / hands.length;
    expect(mean).toBeGreaterThanOrEqual(from);
    expect(mean).toBeLessThanOrEqual(to);
  });

  test('is as usual where there is no look', () => {
    const { data } = priorBook(1, { materials: 4, recipes: 1, rounds: 1 });
    expect(new Belief(learn({ ...data, looks: [] })).hand(() => USUAL)).toBe(1);
  });
});
