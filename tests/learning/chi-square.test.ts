import { expect, test } from 'vitest';
import { chiSquareAbove } from '../../src/learning/chi-square.ts';

test('meets the closed form of even degrees of freedom, far into the tail', () => {
  for (const dof of [2, 4, 6, 12, 18])
    for (const x of [0.1, 1, 5, 11, 30, 80, 200]) {
      let term = Math.exp(-x / 2);
      let sum = term;
      for (let k = 1; k < dof / 2; k++) {
        term *= x / 2 / k;
        sum += term;
      }
      expect(chiSquareAbove(x, dof) / sum).toBeCloseTo(1, 11);
    }
});

test.each([
  // Upper 5 % and 1 % points as printed in tables of statistics (from memory).
  [1, 3.841, 0.05],
  [3, 7.815, 0.05],
  [9, 16.919, 0.05],
  [15, 24.996, 0.05],
  [3, 11.345, 0.01],
])('meets the table at %d degrees of freedom', (dof, x, above) => {
  expect(chiSquareAbove(x, dof)).toBeCloseTo(above, 4);
});

test('nothing is below nought, and no half degree is taken', () => {
  expect(chiSquareAbove(0, 3)).toBe(1);
  expect(() => chiSquareAbove(1, 2.5)).toThrow(RangeError);
});
