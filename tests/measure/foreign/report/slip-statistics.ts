import type { BookResult } from '../book-result.ts';
import type { CourseResult } from '../maker/course-result.ts';
import type { Slip } from '../maker/slips.ts';
import { SHELF_PRODUCTS } from '../world/products.ts';
import { percent, type Statistic } from './statistics.ts';

/** Slips that put a look off by this, ΔE00, are to be found. */
const LARGE = 8;

interface Found {
  readonly slip: Slip;
  readonly size: number;
  /** All that the book told of the log from then on; empty where it told nothing. */
  readonly told: readonly string[];
}

/** Each slip of a course once, with how far it put the look off when it happened, and what was told of the log since. */
function slipsOf({ rounds, toldAtLast = [] }: CourseResult): readonly Found[] {
  const known = new Set<string>();
  return rounds.flatMap(({ slips = [], slipSize = 0 }, index) =>
    slips.flatMap((slip): Found[] => {
      const name = JSON.stringify(slip);
      if (known.has(name)) return [];
      known.add(name);
      return [{ slip, size: slipSize, told: [...rounds.slice(index).flatMap(({ told = [] }) => told), ...toldAtLast] }];
    }),
  );
}

function large(books: readonly BookResult[]): readonly Found[] {
  return books.flatMap(({ courses }) => courses.flatMap(slipsOf)).filter(({ size }) => size >= LARGE);
}

/** Large slips of which the book told, in percent. */
export const slipsFound: Statistic = (books) => percent(large(books), ({ told }) => told.length > 0);

/** Of those, the ones whose bottle is named; a look at another cup has none. */
export const slipsNamed: Statistic = (books) =>
  percent(
    large(books).filter(({ told }) => told.length > 0),
    ({ slip, told }) =>
      slip.kind === 'other-cup' ||
      told.some((says) => says.includes(titleOf(slip.material)) || says.includes(slip.material)),
  );

/** Looks at a cup without a slip of which the book told that they do not fit, in percent. */
export const falseAlarms: Statistic = (books) => {
  const clean = books.flatMap(({ courses }) =>
    courses.flatMap(({ rounds, toldAtLast = [] }) => {
      const sound = rounds.filter(({ slips }) => slips === undefined);
      const isSound = sound.length === rounds.length;
      return sound.map(({ told = [] }, index) => told.length > 0 || (isSound && index < toldAtLast.length));
    }),
  );
  return percent(clean, (isAlarm) => isAlarm);
};

/** How many slips were large. */
export const slipsLarge: Statistic = (books) => large(books).length;

function titleOf(id: string): string {
  return SHELF_PRODUCTS.find((product) => product.id === id)?.title ?? id;
}
