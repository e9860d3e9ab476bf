import { describe, expect, test } from 'vitest';
import type { Expectation } from '../../src/matching/belief/expectation.ts';
import {
  type ByBestTools,
  byBestTools,
  leadsByWeight,
  type PromisedByTools,
} from '../../src/matching/measure/best-tools.ts';
import { BENCH } from './sample-shelf.ts';

const TOLERANCE = 2;

/** Of what nothing is in doubt. */
const sure = (deltaE: number): Expectation => ({
  expected: deltaE,
  bound90: deltaE,
  likely: deltaE <= TOLERANCE ? 1 : 0,
});
const byHandOf = (byHand: number, weighed: number): PromisedByTools => ({ ...sure(byHand), weighed: sure(weighed) });

/** What is proposed where drops and spoons leave one thing and the scale another. */
const chosen = (byHand: number, byScale: number): ByBestTools<PromisedByTools> =>
  byBestTools(BENCH, ({ drops }) => [drops ? byHandOf(byHand, byScale) : sure(byScale)], TOLERANCE);

describe('byBestTools(bench, propose, 2)', () => {
  test.each([
    ['misses, and weighing does not', 2.1, 1.9],
    ['misses clearly more than weighing does', 5.9, 2.8],
    ['is right, and weighing is clearly nearer', 1.9, 1.2],
  ])('weighs everything where measuring by hand %s', (_, byHand, byScale) => {
    expect(chosen(byHand, byScale)).toEqual({ proposals: [sure(byScale)], byHand: sure(byHand) });
  });

  test.each([
    ['both are as good as right', 0.9, 0.1],
    ['weighing is hardly nearer', 1.6, 1.3],
    ['both miss by about as much', 5.1, 4.9],
    ['weighing is worse', 3, 4],
  ])('keeps drops and spoons where %s', (_, byHand, byScale) => {
    expect(chosen(byHand, byScale)).toEqual({ proposals: [byHandOf(byHand, byScale)] });
  });

  test('weighs everything where only that is likely right', () => {
    const hand = { expected: 1.4, bound90: 2.6, likely: 0.8 };
    const scale = { expected: 1.2, bound90: 2, likely: 0.9 };
    const { proposals } = byBestTools(BENCH, ({ drops }): PromisedByTools[] => [drops ? hand : scale], TOLERANCE);
    expect(proposals).toEqual([scale]);
  });

  test('keeps drops and spoons where there is no scale', () => {
    const { scaleGrams: _, ...bench } = BENCH;
    expect(byBestTools(bench, () => [sure(9)], TOLERANCE).proposals).toEqual([sure(9)]);
  });
});

test('leadsByWeight(…): where drops and spoons are not likely right, and weighing is clearly nearer', () => {
  expect(leadsByWeight(byHandOf(3, 2.4))).toBe(true);
  expect(leadsByWeight(byHandOf(3, 2.6))).toBe(false);
  expect(leadsByWeight(byHandOf(1.9, 0.4))).toBe(false);
  expect(leadsByWeight(sure(3))).toBe(false);
});
