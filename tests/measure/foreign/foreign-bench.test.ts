import { expect, test } from 'vitest';
import { chipFile } from './book/log-text.ts';
import { lookFields } from './book/look-fields.ts';
import { MakersBook } from './book/makers-book.ts';
import { shelfFiles } from './book/shelf-files.ts';
import type { BookResult } from './book-result.ts';
import { CONDITIONS, conditionNamed } from './conditions.ts';
import { difference } from './physics/eye.ts';
import { interval } from './report/bootstrap.ts';
import { falseAlarms, slipsFound, slipsNamed } from './report/slip-statistics.ts';
import {
  finalWithin,
  firstPour,
  held,
  neverWithin,
  off,
  quantile,
  roundsWithin,
  stepsWorse,
} from './report/statistics.ts';
import { tableOf } from './report/table.ts';
import { runBook } from './run-book.ts';
import { Chance } from './world/chance.ts';
import { cameraOf, displaced, noted } from './world/eye-noise.ts';
import { foreignWorld } from './world/world.ts';

const COLOUR = { L: 48, a: 31, b: -22 };

/** Two matches: one within 2 at its second round, one that never is and is made worse once, with a slip that is told. */
const BOOK: BookResult = {
  condition: 'half',
  seed: 101,
  recipes: 2,
  checkpoints: [
    { after: 0, unseen: { deltaE: [1, 2, 3, 10], bound: [2, 2, 2, 2] }, seen: { deltaE: [], bound: [] } },
    { after: 40, unseen: { deltaE: [1, 1, 1, 3], bound: [2, 2, 2, 2] }, seen: { deltaE: [0.5], bound: [1] } },
  ],
  courses: [
    { number: 1, promised: { worked: 1 }, rounds: [{ deltaE: 6 }, { deltaE: 1.5 }], ended: 'leave-it' },
    {
      number: 2,
      promised: { worked: 2 },
      rounds: [
        { deltaE: 4 },
        {
          deltaE: 9,
          slips: [{ kind: 'not-made', material: 'rust', size: 12 }],
          isFaulty: true,
          told: ['did the 4 drops of Rust go in?'],
        },
      ],
      ended: 'eight rounds',
    },
  ],
  commandsCompared: 0,
  cpuSeconds: 1,
};

test('statistics of a book that is worked out by hand', () => {
  expect(quantile([3, 1, 2, 4], 0.5)).toBe(2);
  expect(off('unseen', 0, 0.9)([BOOK])).toBe(10);
  expect(off('unseen', 20, 0.5)([BOOK])).toBeNaN();
  expect(held('unseen', [0, 40], 'all')([BOOK])).toBe(62.5);
  expect(firstPour([1, 10], 0.5)([BOOK])).toBe(4);
  expect(roundsWithin(2, [1, 10], 0.5)([BOOK])).toBe(2);
  expect(neverWithin(2, [1, 10])([BOOK])).toBe(50);
  expect(finalWithin(3, [1, 10])([BOOK])).toBe(50);
  expect(stepsWorse([1, 40])([BOOK])).toBe(50);
  expect(slipsFound([BOOK])).toBe(100);
  expect(slipsNamed([BOOK])).toBe(100);
  expect(falseAlarms([BOOK])).toBe(0);
});

test('the table says of each row whether its interval includes the figure', () => {
  const lines = tableOf([BOOK]);
  expect(lines).toContain('unseen mixtures after 40 recipes [half, 1] | median | ≤ 1.6 | 1 | 1 … 1 | yes');
  expect(lines).toContain('unseen mixtures after 20 recipes [half, 1] | p90 | ≤ 7.5 | not said |  | not known');
  expect(lines).toContain('rounds to true ≤ 3, recipes 1–10 [half, 1] | never | ≤ 3 % | 50 % | 50 % … 50 % | NO');
});

test('interval narrows to the figure where all books are alike, and holds it where they are not', () => {
  const other = { ...BOOK, checkpoints: [{ ...BOOK.checkpoints[1]!, unseen: { deltaE: [5], bound: [6] } }] };
  expect(interval(off('unseen', 40, 0.5), [BOOK, BOOK])).toEqual([1, 1]);
  expect(interval(off('unseen', 40, 0.5), [BOOK, other])).toEqual([1, 5]);
});

test('noise is as large as it says, and the views of a photo err together', () => {
  for (const direction of [
    [1, 0, 0],
    [0, 2, -1],
    [0.3, 0.1, 0.4],
  ])
    expect(difference(displaced(COLOUR, direction), COLOUR)).toBeCloseTo(Math.hypot(...direction), 2);
  const chance = new Chance(5);
  const truth = { white: { L: 60, a: 5, b: 10 }, black: { L: 50, a: 4, b: 6 } };
  const squares = { instrument: 0, photo: 0, white: 0, both: 0 };
  for (let draw = 0; draw < 3000; draw++) {
    squares.instrument += difference(noted(truth, cameraOf('instrument', 0.7, chance), chance).white, truth.white) ** 2;
    const photo = noted(truth, cameraOf('photo', 2, chance), chance);
    squares.photo += difference(photo.white, truth.white) ** 2;
    const [white, black] = [photo.white.L - truth.white.L, photo.black.L - truth.black.L];
    squares.white += (white * white + black * black) / 2;
    squares.both += white * black;
  }
  expect(Math.sqrt(squares.instrument / 3000)).toBeCloseTo(0.7, 1);
  expect(Math.sqrt(squares.photo / 3000)).toBeCloseTo(2, 0);
  expect(squares.both / squares.white).toBeCloseTo(0.64, 1);
});

test('a book of one recipe is kept to its end', async () => {
  const { courses, checkpoints } = await runBook({ ...conditionNamed('false'), recipes: 1 }, 1, 20);
  expect(courses.map(({ number }) => number)).toEqual([1]);
  expect(courses[0]?.rounds.length).toBeGreaterThan(0);
  expect(checkpoints.map(({ after }) => after)).toEqual([0]);
  expect(checkpoints[0]?.unseen.deltaE).toHaveLength(20);
  expect(checkpoints[0]?.unseen.deltaE.every((deltaE) => deltaE >= 0 && deltaE < 100)).toBe(true);
});

test('a chip that was put stands in the book, and teaches', () => {
  const world = foreignWorld(new Chance(3));
  const book = new MakersBook(shelfFiles(world, conditionNamed('photo2'), new Chance(3)));
  const amounts = [{ material: 'rust', grams: 0.06, text: '1 drop' }];
  const seen = lookFields({ white: COLOUR, black: { ...COLOUR, L: 30 } }, conditionNamed('photo2'));
  book.write(chipFile('chip-1', { plasticMl: 100, thicknessMm: 6, amounts }, seen));
  const [chip] = book.opened().book.chips;
  expect(chip?.rounds[0]?.contents.map(({ material }) => material)).toEqual(['rust']);
  expect(chip?.rounds[0]?.seen[0]).toMatchObject({ thicknessMm: 6, camera: 'phone', doubt: { bound: 2.9 } });
});

test('foreignWorld and shelfFiles: the same seed gives the same shelf, another one another', () => {
  const shelf = (seed: number): string =>
    JSON.stringify(shelfFiles(foreignWorld(new Chance(seed)), conditionNamed('half'), new Chance(seed)));
  expect(shelf(1)).toBe(shelf(1));
  expect(shelf(1)).not.toBe(shelf(2));
});

test('names of conditions are names of files, and no two alike', () => {
  const names = CONDITIONS.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  for (const name of names) expect(name).toMatch(/^[a-z0-9-]+$/);
});
