import { describe, expect, test } from 'vitest';
import { learn } from '../../src/learning/learn.ts';
import type { LearningData } from '../../src/learning/learning-data.ts';
import type { LogFault, LogSlip } from '../../src/learning/log-fault.ts';
import { logFaults } from '../../src/learning/log-faults.ts';
import { type FalseLog, withFalseLogs } from './false-logs.ts';
import { priorBook } from './prior-book.ts';

interface Judged {
  readonly data: LearningData;
  readonly slips: readonly FalseLog[];
  readonly faults: readonly LogFault[];
}

const books = [1, 2, 4, 5].map((seed): Judged => {
  const made = priorBook(seed, {
    materials: 12,
    recipes: 28,
    rounds: 3,
    ...(seed > 3 ? { camera: 'phone' } : {}),
  });
  const { data, slips } = withFalseLogs(made.data, made.theta, seed);
  return { data, slips, faults: logFaults(learn(data)) };
});

/** Slips that put a cup off by this are to be found. */
const LARGE = 8;

function isNamed({ slip }: FalseLog, told: LogSlip): boolean {
  if (told.kind === 'bad-look' || slip.kind === 'bad-look') return told.kind === slip.kind;
  if (told.kind === 'miscounted') return false;
  return (
    told.kind === slip.kind &&
    told.material === slip.material &&
    (told.kind !== 'swapped' || slip.kind !== 'swapped' || told.instead === slip.instead)
  );
}

describe('false logs in made-up books', () => {
  const large = books.flatMap(({ slips, faults }) =>
    slips.flatMap((slip) => (slip.size < LARGE ? [] : { slip, told: faults.filter(({ cup }) => cup === slip.cup) })),
  );
  const found = large.filter(({ told }) => told.length > 0);

  test('are many enough to judge by', () => {
    expect(large.length).toBeGreaterThan(7);
  });

  test('are found, nine in ten of the large ones', () => {
    expect(found.length / large.length).toBeGreaterThanOrEqual(0.9);
  });

  test('are found in the round in which they begin', () => {
    const right = found.filter(({ slip, told }) => told.some(({ round }) => round === slip.round));
    expect(right.length / found.length).toBeGreaterThanOrEqual(0.85);
  });

  test('are named among three, three in four of those found', () => {
    const named = found.filter(({ slip, told }) => told.some(({ slips }) => slips.some((each) => isNamed(slip, each))));
    expect(named.length / found.length).toBeGreaterThanOrEqual(0.75);
  });

  test('are not seen where there are none, but in two of a hundred looks', () => {
    const clean = books.flatMap(({ data, slips, faults }) => {
      const false_ = new Set(slips.map(({ cup }) => cup));
      const told = new Set(faults.flatMap(({ looks }) => looks));
      return data.looks.filter(({ cup }) => !false_.has(cup)).map(({ key }) => told.has(key));
    });
    expect(clean.filter((isTold) => isTold).length / clean.length).toBeLessThanOrEqual(0.02);
  });
});

describe('what is told', () => {
  const [{ data, faults }] = books as [Judged];
  const fault = faults[0]!;

  test('is three slips, the likeliest first, that are not certain', () => {
    for (const { slips } of books.flatMap((book) => book.faults)) {
      expect(slips.length).toBe(3);
      const likely = slips.map((each) => each.likely);
      expect(likely).toEqual([...likely].sort((one, other) => other - one));
      expect(likely.reduce((sum, each) => sum + each, 0)).toBeLessThanOrEqual(1.001);
    }
  });

  test('is of a look that counts for little', () => {
    expect(fault.p).toBeLessThan(1e-6);
    expect(fault.weight).toBeLessThan(0.2);
    expect(fault.deltaE).toBeGreaterThan(3);
  });

  test('is answered by looks that were checked', () => {
    const told = new Set(faults.flatMap(({ looks }) => looks));
    const looks = data.looks.map((look) => (told.has(look.key) ? { ...look, checked: true as const } : look));
    const left = logFaults(learn({ ...data, looks }));
    expect(left.filter(({ looks: keys }) => keys.some((key) => told.has(key)))).toEqual([]);
  });

  test('is the same from any order', () => {
    const shuffled = { materials: [...data.materials].reverse(), looks: [...data.looks].reverse() };
    expect(logFaults(learn(shuffled))).toEqual(faults);
  });

  test('is nothing of a book without looks', () => {
    expect(logFaults(learn({ ...data, looks: [] }))).toEqual([]);
  });
});
