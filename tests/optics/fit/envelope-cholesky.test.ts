import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addElement, envelope, factorize, solveLower } from '../../../src/optics/fit/envelope-cholesky.ts';
import { expectClose } from '../close.ts';

test('factorize(matrix) gives L with L Lᵀ the matrix, whatever its envelope', () => {
  const rows = fc.array(fc.tuple(fc.nat(11), fc.double({ min: -1, max: 1, noNaN: true })), {
    minLength: 12,
    maxLength: 12,
  });
  fc.assert(
    fc.property(rows, (seeds) => {
      const starts = seeds.map(([reach], i) => Math.max(0, i - reach));
      const matrix = envelope(starts);
      const dense = seeds.map(() => new Float64Array(12));
      seeds.forEach(([, value], i) => {
        for (let j = starts[i]!; j <= i; j++) {
          const element = i === j ? 20 : value * Math.cos(i + 2 * j);
          addElement(matrix, i, j, element);
          dense[i]![j] = element;
          dense[j]![i] = element;
        }
      });
      factorize(matrix);
      const L = (i: number, j: number): number => matrix.rows[i]![j - starts[i]!] ?? 0;
      for (let i = 0; i < 12; i++) {
        for (let j = 0; j <= i; j++) {
          let product = 0;
          for (let k = 0; k <= j; k++) product += (k >= starts[i]! ? L(i, k) : 0) * (k >= starts[j]! ? L(j, k) : 0);
          expectClose(product, dense[i]![j]!, 1e-10);
        }
      }
      const b = Float64Array.from({ length: 12 }, (_, i) => i - 4);
      const y = Float64Array.from(b);
      solveLower(matrix, y);
      for (let i = 0; i < 12; i++) {
        let product = 0;
        for (let k = starts[i]!; k <= i; k++) product += L(i, k) * y[k]!;
        expectClose(product, b[i]!, 1e-10);
      }
    }),
  );
});

test('factorize(matrix) refuses one that is not positive definite', () => {
  const matrix = envelope([0, 0]);
  addElement(matrix, 0, 0, 1);
  addElement(matrix, 1, 0, 2);
  addElement(matrix, 1, 1, 1);
  expect(() => factorize(matrix)).toThrow(RangeError);
});
