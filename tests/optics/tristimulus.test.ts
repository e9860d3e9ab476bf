import fc from 'fast-check';
import { expect, test } from 'vitest';
import { BAND_COUNT, constantSpectrum, WAVELENGTHS } from '../../src/optics/spectrum.ts';
import { bookWeights, observerWeights, tristimulus, whitePoint } from '../../src/optics/tristimulus.ts';
import { LIGHTS, type Light } from '../../src/tables/lights.ts';
import { reflectance, spectrum } from './arbitrary.ts';
import { expectAllClose, expectClose } from './close.ts';
import { referenceRows, referenceTest } from './reference.ts';

const grid = (from: number, to: number, step: number): number[] =>
  Array.from({ length: (to - from) / step + 1 }, (_, i) => from + i * step);

// White of D65 by grid, ×100, four decimals: README of the check data.
test.each([
  ['5 nm, 380–780', grid(380, 780, 5), 95.043, 108.8801],
  ['10 nm, 380–780', grid(380, 780, 10), 95.0174, 108.8128],
  ['10 nm, 380–730', grid(380, 730, 10), 95.0119, 108.8161],
  ['10 nm, 400–700', grid(400, 700, 10), 94.9401, 108.7091],
])('observerWeights at %s have the white of D65 of that grid', (_, wavelengths, X, Z) => {
  const { white } = observerWeights(wavelengths, 'D65');
  expectClose(100 * white.X, X, 5e-5, 'X');
  expectClose(100 * white.Z, Z, 5e-5, 'Z');
  expect(white.Y).toBe(1);
});

// Chromaticities of the lights, 2° observer: CIE 015:2004 and, for LED-B1, CIE 015:2018. The band from 730 to 780 nm and
// the 10 nm steps move them a little.
test.each([
  ['D65', 0.31272, 0.32903],
  ['D50', 0.34567, 0.35851],
  ['A', 0.44758, 0.40745],
  ['F11', 0.3805, 0.3769],
  ['LED-B1', 0.456, 0.4078],
] as const)('whitePoint(%s) has the chromaticity of the light', (light, x, y) => {
  const { X, Y, Z } = whitePoint(light);
  expectClose(X / (X + Y + Z), x, 8e-4, 'x');
  expectClose(Y / (X + Y + Z), y, 4e-4, 'y');
  const fine = observerWeights(grid(380, 780, 5), light).white;
  expectClose(fine.X / (fine.X + 1 + fine.Z), x, 5e-5, 'x at 5 nm');
  expectClose(1 / (fine.X + 1 + fine.Z), y, 5e-5, 'y at 5 nm');
});

referenceTest('observerWeights at 10 nm reproduce the tristimulus values of 82 measured films', () => {
  const wavelengths = grid(400, 700, 10);
  const { x, y, z } = observerWeights(wavelengths, 'D65');
  const films = referenceRows('pigment_films_shared.csv').slice(1);
  const [head, ...expected] = referenceRows('pigment_films_shared_lab.csv') as [string[], ...string[][]];
  const column = (name: string): number => head.indexOf(name);
  expect(expected.length).toBe(82);
  for (const row of expected) {
    const surface = row.find((cell) => cell.startsWith('film_on_'))!;
    const film = films.find((cells) => cells[0] === row[0] && cells[3] === surface)!;
    const R = film.slice(4).map((percent) => Number(percent) / 100);
    const sum = (weights: Float64Array): number => 100 * R.reduce((total, value, i) => total + value * weights[i]!, 0);
    expectClose(sum(x), Number(row[column('X')]), 5.1e-5, `X of ${row[0]} ${surface}`);
    expectClose(sum(y), Number(row[column('Y')]), 5.1e-5, `Y of ${row[0]} ${surface}`);
    expectClose(sum(z), Number(row[column('Z')]), 5.1e-5, `Z of ${row[0]} ${surface}`);
  }
});

test.each(LIGHTS)('tristimulus of a grey is its share of the white: %s', (light) => {
  const { X, Y, Z } = tristimulus(constantSpectrum(0.18), light);
  const white = whitePoint(light);
  expectClose(X, 0.18 * white.X, 1e-15);
  expectClose(Y, 0.18, 1e-15);
  expectClose(Z, 0.18 * white.Z, 1e-15);
});

test.each(LIGHTS)('tristimulus is linear, and never outside 0 and the white: %s', (light) => {
  fc.assert(
    fc.property(spectrum(reflectance), spectrum(reflectance), reflectance, (one, other, share) => {
      const mean = one.map((value, band) => share * value + (1 - share) * other[band]!);
      const [a, b, c] = [one, other, mean].map((R) => tristimulus(R, light));
      for (const axis of ['X', 'Y', 'Z'] as const) {
        expectClose(c![axis], share * a![axis] + (1 - share) * b![axis], 1e-14);
        expect(a![axis]).toBeGreaterThanOrEqual(0);
        expect(a![axis]).toBeLessThanOrEqual(whitePoint(light)[axis] + 1e-14);
      }
    }),
    { numRuns: 40 },
  );
});

test('bookWeights are observerWeights of the book’s grid', () => {
  for (const light of LIGHTS) expectAllClose(bookWeights(light).x, observerWeights(WAVELENGTHS, light).x, 0);
  expect(bookWeights('A').z).toHaveLength(BAND_COUNT);
});

test.each([
  ['unequal steps', [400, 410, 430]],
  ['falling wavelengths', [500, 490, 480]],
  ['a wavelength between the rows', [401, 411]],
  ['a wavelength beyond the table', [780, 790]],
  ['none', []],
])('observerWeights refuses %s', (_, wavelengths) => {
  expect(() => observerWeights(wavelengths, 'D65')).toThrow(RangeError);
});

test('tristimulus, whitePoint and observerWeights refuse a light that there isn’t, naming those that there are', () => {
  const none = 'moon' as Light;
  for (const call of [
    () => tristimulus(constantSpectrum(1), none),
    () => whitePoint(none),
    () => observerWeights([550], none),
  ]) {
    expect(call).toThrow(/Unknown light moon; give one of D65, D50, A, F11, LED-B1/);
  }
});
