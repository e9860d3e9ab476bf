import { Chance } from '../world/chance.ts';
import { quantile } from './statistics.ts';

const DRAWS = 1000;
const TAIL = 0.1;

/** The middle 80 % of a statistic over things that are drawn again and again from the ones that there are (Efron 1979). */
export function interval<T>(
  statistic: (things: readonly T[]) => number,
  things: readonly T[],
): readonly [number, number] {
  const chance = new Chance(1);
  const drawn = Array.from({ length: DRAWS }, () => statistic(things.map(() => chance.oneOf(things)))).filter(
    (value) => !Number.isNaN(value),
  );
  return [quantile(drawn, TAIL), quantile(drawn, 1 - TAIL)];
}
