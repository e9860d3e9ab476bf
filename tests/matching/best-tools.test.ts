import { describe, expect, test } from 'vitest';
import { type ByBestTools, byBestTools, type LeftByTools } from '../../src/matching/measure/best-tools.ts';
import { BENCH } from './sample-shelf.ts';

const TOLERANCE = 2;

/** What is proposed where drops and spoons leave one thing and the scale another; `weighed`: the same materials weighed. */
const chosen = (byHand: number, byScale: number, weighed = byScale): ByBestTools<LeftByTools> =>
  byBestTools(
    BENCH,
    ({ drops }) => [drops ? { deltaE: byHand, weighedDeltaE: weighed } : { deltaE: byScale }],
    (each) => each,
    TOLERANCE,
  );

describe('byBestTools(bench, propose, leftBy, 2)', () => {
  test.each([
    ['misses, and weighing does not', 2.1, 1.9],
    ['misses clearly more than weighing does', 5.9, 2.8],
    ['is right, and weighing is clearly nearer', 1.9, 1.2],
  ])('weighs everything where measuring by hand %s', (_, byHand, byScale) => {
    expect(chosen(byHand, byScale)).toEqual({ proposals: [{ deltaE: byScale }], byHandDeltaE: byHand });
  });

  test.each([
    ['both are as good as right', 0.9, 0.1],
    ['weighing is hardly nearer', 1.6, 1.3],
    ['both miss by about as much', 5.1, 4.9],
    ['weighing is worse', 3, 4],
  ])('keeps drops and spoons where %s', (_, byHand, byScale) => {
    expect(chosen(byHand, byScale)).toEqual({ proposals: [{ deltaE: byHand, weighedDeltaE: byScale }] });
  });

  test('keeps drops and spoons where there is no scale', () => {
    const { scaleGrams: _, ...bench } = BENCH;
    const { proposals } = byBestTools(
      bench,
      () => [{ deltaE: 9 }],
      (each) => each,
      TOLERANCE,
    );
    expect(proposals).toEqual([{ deltaE: 9 }]);
  });
});
