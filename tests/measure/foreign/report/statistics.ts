import type { BookResult } from '../book-result.ts';
import type { CourseResult } from '../maker/course-result.ts';
import type { Missed } from '../measures/unseen.ts';

/** A number of some books together; not a number where they have nothing to say of it. */
export type Statistic = (books: readonly BookResult[]) => number;

/** Recipes of a book, first to last. */
export type Span = readonly [first: number, last: number];

/** The value below which a part of some values lies; never a value between two. */
export function quantile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(part * sorted.length) - 1))] ?? Number.NaN;
}

/** Part of some values for which something is so, in percent. */
export function percent<T>(values: readonly T[], isSo: (value: T) => boolean): number {
  return values.length === 0 ? Number.NaN : (100 * values.filter(isSo).length) / values.length;
}

function missedAt(what: 'unseen' | 'seen', after: number, { checkpoints }: BookResult): Missed | undefined {
  const at = after === LAST ? checkpoints.at(-1) : checkpoints.find((each) => each.after === after);
  return at?.[what];
}

/** After the last recipe of a book, however many it has. */
export const LAST = -1;

/** How far what is shown is from the truth after so many recipes, ΔE00. */
export function off(what: 'unseen' | 'seen', after: number, part: number): Statistic {
  return (books) =>
    quantile(
      books.flatMap((book) => missedAt(what, after, book)?.deltaE ?? []),
      part,
    );
}

/** How often the stated bound holds, in percent: of all books, or of the worst. */
export function held(what: 'unseen' | 'seen', after: readonly number[], of: 'all' | 'worst'): Statistic {
  const kept = (books: readonly BookResult[]): number =>
    percent(
      books.flatMap((book) =>
        after.flatMap((count) => {
          const { deltaE = [], bound = [] } = missedAt(what, count, book) ?? {};
          return deltaE.map((each, index) => each <= (bound[index] ?? 0));
        }),
      ),
      (isWithin) => isWithin,
    );
  if (of === 'all') return kept;
  return (books) => {
    const each = books.map((book) => kept([book])).filter((value) => !Number.isNaN(value));
    return each.length === 0 ? Number.NaN : Math.min(...each);
  };
}

function coursesIn(books: readonly BookResult[], [first, last]: Span): readonly CourseResult[] {
  return books.flatMap(({ courses }) => courses.filter(({ number }) => number >= first && number <= last));
}

/** How far the first pour is off, ΔE00. */
export function firstPour(span: Span, part: number): Statistic {
  return (books) =>
    quantile(
      coursesIn(books, span).flatMap(({ rounds: [first] }) => (first ? [first.deltaE] : [])),
      part,
    );
}

/** What the book says of the first pour, the median: what it expects, or without that what it works out. */
export function promisedFirst(span: Span): Statistic {
  return (books) =>
    quantile(
      coursesIn(books, span).flatMap(({ promised }) => (promised ? [promised.expected ?? promised.worked] : [])),
      0.5,
    );
}

/** How far what is said of the first pour is from what comes, both as medians. */
export function promiseOff(span: Span): Statistic {
  return (books) => Math.abs(promisedFirst(span)(books) - firstPour(span, 0.5)(books));
}

/** How often the first pour is within the bound that was said of it, in percent. */
export function firstWithinBound(span: Span): Statistic {
  return (books) =>
    percent(
      coursesIn(books, span).flatMap(({ promised, rounds: [first] }) =>
        first && promised?.bound !== undefined ? [first.deltaE <= promised.bound] : [],
      ),
      (isWithin) => isWithin,
    );
}

/** Rounds until the truth is within a ΔE00; endless where it never is. */
function roundsTo({ rounds }: CourseResult, within: number): number {
  const at = rounds.findIndex(({ deltaE }) => deltaE <= within);
  return at < 0 ? Number.POSITIVE_INFINITY : at + 1;
}

/** Rounds to within a ΔE00 of the truth. */
export function roundsWithin(within: number, span: Span, part: number): Statistic {
  return (books) =>
    quantile(
      coursesIn(books, span).map((course) => roundsTo(course, within)),
      part,
    );
}

/** How often the truth is within a ΔE00 by a round, in percent. */
export function withinBy(within: number, span: Span, round: number): Statistic {
  return (books) => percent(coursesIn(books, span), (course) => roundsTo(course, within) <= round);
}

/** How often it never is, in percent. */
export function neverWithin(within: number, span: Span): Statistic {
  return (books) => percent(coursesIn(books, span), (course) => roundsTo(course, within) === Number.POSITIVE_INFINITY);
}

/** How far the last pour is off, ΔE00; and how often it is within one, in percent. */
export function finalOff(span: Span, part: number): Statistic {
  return (books) => quantile(finals(books, span), part);
}

/** How often the last pour is within a ΔE00, in percent. */
export function finalWithin(within: number, span: Span): Statistic {
  return (books) => percent(finals(books, span), (deltaE) => deltaE <= within);
}

function finals(books: readonly BookResult[], span: Span): readonly number[] {
  return coursesIn(books, span).flatMap(({ rounds }) => rounds.at(-1)?.deltaE ?? []);
}

/** How likely the book said it was that a cup is right, where it stopped, in percent: the mean. */
export function saidLikely(span: Span): Statistic {
  return (books) => {
    const said = coursesIn(books, span).flatMap(({ likely }) => likely ?? []);
    return (100 * said.reduce((sum, each) => sum + each, 0)) / said.length;
  };
}

/** How often such a cup was within a ΔE00 of the truth, in percent. */
export function wasRight(within: number, span: Span): Statistic {
  return (books) =>
    percent(
      coursesIn(books, span).filter(({ likely }) => likely !== undefined),
      ({ rounds }) => (rounds.at(-1)?.deltaE ?? Number.POSITIVE_INFINITY) <= within,
    );
}

/** A step has made the truth worse where it is further off by more than this, ΔE00. */
const WORSE = 0.5;

/** Steps that made the truth worse, in percent of all steps after a first pour. */
export function stepsWorse(span: Span): Statistic {
  return (books) =>
    percent(
      coursesIn(books, span).flatMap(({ rounds }) =>
        rounds.slice(1).map(({ deltaE }, index) => deltaE > (rounds[index]?.deltaE ?? deltaE) + WORSE),
      ),
      (isWorse) => isWorse,
    );
}
