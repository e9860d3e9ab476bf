import fc from 'fast-check';
import { expect, test } from 'vitest';
import { seededRandom } from '../../src/cup/random.ts';
import { boundedQuadratic } from '../../src/matching/mix/bounded-quadratic.ts';
import { screenSets } from '../../src/matching/search/screen-sets.ts';
import { solveLinear } from '../../src/optics/linear-system.ts';
import { expectClose } from '../optics/close.ts';

const ROWS = 6;
const COUNT = 7;
/** Numbers without the exact ties and zeros that shrinking would look for. */
const numbers = (length: number): fc.Arbitrary<Float64Array> =>
  fc.nat(1e6).map((seed) => {
    const random = seededRandom(seed);
    return Float64Array.from({ length }, () => 2 * random() - 1);
  });

/** Least squares of a set, by elimination; undefined where a dose is not above 0. */
function solved(residuals: Float64Array, slopes: Float64Array, set: readonly number[]): number | undefined {
  const n = set.length;
  const A = new Float64Array(n * n);
  const b = new Float64Array(n);
  for (const [i, j] of set.entries()) {
    for (let row = 0; row < ROWS; row++) {
      b[i]! -= slopes[row * COUNT + j]! * residuals[row]!;
      for (const [k, l] of set.entries()) A[i * n + k]! += slopes[row * COUNT + j]! * slopes[row * COUNT + l]!;
    }
  }
  if (!solveLinear(A, b) || b.some((dose) => !(dose > 0))) return undefined;
  let squares = 0;
  for (let row = 0; row < ROWS; row++) {
    const left = set.reduce((sum, j, i) => sum + slopes[row * COUNT + j]! * b[i]!, residuals[row]!);
    squares += left * left;
  }
  return squares;
}

test('screenSets(model) keeps the sets that trying all of them one by one would keep', () => {
  fc.assert(
    fc.property(numbers(ROWS), numbers(ROWS * COUNT), (residuals, slopes) => {
      const found = screenSets({ residuals, slopes }, COUNT, { size: 3, keep: 4, counts: () => false, limit: 9 });
      for (const size of [1, 2, 3]) {
        const all: number[] = [];
        for (let bits = 1; bits < 2 ** COUNT; bits++) {
          const set = Array.from({ length: COUNT }, (_, j) => j).filter((j) => bits & (2 ** j));
          const squares = set.length === size ? solved(residuals, slopes, set) : undefined;
          if (squares !== undefined) all.push(squares);
        }
        all.sort((one, other) => one - other);
        const kept = found.filter(({ set }) => set.length === size).map(({ squares }) => squares);
        expect(kept.length).toBe(Math.min(4, all.length));
        for (const [i, squares] of kept.entries())
          expectClose(squares, all[i]!, 1e-6 + 1e-6 * all[i]!, `size ${size}, place ${i}`);
      }
    }),
    { numRuns: 60 },
  );
});

test('screenSets(model) takes no more candidates that count than the limit', () => {
  fc.assert(
    fc.property(numbers(ROWS), numbers(ROWS * COUNT), (residuals, slopes) => {
      const found = screenSets({ residuals, slopes }, COUNT, { size: 3, keep: 9, counts: (j) => j > 2, limit: 1 });
      for (const { set } of found) expect(set.filter((j) => j > 2).length).toBeLessThanOrEqual(1);
    }),
  );
});

test('boundedQuadratic(H, g, low, high) leaves no way down within its bounds', () => {
  fc.assert(
    fc.property(numbers(ROWS * 3), numbers(ROWS), (J, r) => {
      const H = new Float64Array(9);
      const g = new Float64Array(3);
      for (let i = 0; i < 3; i++) {
        for (let row = 0; row < ROWS; row++) {
          g[i]! += J[row * 3 + i]! * r[row]!;
          for (let k = 0; k < 3; k++) H[i * 3 + k]! += J[row * 3 + i]! * J[row * 3 + k]!;
        }
        H[i * 3 + i]! += 0.1;
      }
      const low = Float64Array.of(0, -0.2, 0);
      const high = Float64Array.of(1, 0.2, 0.5);
      const x = new Float64Array(3);
      boundedQuadratic(H, g, low, high, x);
      for (let i = 0; i < 3; i++) {
        const slope = g[i]! + H[i * 3]! * x[0]! + H[i * 3 + 1]! * x[1]! + H[i * 3 + 2]! * x[2]!;
        expect(x[i]!).toBeGreaterThanOrEqual(low[i]!);
        expect(x[i]!).toBeLessThanOrEqual(high[i]!);
        if (x[i]! > low[i]! + 1e-9) expect(slope).toBeLessThan(2e-3);
        if (x[i]! < high[i]! - 1e-9) expect(slope).toBeGreaterThan(-2e-3);
      }
    }),
  );
});
