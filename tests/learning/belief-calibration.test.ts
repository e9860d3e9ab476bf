import { describe, expect, test } from 'vitest';
import { Belief } from '../../src/learning/belief.ts';
import { colourDoubt } from '../../src/learning/expected-difference.ts';
import { learn } from '../../src/learning/learn.ts';
import { viewsDifference } from '../../src/optics/cup-body.ts';
import { priorBook } from './prior-book.ts';

const BOOKS = 30;

describe('of books that are drawn from what is believed before any look', () => {
  const cases = Array.from({ length: BOOKS }, (_, i) => {
    const { data, asked } = priorBook(i + 1, { materials: 5, recipes: 5, rounds: 2 });
    const belief = new Belief(learn(data));
    return asked.map(({ truth, ...each }) => {
      const believed = belief.of(each);
      const { expected, bound90 } = colourDoubt(believed);
      const off = viewsDifference(believed, truth);
      return { seen: each.cup !== undefined, off, expected, isWithin: off <= bound90 };
    });
  }).flat();

  test.each([
    ['seen cups', true],
    ['cups that nobody has seen', false],
  ])('%s: the bound holds nine times in ten, and what is expected comes', (_, seen) => {
    const those = cases.filter((each) => each.seen === seen);
    const mean = (of: (each: (typeof those)[number]) => number): number =>
      those.reduce((sum, each) => sum + of(each), 0) / those.length;
    expect(mean(({ isWithin }) => (isWithin ? 1 : 0))).toBeGreaterThan(0.87);
    expect(mean(({ isWithin }) => (isWithin ? 1 : 0))).toBeLessThan(0.93);
    const ratio = mean(({ off }) => off) / mean(({ expected }) => expected);
    expect(ratio).toBeGreaterThan(0.9);
    expect(ratio).toBeLessThan(1.1);
  });
});
