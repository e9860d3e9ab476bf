import type { BookResult } from '../book-result.ts';
import { Chance } from '../world/chance.ts';
import { quantile, type Statistic } from './statistics.ts';

const DRAWS = 1000;
const TAIL = 0.1;

/** The middle 80 % of a statistic over books that are drawn again and again from the ones that there are (Efron 1979). */
export function interval(statistic: Statistic, books: readonly BookResult[]): readonly [number, number] {
  const chance = new Chance(1);
  const drawn = Array.from({ length: DRAWS }, () => statistic(books.map(() => chance.oneOf(books)))).filter(
    (value) => !Number.isNaN(value),
  );
  return [quantile(drawn, TAIL), quantile(drawn, 1 - TAIL)];
}
