import { describe, expect, test } from 'vitest';
import {
  allFlakeText,
  batchFlakesText,
  cupFlakeText,
  flakeNowText,
  flakesABaitText,
  seenFlakeText,
} from '../../src/words/flake.ts';

describe('what is said of flake', () => {
  test.each([
    [0.12, 30, 'shows on about 12 % of its face'],
    [0.004, 30, 'shows on less than 1 % of its face'],
    [0.12, 1.9, 'can hardly be told from the plastic'],
  ])('seenFlakeText(%s of the face, ΔE %s from it)', (seen, contrast, text) => {
    expect(seenFlakeText({ seen, contrast })).toBe(text);
  });

  test('allFlakeText(flakes) adds them up', () => {
    expect(allFlakeText([{ seen: 0.06 }, { seen: 0.131 }])).toBe('shows on about 19 % of its face');
  });

  test.each([
    [838, 'about 840 flakes a bait'],
    [14.9, 'about 15 flakes a bait'],
    [9.6, '10 flakes a bait'],
    [3.2, '3 flakes a bait'],
    [0.8, '1 flake a bait'],
    [0.24, 'a flake in one bait of 4'],
  ])('flakesABaitText(%s)', (count, text) => {
    expect(flakesABaitText(count)).toBe(text);
  });

  test('cupFlakeText(flake, bait) counts a cup’s share of the bait, and says what the cup can’t show', () => {
    const flake = { material: 'copper', title: 'Copper', seen: 0.07, contrast: 28, wanted: 0.15, perMl: 100 };
    expect(cupFlakeText(flake, { cavityMl: 5, share: 0.4 })).toBe(
      'Copper shows on about 7 % of its face, about 200 flakes a bait',
    );
    expect(cupFlakeText({ ...flake, atMost: true })).toBe(
      'Copper shows on about 7 % of its face; about 15 % is wanted, and a cup takes no more of it',
    );
  });

  test('flakeNowText(flake) says what is missing, or that there is too much', () => {
    const flake = { material: 'copper', title: 'Copper', seen: 0.04, contrast: 28, wanted: 0.1, perMl: 30 };
    const more = { grams: 0.7, text: '1/4 tsp' };
    expect(flakeNowText(flake)).toBe('Copper shows on about 4 % of its face');
    expect(flakeNowText({ ...flake, more })).toBe(
      'Copper shows on about 4 % of its face; about 10 % is wanted: add 1/4 tsp, last of all',
    );
    expect(flakeNowText({ ...flake, seen: 0, perMl: 0, more })).toBe(
      'Copper isn’t in it yet; about 10 % is wanted: add 1/4 tsp, last of all',
    );
    expect(flakeNowText({ ...flake, seen: 0.15 })).toBe(
      'Copper shows on about 15 % of its face; about 10 % is wanted: only clear plastic brings it down',
    );
    expect(flakeNowText({ ...flake, atMost: true, more })).toBe(
      'Copper shows on about 4 % of its face; about 10 % is wanted, and a cup takes no more of it; add 1/4 tsp, last of all',
    );
  });

  test('batchFlakesText(counts, molds) names the molds where there are several', () => {
    const mold = (id: string): string => id.toUpperCase();
    expect(batchFlakesText(undefined, mold)).toBeUndefined();
    expect(batchFlakesText([{ mold: 'minnow', count: 15.2 }], mold)).toBe('about 15 flakes a bait');
    const both = [
      { mold: 'minnow', count: 15.2 },
      { mold: 'craw', count: 3.1 },
    ];
    expect(batchFlakesText(both, mold)).toBe('about 15 flakes a bait of MINNOW and 3 flakes a bait of CRAW');
  });
});
