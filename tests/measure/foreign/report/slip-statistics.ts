import type { BookResult } from '../book-result.ts';
import type { CourseResult } from '../maker/course-result.ts';
import type { SizedSlip } from '../maker/slips.ts';
import { SHELF_PRODUCTS } from '../world/products.ts';
import { percent, type Statistic } from './statistics.ts';

/** Slips that put a look off by this, ΔE00, are to be found. */
const LARGE = 8;

interface Found {
  readonly slip: SizedSlip;
  /** All that the book told of the log from then on; empty where it told nothing. */
  readonly told: readonly string[];
}

/** Each slip of a course, with what was told of the log since. */
function slipsOf({ rounds, toldAtLast = [] }: CourseResult): readonly Found[] {
  return rounds.flatMap(({ slips = [] }, index) => {
    const told = [...rounds.slice(index).flatMap((round) => round.told ?? []), ...toldAtLast];
    return slips.map((slip) => ({ slip, told }));
  });
}

function large(books: readonly BookResult[]): readonly Found[] {
  return books.flatMap(({ courses }) => courses.flatMap(slipsOf)).filter(({ slip: { size } }) => size >= LARGE);
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
      const sound = rounds.filter(({ isFaulty }) => !isFaulty);
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
