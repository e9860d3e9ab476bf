import { expect, test } from 'vitest';
import {
  bandLightness,
  bandLightnessSlope,
  bandWeights,
  labSlopes,
  labSlopesSpace,
} from '../../../src/optics/fit/colour-misfit.ts';
import { observerWeights } from '../../../src/optics/tristimulus.ts';
import { expectAllClose, expectClose } from '../close.ts';

const WAVELENGTHS = Array.from({ length: 31 }, (_, i) => 400 + 10 * i);
const WEIGHTS = observerWeights(WAVELENGTHS, 'D65');

test('labSlopes(R) is the Lab of a spectrum, and its slopes are those of a small step', () => {
  const at = (R: readonly number[]): Float64Array => {
    const space = labSlopesSpace(31);
    labSlopes(R, WEIGHTS, space);
    return space.lab;
  };
  expectAllClose(at(WAVELENGTHS.map(() => 1)), [100, 0, 0], 1e-9);
  const R = WAVELENGTHS.map((wavelength) => 0.3 + 0.25 * Math.sin(wavelength / 40));
  const space = labSlopesSpace(31);
  labSlopes(R, WEIGHTS, space);
  const h = 1e-5;
  for (const band of [0, 10, 20, 30]) {
    const moved = (by: number): Float64Array => at(R.map((value, i) => (i === band ? value + by : value)));
    const [up, down] = [moved(h), moved(-h)];
    for (let c = 0; c < 3; c++) expectClose(space.byBand[c]![band]!, (up[c]! - down[c]!) / (2 * h), 1e-5);
  }
});

test('bandWeights(observer) add up to 1, and no band counts nothing', () => {
  const weights = bandWeights(WEIGHTS);
  expectClose(
    weights.reduce((sum, weight) => sum + weight, 0),
    1,
    1e-12,
  );
  expect(Math.min(...weights)).toBeGreaterThan(0.01);
});

test('bandLightness(R) has the slope that bandLightnessSlope says', () => {
  for (const R of [0.001, 0.02, 0.5, 1]) {
    expectClose(bandLightnessSlope(R), (bandLightness(R * 1.0001) - bandLightness(R * 0.9999)) / (R * 2e-4), 1e-3);
  }
});
