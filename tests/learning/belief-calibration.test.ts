import { describe, expect, test } from 'vitest';
import { Belief } from '../../src/learning/belief.ts';
import { colourDoubt } from '../../src/learning/expected-difference.ts';
import { learn } from '../../src/learning/learn.ts';
import { viewsDifference } from '../../src/optics/cup-body.ts';
import { priorBook } from './prior-book.ts';

/** What came of a cup that was asked about. */
interface Case {
  readonly seen: boolean;
  readonly off: number;
  readonly expected: number;
  readonly isWithin: boolean;
}

/** Of so many books, each of its own seed. */
function casesOf(books: number, size: Parameters<typeof priorBook>[1]): readonly Case[] {
  return Array.from({ length: books }, (_, i) => {
    const { data, asked } = priorBook(i + 1, size);
    const belief = new Belief(learn(data));
    return asked.map(({ truth, ...each }): Case => {
      const believed = belief.of(each);
      const { expected, bound90 } = colourDoubt(believed);
      const off = viewsDifference(believed, truth);
      return { seen: each.cup !== undefined, off, expected, isWithin: off <= bound90 };
    });
  }).flat();
}

const mean = (cases: readonly Case[], of: (each: Case) => number): number =>
  cases.reduce((sum, each) => sum + of(each), 0) / cases.length;

const KINDS = [
  ['seen cups', true],
  ['cups that nobody has seen', false],
] as const;

describe('of books that are drawn from what is believed before any look', () => {
  const cases = casesOf(30, { materials: 5, recipes: 5, rounds: 2 });

  test.each(KINDS)('%s: the bound holds nine times in ten, and what is expected comes', (_, seen) => {
    const those = cases.filter((each) => each.seen === seen);
    expect(mean(those, ({ isWithin }) => (isWithin ? 1 : 0))).toBeGreaterThan(0.87);
    expect(mean(those, ({ isWithin }) => (isWithin ? 1 : 0))).toBeLessThan(0.93);
    const ratio = mean(those, ({ off }) => off) / mean(those, ({ expected }) => expected);
    expect(ratio).toBeGreaterThan(0.9);
    expect(ratio).toBeLessThan(1.1);
  });
});

describe('of such books kept by photo, with one camera and its bias', () => {
  const cases = casesOf(16, { materials: 6, recipes: 40, rounds: 2, camera: 'phone' });

  test.each(KINDS)('%s: the bound holds as often', (_, seen) => {
    const those = cases.filter((each) => each.seen === seen);
    expect(mean(those, ({ isWithin }) => (isWithin ? 1 : 0))).toBeGreaterThan(0.85);
    expect(mean(those, ({ isWithin }) => (isWithin ? 1 : 0))).toBeLessThan(0.95);
  });
});
