import { expect, test } from 'vitest';
import { COLOUR_MATCHING_FUNCTIONS } from '../../src/tables/observer.ts';
import { referenceNumbers, referenceTest } from '../optics/reference.ts';

test('COLOUR_MATCHING_FUNCTIONS run from 380 to 780 nm in steps of 5 nm, none below 0', () => {
  expect(COLOUR_MATCHING_FUNCTIONS).toHaveLength(81);
  COLOUR_MATCHING_FUNCTIONS.forEach(([wavelength, ...functions], row) => {
    expect(wavelength).toBe(380 + 5 * row);
    for (const value of functions) expect(value).toBeGreaterThanOrEqual(0);
  });
});

// CIE 015: ybar is the photopic luminous efficiency, which is 1 at 555 nm; the three functions have equal sums (from memory).
test('COLOUR_MATCHING_FUNCTIONS: ybar is 1 at 555 nm and greatest there; the three sums are equal to 1 in 10 000', () => {
  const ybar = COLOUR_MATCHING_FUNCTIONS.map((row) => row[2]);
  expect(Math.max(...ybar)).toBe(1);
  expect(COLOUR_MATCHING_FUNCTIONS[ybar.indexOf(1)]![0]).toBe(555);
  const sum = (column: 1 | 2 | 3): number => COLOUR_MATCHING_FUNCTIONS.reduce((total, row) => total + row[column], 0);
  expect(Math.abs(sum(1) / sum(2) - 1)).toBeLessThan(1e-4);
  expect(Math.abs(sum(3) / sum(2) - 1)).toBeLessThan(1e-4);
});

referenceTest('COLOUR_MATCHING_FUNCTIONS are the reference table, number by number', () => {
  expect(COLOUR_MATCHING_FUNCTIONS).toEqual(referenceNumbers('cmf_1931_2deg.csv'));
});

referenceTest('COLOUR_MATCHING_FUNCTIONS are every fifth row of the 1 nm table', () => {
  const rows = referenceNumbers('cmf_1931_2deg_1nm.csv').filter(
    ([wavelength]) => wavelength! >= 380 && wavelength! <= 780,
  );
  expect(COLOUR_MATCHING_FUNCTIONS).toEqual(rows.filter(([wavelength]) => wavelength! % 5 === 0));
});
