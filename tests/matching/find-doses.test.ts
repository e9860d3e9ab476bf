import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Mix } from '../../src/matching/mix/mix.ts';
import type { MixGoal } from '../../src/matching/mix/mix-problem.ts';
import { findDoses } from '../../src/matching/search/find-doses.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { expectClose } from '../optics/close.ts';
import { CLEAR, SHELF } from './sample-shelf.ts';

const LAYERS = [{ cup: 0, thickness: 6 }];
const MOST = 0.06;
const places = [[CLEAR.constants!]];
const mixFor = (goal: MixGoal): Mix =>
  new Mix({
    optics: USUAL_OPTICS,
    cups: [CLEAR.constants!],
    goals: [goal],
    candidates: SHELF.map(({ constants }) => ({ cup: 0, constants: constants!, load: 1, most: MOST })),
  });
const anyMix = mixFor({ layers: LAYERS, overWhite: { L: 50, a: 0, b: 0 }, overBlack: { L: 50, a: 0, b: 0 } });

/** A cup of up to three materials, and the question of what is in it. */
const cups = fc.uniqueArray(fc.nat(SHELF.length - 1), { minLength: 1, maxLength: 3 }).chain((set) =>
  fc.tuple(...set.map(() => fc.double({ min: 0.2, max: 1.5, noNaN: true }))).map((parts) => {
    const doses = new Float64Array(SHELF.length);
    for (const [i, j] of set.entries()) doses[j] = parts[i]! * SHELF[j]!.typical!;
    const [overWhite, overBlack] = anyMix.labs(doses);
    return { set, mix: mixFor({ layers: LAYERS, overWhite: overWhite!, overBlack: overBlack! }) };
  }),
);

test('findDoses(mix) finds doses that show what a cup of as many materials shows', () => {
  fc.assert(
    fc.property(cups, ({ set, mix }) => {
      expect(findDoses(mix, places, { size: set.length })[0]!.score).toBeLessThan(0.3);
    }),
    { numRuns: 40 },
  );
});

test('findDoses(mix) gives the best first, each with what it comes to, its doses within their bounds and its set their support', () => {
  fc.assert(
    fc.property(cups, fc.integer({ min: 1, max: 3 }), ({ mix }, size) => {
      const found = findDoses(mix, places, { size });
      let before = 0;
      for (const { set, doses, score } of found) {
        expect(score).toBeGreaterThanOrEqual(before);
        before = score;
        expectClose(mix.score(doses), score, 1e-9);
        expect(set.length).toBeLessThanOrEqual(size);
        expect(set).toEqual([...doses.keys()].filter((j) => doses[j]! > 0));
        expect(doses.every((dose) => dose >= 0 && dose <= MOST)).toBe(true);
      }
    }),
    { numRuns: 20 },
  );
});

test('findDoses(mix) of more materials together is never worse by more than screening may miss, ΔE00 0.3', () => {
  fc.assert(
    fc.property(cups, ({ mix }) => {
      const [one, two, three] = [1, 2, 3].map((size) => findDoses(mix, places, { size })[0]!.score);
      expect(two!).toBeLessThan(one! + 0.3);
      expect(three!).toBeLessThan(two! + 0.3);
    }),
    { numRuns: 15 },
  );
});

test('findDoses(mix) takes no more of what counts than the limit', () => {
  fc.assert(
    fc.property(cups, fc.nat(2), ({ mix }, limit) => {
      const counts = (j: number): boolean => j % 2 === 0;
      for (const { set } of findDoses(mix, places, { size: 3, counts, limit }))
        expect(set.filter(counts).length).toBeLessThanOrEqual(limit);
    }),
    { numRuns: 15 },
  );
});

test('findDoses(mix) of nothing, or of no candidates, finds nothing', () => {
  expect(findDoses(anyMix, places, { size: 0 })).toEqual([]);
  const goal = { layers: LAYERS, overWhite: { L: 50, a: 0, b: 0 } };
  const none = new Mix({ optics: USUAL_OPTICS, cups: [CLEAR.constants!], goals: [goal], candidates: [] });
  expect(findDoses(none, places, { size: 2 })).toEqual([]);
});
