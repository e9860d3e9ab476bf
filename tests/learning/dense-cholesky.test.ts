import fc from 'fast-check';
import { expect, test } from 'vitest';
import { factorizeDense, inverseDense, solveDense } from '../../src/learning/dense-cholesky.ts';
import { solveLinear } from '../../src/optics/linear-system.ts';

const N = 6;
const numbers = (length: number): fc.Arbitrary<number[]> =>
  fc.array(fc.double({ min: -2, max: 2, noNaN: true }), { minLength: length, maxLength: length });

/** B Bᵀ + 1. */
function positive(B: readonly number[]): Float64Array {
  const A = new Float64Array(N * N);
  for (let i = 0; i < N; i++)
    for (let j = 0; j < N; j++) {
      A[i * N + j] = i === j ? 1 : 0;
      for (let k = 0; k < N; k++) A[i * N + j]! += B[i * N + k]! * B[j * N + k]!;
    }
  return A;
}

test('solves as elimination does, and inverts', () => {
  fc.assert(
    fc.property(numbers(N * N), numbers(N), (B, b) => {
      const A = positive(B);
      const L = A.slice();
      factorizeDense(L, N);
      const x = Float64Array.from(b);
      solveDense(L, N, x);
      const y = Float64Array.from(b);
      expect(solveLinear(A.slice(), y)).toBe(true);
      for (let i = 0; i < N; i++) expect(x[i]).toBeCloseTo(y[i]!, 8);
      const inverse = inverseDense(L, N);
      for (let i = 0; i < N; i++)
        for (let j = 0; j < N; j++) {
          let sum = 0;
          for (let k = 0; k < N; k++) sum += A[i * N + k]! * inverse[k * N + j]!;
          expect(sum).toBeCloseTo(i === j ? 1 : 0, 8);
        }
    }),
  );
});

test('what is not positive definite is refused', () => {
  expect(() => factorizeDense(Float64Array.of(1, 2, 2, 1), 2)).toThrow(RangeError);
});
