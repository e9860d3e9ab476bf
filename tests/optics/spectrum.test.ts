import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  BAND_COUNT,
  constantSpectrum,
  mapSpectrum,
  requireBands,
  resampleSpectrum,
  spectrumFrom,
  WAVELENGTHS,
} from '../../src/optics/spectrum.ts';
import { reflectance, spectrum } from './arbitrary.ts';
import { expectAllClose, expectClose } from './close.ts';

test('WAVELENGTHS are 36 bands from 380 to 730 nm in steps of 10 nm', () => {
  expect(WAVELENGTHS).toHaveLength(BAND_COUNT);
  expect([WAVELENGTHS[0], WAVELENGTHS[1], WAVELENGTHS[35]]).toEqual([380, 390, 730]);
});

test('constantSpectrum and mapSpectrum give new arrays of 36 bands', () => {
  const half = constantSpectrum(0.5);
  const doubled = mapSpectrum(Array.from(half), (value, band) => value * 2 + band);
  expect(half[7]).toBe(0.5);
  expect(doubled[7]).toBe(8);
  expect(() => mapSpectrum([1, 2], (value) => value)).toThrow(/spectrum has 2 bands; give 36/);
});

test('spectrumFrom copies, and refuses what is no number', () => {
  const source = Array.from(constantSpectrum(0.3));
  const copy = spectrumFrom(source);
  source[0] = 9;
  expect(copy[0]).toBe(0.3);
  expect(() => spectrumFrom(constantSpectrum(0.3).fill(Number.NaN, 17, 18))).toThrow(/NaN at 550 nm/);
  expect(() => spectrumFrom([0.3])).toThrow(RangeError);
});

test('resampleSpectrum of the book’s own grid changes nothing', () => {
  fc.assert(
    fc.property(spectrum(reflectance), (values) => {
      expectAllClose(resampleSpectrum(WAVELENGTHS, values), values, 0);
    }),
  );
});

test('resampleSpectrum draws straight lines between points and holds the ends', () => {
  const resampled = resampleSpectrum([400, 402, 700], [0.1, 0.2, 0.8]);
  expect(resampled[0]).toBe(0.1);
  expect(resampled[35]).toBe(0.8);
  expectClose(resampled[3]!, 0.2 + (0.6 * 8) / 298, 1e-15);
  expectAllClose(resampleSpectrum([550], [0.4]), constantSpectrum(0.4), 0);
});

test.each([
  ['no points', [], []],
  ['more wavelengths than values', [400, 500], [0.1]],
  ['wavelengths that fall', [500, 400], [0.1, 0.2]],
  ['a wavelength twice', [500, 500], [0.1, 0.2]],
  ['a value that is no number', [400, 500], [0.1, Number.NaN]],
])('resampleSpectrum refuses %s', (_, wavelengths, values) => {
  expect(() => resampleSpectrum(wavelengths, values)).toThrow(RangeError);
});

test('requireBands names the quantity and the remedy', () => {
  expect(() => requireBands([], 'backing')).toThrow('backing has 0 bands; give 36, from 380 to 730 nm');
});
