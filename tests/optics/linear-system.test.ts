import fc from 'fast-check';
import { expect, test } from 'vitest';
import { solveLinear } from '../../src/optics/linear-system.ts';
import { expectClose } from './close.ts';

test('solveLinear(A, b) finds the x that A b was made from, zeros on the diagonal too', () => {
  const number = fc.double({ min: -10, max: 10, noNaN: true });
  fc.assert(
    fc.property(
      fc.array(number, { minLength: 16, maxLength: 16 }),
      fc.array(number, { minLength: 4, maxLength: 4 }),
      (a, x) => {
        // A large cyclic off-diagonal keeps the system far from singular and needs the rows exchanged.
        const A = Float64Array.from(a, (value, i) => value + (i % 4 === (Math.floor(i / 4) + 1) % 4 ? 100 : 0));
        const b = Float64Array.from({ length: 4 }, (_, row) =>
          x.reduce((sum, value, k) => sum + A[row * 4 + k]! * value, 0),
        );
        expect(solveLinear(A, b)).toBe(true);
        for (let i = 0; i < 4; i++) expectClose(b[i]!, x[i]!, 1e-10);
      },
    ),
  );
});

test('solveLinear says so when the matrix is singular or no matrix of numbers', () => {
  expect(solveLinear(Float64Array.of(1, 2, 2, 4), Float64Array.of(1, 1))).toBe(false);
  expect(solveLinear(Float64Array.of(0, 0, 0, 0), Float64Array.of(1, 1))).toBe(false);
  expect(solveLinear(Float64Array.of(Number.NaN, 0, 0, 1), Float64Array.of(1, 1))).toBe(false);
});
