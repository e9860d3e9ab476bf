import fc from 'fast-check';
import { expect, test } from 'vitest';
import { labOf } from '../../src/optics/cielab.ts';
import { colourFactor } from '../../src/optics/colour-factor.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { constantSpectrum, mapSpectrum, WAVELENGTHS } from '../../src/optics/spectrum.ts';
import { expectClose } from './close.ts';

const nudge = fc.record({
  L: fc.double({ min: -6, max: 6, noNaN: true }),
  a: fc.double({ min: -6, max: 6, noNaN: true }),
  b: fc.double({ min: -6, max: 6, noNaN: true }),
});
const grey = fc.double({ min: 0.15, max: 0.8, noNaN: true });
const hill = fc.record({
  height: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
  at: fc.integer({ min: 420, max: 680 }),
});

/** A reflectance with a hill or a valley, above 0 everywhere. */
const reflectance = fc
  .tuple(grey, hill)
  .map(([R, { height, at }]) =>
    mapSpectrum(WAVELENGTHS, (wavelength) => R * (1 + height * Math.exp(-(((wavelength - at) / 60) ** 2)))),
  );

test('colourFactor() leads to the colour that was asked for', () => {
  fc.assert(
    fc.property(reflectance, nudge, (R, { L, a, b }) => {
      const own = labOf(R);
      const wanted = { L: own.L + L, a: own.a + a, b: own.b + b };
      const factor = colourFactor(R, wanted);
      expect(deltaE00(labOf(mapSpectrum(R, (each, band) => each * factor[band]!)), wanted)).toBeLessThan(1e-6);
    }),
  );
});

test('colourFactor() of the own colour is 1, and of a lighter grey that grey everywhere', () => {
  fc.assert(
    fc.property(reflectance, (R) => {
      for (const factor of colourFactor(R, labOf(R))) expectClose(factor, 1, 1e-9);
    }),
  );
  // All bands alike are a grey, whatever the observer.
  const factor = colourFactor(constantSpectrum(0.3), labOf(constantSpectrum(0.42)));
  for (const each of factor) expectClose(each, 1.4, 1e-9);
});

test('colourFactor() is smooth: neighbouring bands differ by little of what it does', () => {
  fc.assert(
    fc.property(reflectance, nudge, (R, { L, a, b }) => {
      const own = labOf(R);
      const logs = Array.from(colourFactor(R, { L: own.L + L, a: own.a + a, b: own.b + b }), Math.log);
      const most = Math.max(...logs) - Math.min(...logs);
      for (const [band, log] of logs.slice(1).entries())
        expect(Math.abs(log - logs[band]!)).toBeLessThanOrEqual(0.26 * most + 1e-9);
    }),
  );
});

test('colourFactor() of what cannot be reached is finite and above 0', () => {
  for (const lab of [
    { L: 0, a: 0, b: 0 },
    { L: 100, a: 0, b: 0 },
    { L: 20, a: 90, b: -90 },
    { L: 60, a: -120, b: 100 },
  ])
    for (const R of [constantSpectrum(0), constantSpectrum(0.02), constantSpectrum(0.9)])
      for (const factor of colourFactor(R, lab)) {
        expect(factor).toBeGreaterThan(0);
        expect(factor).toBeLessThan(25);
      }
});
