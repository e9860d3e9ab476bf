import fc from 'fast-check';
import { expect, test } from 'vitest';
import { contrastRatio, hidingThickness } from '../../src/optics/opacity.ts';
import { NO_PATH, USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { constantSpectrum } from '../../src/optics/spectrum.ts';
import { stackReflectance } from '../../src/optics/stack.ts';
import { BESIDE_GLOSS, NO_SURFACE } from '../../src/optics/surface.ts';
import { tristimulus } from '../../src/optics/tristimulus.ts';
import { expectClose } from './close.ts';
import { referenceNumbers, referenceTest } from './reference.ts';

const { path } = USUAL_OPTICS;

const body = (K: number, S: number): { absorption: Float64Array; scattering: Float64Array } => ({
  absorption: constantSpectrum(K),
  scattering: constantSpectrum(S),
});

referenceTest('contrastRatio of layers over black and over a perfect white agrees with 40-digit arithmetic', () => {
  for (const [K, S, thickness, , , , , , , expected] of referenceNumbers('km_layer_computed.csv')) {
    const layers = [{ ...body(K!, S!), thickness: thickness! }];
    expectClose(contrastRatio(stackReflectance(layers, 0), stackReflectance(layers, 1)), expected!, 1e-11);
  }
});

test('contrastRatio is Y over black by Y over white, and 1 where there is no light at all', () => {
  expectClose(contrastRatio(constantSpectrum(0.2), constantSpectrum(0.4)), 0.5, 1e-15);
  expect(contrastRatio(constantSpectrum(0), constantSpectrum(0))).toBe(1);
});

test('hidingThickness is the thinnest at which the contrast ratio is reached', () => {
  const coefficient = fc.double({ min: -2, max: 1, noNaN: true }).map((power) => 10 ** power);
  fc.assert(
    fc.property(coefficient, coefficient, fc.double({ min: 0.2, max: 0.99, noNaN: true }), (K, S, ratio) => {
      const at = (thickness: number): number => {
        const layers = [{ ...body(K, S), thickness }];
        return contrastRatio(
          stackReflectance(layers, 0.03, BESIDE_GLOSS, path),
          stackReflectance(layers, 0.9, BESIDE_GLOSS, path),
        );
      };
      const thickness = hidingThickness(body(K, S), { ratio, optics: USUAL_OPTICS })!;
      expect(at(thickness)).toBeGreaterThanOrEqual(ratio);
      expect(at(thickness * 0.999)).toBeLessThan(ratio);
    }),
    { numRuns: 60 },
  );
});

test('hidingThickness of what only scatters has a closed form', () => {
  // K = 0, over 0 and 1, no surface: R0 = SX/(1 + SX), Rw = 1; so 0.98 is reached at SX = 49.
  const thickness = hidingThickness(body(0, 7), {
    surface: NO_SURFACE,
    optics: { ...USUAL_OPTICS, backings: { white: 1, black: 0 }, path: NO_PATH },
  });
  expectClose(thickness!, 7, 1e-5);
});

test('hidingThickness is undefined for what never hides, and 0 where the backings are alike', () => {
  expect(hidingThickness(body(0, 0), { optics: USUAL_OPTICS })).toBeUndefined();
  expect(hidingThickness(body(0.01, 0), { surface: NO_SURFACE, optics: USUAL_OPTICS })).toBeUndefined();
  expect(hidingThickness(body(1, 1), { optics: { ...USUAL_OPTICS, backings: { white: 0.5, black: 0.5 } } })).toBe(0);
});

test('hidingThickness falls with more flake', () => {
  const flakes = [{ perMm: 0.4, reflectance: constantSpectrum(0.6) }];
  expect(hidingThickness({ ...body(0.02, 0.05), flakes }, { optics: USUAL_OPTICS })!).toBeLessThan(
    hidingThickness(body(0.02, 0.05), { optics: USUAL_OPTICS })!,
  );
});

test('hidingThickness takes the light into account', () => {
  // Hides at the red end only: nearer to hiding under incandescent light.
  const red = { absorption: constantSpectrum(0.01), scattering: Float64Array.from({ length: 36 }, (_, i) => 0.01 * i) };
  expect(hidingThickness(red, { light: 'A', optics: USUAL_OPTICS })!).toBeLessThan(
    hidingThickness(red, { optics: USUAL_OPTICS })!,
  );
  expect(tristimulus(red.scattering, 'A').Y).toBeGreaterThan(tristimulus(red.scattering).Y);
});

test.each([0, 1, Number.NaN, -1, 98])('hidingThickness refuses a ratio of %s', (ratio) => {
  expect(() => hidingThickness(body(1, 1), { ratio, optics: USUAL_OPTICS })).toThrow(RangeError);
});
