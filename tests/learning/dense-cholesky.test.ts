import fc from 'fast-check';
import { expect, test } from 'vitest';
import { factorizeDense, factorizeSturdy, solveDense } from '../../src/learning/dense-cholesky.ts';
import { inverseDense } from '../../src/learning/dense-inverse.ts';
import { solveLinear } from '../../src/optics/linear-system.ts';

const N = 11;
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

test('of a matrix with blocks of nothing in it, factor and inverse are its own', () => {
  const block = fc.integer({ min: 1, max: 5 });
  fc.assert(
    fc.property(numbers(N * N), fc.array(block, { minLength: 3, maxLength: 6 }), (B, blocks) => {
      // Unknowns of a few things, each of which goes with itself and with the last three unknowns alone.
      const of = blocks.flatMap((count, thing) => Array.from({ length: count }, () => thing)).slice(0, N - 3);
      const isNothing = (i: number, k: number): boolean => i < N - 3 && (k >= N - 3 || of[i] !== of[k]);
      const A = positive(B.map((value, at) => (isNothing(Math.floor(at / N), at % N) ? 0 : value)));
      const L = A.slice();
      factorizeDense(L, N);
      const inverse = inverseDense(L, N);
      for (let i = 0; i < N; i++)
        for (let j = 0; j < N; j++) {
          let square = 0;
          let one = 0;
          for (let k = 0; k <= Math.min(i, j); k++) square += L[i * N + k]! * L[j * N + k]!;
          for (let k = 0; k < N; k++) one += A[i * N + k]! * inverse[k * N + j]!;
          expect(square).toBeCloseTo(A[i * N + j]!, 9);
          expect(one).toBeCloseTo(i === j ? 1 : 0, 8);
        }
    }),
  );
});

test('what is not positive definite is refused', () => {
  expect(() => factorizeDense(Float64Array.of(1, 2, 2, 1), 2)).toThrow(RangeError);
});

test('what only rounding keeps from being positive definite is solved as far as it can be told', () => {
  // Two unknowns of which only the sum is known, to sixteen digits: there is no more of the second than of rounding.
  const A = Float64Array.of(1e16, 0, 1e16, 1e16 - 4);
  factorizeSturdy(A, 2);
  const b = Float64Array.of(2e16, 2e16);
  solveDense(A, 2, b);
  expect(b.every(Number.isFinite)).toBe(true);
  expect(b[0]! + b[1]!).toBeCloseTo(2, 6);
  expect(() => factorizeSturdy(Float64Array.of(Number.NaN), 1)).toThrow(RangeError);
});

test('of an inverse what is wanted is as in the whole, and the rest at most left out', () => {
  fc.assert(
    fc.property(numbers(N * N), fc.array(fc.boolean(), { minLength: N * N, maxLength: N * N }), (B, wanted) => {
      const L = positive(B);
      factorizeDense(L, N);
      const whole = inverseDense(L, N);
      const part = inverseDense(
        L,
        N,
        Uint8Array.from(wanted, (each) => (each ? 1 : 0)),
      );
      for (let i = 0; i < N; i++)
        for (let j = 0; j <= i; j++) {
          expect([whole[i * N + j], ...(wanted[i * N + j] ? [] : [0])]).toContain(part[i * N + j]);
          expect(part[j * N + i]).toBe(part[i * N + j]);
        }
    }),
  );
});
