import { expect, test } from 'vitest';
import { ILLUMINANTS } from '../../src/tables/illuminants.ts';
import { expectClose } from '../optics/close.ts';
import { referenceRows, referenceTest } from '../optics/reference.ts';

test('ILLUMINANTS run from 380 to 780 nm in steps of 5 nm, 100 at 560 nm', () => {
  expect(ILLUMINANTS).toHaveLength(81);
  ILLUMINANTS.forEach(([wavelength, ...powers], row) => {
    expect(wavelength).toBe(380 + 5 * row);
    for (const power of powers) expect(power).toBeGreaterThan(0);
  });
  expect(ILLUMINANTS[36]).toEqual([560, 100, 100, 100]);
});

test('ILLUMINANTS: A is the Planckian radiator of CIE 015, to the digits that are printed', () => {
  // CIE 015: S(λ) = 100 (560/λ)⁵ (exp(1.435e7/(2848 · 560)) − 1) / (exp(1.435e7/(2848 λ)) − 1).
  for (const [wavelength, , , A] of ILLUMINANTS) {
    const planck = (nm: number): number => 1 / (nm ** 5 * Math.expm1(1.435e7 / (2848 * nm)));
    expectClose(A, (100 * planck(wavelength)) / planck(560), 0.0005, `A at ${wavelength} nm`);
  }
});

referenceTest('ILLUMINANTS are the reference table, number by number', () => {
  const [head, ...rows] = referenceRows('illuminants.csv') as [string[], ...string[][]];
  const columns = ['wavelength_nm', 'D65', 'D50', 'A'].map((name) => head.indexOf(name));
  expect(ILLUMINANTS).toEqual(rows.map((row) => columns.map((column) => Number(row[column]))));
});
