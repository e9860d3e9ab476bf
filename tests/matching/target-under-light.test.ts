import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isMeasuredThroughout, targetUnder } from '../../src/matching/target/target-under-light.ts';
import { labOf } from '../../src/optics/cielab.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { labFromHex } from '../../src/optics/display.ts';
import { constantSpectrum } from '../../src/optics/spectrum.ts';

test('targetUnder(part, D65) is the colour that was seen, by the smoothest reflectance too', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 0xffffff }), (number) => {
      const overWhite = labFromHex(`#${number.toString(16).padStart(6, '0')}`);
      // A thousandth in linear RGB, which is what an upsampled reflectance keeps to, is most near black.
      expect(deltaE00(targetUnder({ overWhite }, 'D65').overWhite, overWhite)).toBeLessThan(0.5);
    }),
    { numRuns: 60 },
  );
});

test('targetUnder(part, light) of a measured grey is that grey under any light', () => {
  const grey = constantSpectrum(0.2);
  const overWhite = labOf(grey);
  for (const light of ['A', 'F11', 'LED-B1', 'D50'] as const) {
    const seen = targetUnder({ overWhite, reflectance: { overWhite: grey } }, light).overWhite;
    expect(deltaE00(seen, overWhite)).toBeLessThan(1e-6);
  }
});

test('targetUnder(part, light) goes by the measured reflectance, not by the colour', () => {
  const step = constantSpectrum(0.05).map((low, band) => (band > 21 ? 0.6 : low));
  const overWhite = labOf(step);
  const measured = targetUnder({ overWhite, reflectance: { overWhite: step } }, 'A').overWhite;
  expect(deltaE00(measured, labOf(step, 'A'))).toBe(0);
  expect(deltaE00(measured, targetUnder({ overWhite }, 'A').overWhite)).toBeGreaterThan(0.5);
});

test('isMeasuredThroughout(part) takes both backings, where both are known', () => {
  const [lab, R] = [labFromHex('#84562a'), constantSpectrum(0.2)];
  expect(isMeasuredThroughout({ overWhite: lab })).toBe(false);
  expect(isMeasuredThroughout({ overWhite: lab, reflectance: { overWhite: R } })).toBe(true);
  expect(isMeasuredThroughout({ overWhite: lab, overBlack: lab, reflectance: { overWhite: R } })).toBe(false);
});
