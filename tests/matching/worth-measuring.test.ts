import { expect, test } from 'vitest';
import type { DoseFigures } from '../../src/matching/proposals/figures.ts';
import { worthMeasuring } from '../../src/matching/proposals/worth-measuring.ts';
import type { FoundDoses } from '../../src/matching/search/find-doses.ts';

const TOLERANCE = 2;

/** Its doses are its ΔE and its bottles, and say nothing else. */
const found = (set: readonly number[], deltaE: number): FoundDoses => ({
  set,
  doses: Float64Array.of(deltaE, set.length),
  score: deltaE,
});
const figuresOf = ([deltaE, bottles]: Float64Array): DoseFigures => ({
  deltaE: deltaE!,
  isOverfull: false,
  scatter: 0.2,
  bottles: bottles!,
  liquid: 0.01,
  lampDeltaE: 1,
  hueAway: 0.1,
  black: 0,
});

test('worthMeasuring(…) keeps the pair of bottles that is within tolerance, however many sets of four come nearer', () => {
  const fours = Array.from({ length: 200 }, (_, index) => found([0, 1, 2, 3 + index], 0.2 + index / 1000));
  const pair = found([7, 8], 1.5);
  const few = worthMeasuring([...fours, pair], figuresOf, TOLERANCE);
  expect(few).toContain(pair);
  expect(few.length).toBeLessThan(fours.length);
});
