import { expect, test } from 'vitest';
import type { ExpectedDoses } from '../../src/matching/belief/expecting.ts';
import type { Ingredient, MeasuredDoses } from '../../src/matching/measure/measure-doses.ts';
import type { DoseFigures } from '../../src/matching/proposals/figures.ts';
import { worthMeasuring } from '../../src/matching/proposals/worth-measuring.ts';
import type { FoundDoses } from '../../src/matching/search/find-doses.ts';
import { SHELF } from './sample-shelf.ts';

const TOLERANCE = 2;
const COUNT = 240;

const ingredients = Array.from(
  { length: COUNT },
  (): Ingredient => ({ material: SHELF[0]!, cup: 0, letsDown: false, most: 1 }),
);

/** What is expected of its doses stands for them, a hundredth in each of its set. */
const found = (set: readonly number[], expected: number): FoundDoses => {
  const doses = new Float64Array(COUNT);
  for (const j of set) doses[j] = expected / 100;
  return { set, doses, score: expected };
};

/** The whole dose promises what it stands for, less of it a point worse. */
const judging = (whole: readonly FoundDoses[]): Parameters<typeof worthMeasuring>[2] => {
  const all = new Set(whole.map(({ doses }) => doses));
  const expectOf = (doses: Float64Array): ExpectedDoses => {
    const expected = 100 * Math.max(...doses) + (all.has(doses) ? 0 : 1);
    return { expected, bound90: expected, likely: expected <= TOLERANCE ? 1 : 0, scatter: 0.2, views: [] };
  };
  const figuresOf = (doses: Float64Array): DoseFigures => ({
    ...expectOf(doses),
    isOverfull: false,
    untried: 0,
    bottles: doses.filter((dose) => dose > 0).length,
    liquid: 0.01,
    lampDeltaE: 1,
    hueAway: 0.1,
    black: 0,
  });
  return { expect: expectOf, figuresOf };
};

/** Every dose can be measured as it is. */
const asItIs = ({ doses, score }: FoundDoses): MeasuredDoses => ({
  ingredients: [...doses.keys()].flatMap((candidate) =>
    doses[candidate]! > 0
      ? [{ candidate, amount: doses[candidate]!, measure: { grams: 1, text: '', tool: 'drops', effort: 0 } }]
      : [],
  ),
  doses,
  score,
});

test('worthMeasuring(…) keeps the pair of bottles that is within tolerance, however many sets of four come nearer', () => {
  const fours = Array.from({ length: 200 }, (_, index) => found([0, 1, 2, 3 + index], 0.2 + index / 1000));
  const pair = found([7, 8], 1.5);
  const few = worthMeasuring([...fours, pair], ingredients, judging([...fours, pair]), TOLERANCE, asItIs, [100]);
  expect(few).toContain(pair);
  expect(few.length).toBeLessThan(fours.length);
});

test('worthMeasuring(…) takes half a dose where that is expected nearer than the whole', () => {
  const whole = found([3], 4);
  const halved = worthMeasuring(
    [whole],
    ingredients,
    {
      ...judging([]),
      expect: (doses) => {
        const off = Math.abs(100 * doses[3]! - 2);
        return { expected: off, bound90: off, likely: 0, scatter: 0, views: [] };
      },
    },
    TOLERANCE,
    asItIs,
    [100],
  );
  expect(halved[0]!.doses[3]).toBeCloseTo(0.02);
});

test('worthMeasuring(…) goes by what doses are once they are measured: one set nearest in exact doses is far off in drops', () => {
  const nearest = Array.from({ length: 30 }, (_, j) => found([j], 1 + j / 100));
  const other = found([50], 2);
  const all = [...nearest, other];
  const coarse = (each: FoundDoses): MeasuredDoses =>
    asItIs({ ...each, doses: each === other ? each.doses : each.doses.map((dose) => 8 * dose) });
  const [first] = worthMeasuring(all, ingredients, judging([other]), TOLERANCE, coarse, [100]);
  expect(first).toBe(other);
});
