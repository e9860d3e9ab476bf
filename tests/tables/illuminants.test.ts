import { expect, test } from 'vitest';
import { ILLUMINANTS } from '../../src/tables/illuminants.ts';
import { COLOUR_MATCHING_FUNCTIONS } from '../../src/tables/observer.ts';
import { expectClose } from '../optics/close.ts';
import { referenceRows, referenceTest } from '../optics/reference.ts';

test('ILLUMINANTS run from 380 to 780 nm in steps of 5 nm; D65, D50 and A are 100 at 560 nm', () => {
  expect(ILLUMINANTS).toHaveLength(81);
  ILLUMINANTS.forEach(([wavelength, ...powers], row) => {
    expect(wavelength).toBe(380 + 5 * row);
    for (const power of powers) expect(power).toBeGreaterThanOrEqual(0);
  });
  expect(ILLUMINANTS[36]!.slice(0, 4)).toEqual([560, 100, 100, 100]);
});

test('ILLUMINANTS: A is the Planckian radiator of CIE 015, to the digits that are printed', () => {
  // CIE 015: S(λ) = 100 (560/λ)⁵ (exp(1.435e7/(2848 · 560)) − 1) / (exp(1.435e7/(2848 λ)) − 1).
  for (const [wavelength, , , A] of ILLUMINANTS) {
    const planck = (nm: number): number => 1 / (nm ** 5 * Math.expm1(1.435e7 / (2848 * nm)));
    expectClose(A, (100 * planck(wavelength)) / planck(560), 0.0005, `A at ${wavelength} nm`);
  }
});

referenceTest('ILLUMINANTS: D65, D50 and A are the reference table, number by number', () => {
  const [head, ...rows] = referenceRows('illuminants.csv') as [string[], ...string[][]];
  const columns = ['wavelength_nm', 'D65', 'D50', 'A'].map((name) => head.indexOf(name));
  expect(ILLUMINANTS.map((row) => row.slice(0, 4))).toEqual(
    rows.map((row) => columns.map((column) => Number(row[column]))),
  );
});

// Chromaticities to four decimals: CIE 015:2004 for FL11, CIE 015:2018 for LED-B1.
test.each([
  ['FL11', 4, 0.3805, 0.3769],
  ['LED-B1', 5, 0.456, 0.4078],
] as const)('ILLUMINANTS: %s has the chromaticity that is printed for it', (_, column, x, y) => {
  const sum = (axis: 1 | 2 | 3): number =>
    ILLUMINANTS.reduce((total, row, i) => total + row[column] * COLOUR_MATCHING_FUNCTIONS[i]![axis], 0);
  const [X, Y, Z] = [sum(1), sum(2), sum(3)];
  expectClose(X / (X + Y + Z), x, 5e-5, 'x');
  expectClose(Y / (X + Y + Z), y, 5e-5, 'y');
});
