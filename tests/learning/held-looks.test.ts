import { expect, test } from 'vitest';
import { CompositionLooker } from '../../src/learning/composition-views.ts';
import { HeldLooks } from '../../src/learning/held-looks.ts';
import { shelfProblem } from '../../src/learning/shelf-problem.ts';
import { shelfState } from '../../src/learning/shelf-state.ts';
import { appliedMetric, localMetric } from '../../src/optics/local-metric.ts';
import { simulatedBook } from './simulated-book.ts';

const { data } = simulatedBook({ seed: 4, materials: 5, recipes: 1, rounds: 1 });
const problem = shelfProblem(data);
const block = problem.cups[0]!;
const count = problem.unknowns.count;
const looker = new CompositionLooker(problem.unknowns);

/** ln of the density of six numbers, by Gauss's elimination. */
function density(off: readonly number[], covariance: readonly (readonly number[])[]): number {
  const rows = covariance.map((row, i) => [...row, off[i]!]);
  let ln = 0;
  let square = 0;
  for (let i = 0; i < rows.length; i++) {
    const pivot = rows[i]![i]!;
    ln += Math.log(pivot) + Math.log(2 * Math.PI);
    square += rows[i]!.at(-1)! ** 2 / pivot;
    for (let j = i + 1; j < rows.length; j++) {
      const times = rows[j]![i]! / pivot;
      for (let k = i; k <= rows.length; k++) rows[j]![k]! -= times * rows[i]![k]!;
    }
  }
  return -(square + ln) / 2;
}

/** Both views of the look in the metric of what was seen, at some theta. */
function colours(theta: Float64Array): readonly number[] {
  const { overWhite, overBlack } = block.looks[0]!;
  const { white, black } = looker.views(block.items[0]!.composition, shelfState(problem.unknowns, theta), {
    white: true,
    black: true,
  });
  return [[overWhite!, white!.lab] as const, [overBlack!, black!.lab] as const].flatMap(([seen, made]) =>
    Array.from(appliedMetric(localMetric(seen), seen.L - made.L, seen.a - made.a, seen.b - made.b)),
  );
}

test('the density of a look is that of a normal number in six places', () => {
  const theta = new Float64Array(count);
  const inverse = new Float64Array(count * count);
  for (let i = 0; i < count; i++) inverse[i * count + i] = 0.5 + 0.01 * i;
  const held = new HeldLooks(block, { state: shelfState(problem.unknowns, theta), looker, doubt: { inverse, count } });
  const off = colours(theta);
  const step = 1e-5;
  const slopes = Array.from({ length: count }, (_, i) => {
    const [more, less] = [step, -step].map((by) => colours(Float64Array.from(theta, (x, j) => (i === j ? x + by : x))));
    return more!.map((each, row) => (each - less![row]!) / (2 * step));
  });
  const covariance = (extra: number): number[][] =>
    off.map((_, i) =>
      off.map((__, j) => {
        const own = i === j ? 0.65 ** 2 + 0.35 ** 2 + 0.4 ** 2 + extra : 0;
        return slopes.reduce((sum, slope, m) => sum + slope[i]! * slope[j]! * inverse[m * count + m]!, own);
      }),
    );
  expect(held.logDensity()).toBeCloseTo(density(off, covariance(0)), 4);
  expect(held.logDensity(() => 9)).toBeCloseTo(density(off, covariance(9)), 4);
});
