import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  curveFromStandard,
  gradientToStandard,
  smoothPrior,
  standardFromCurve,
} from '../../../src/optics/fit/smooth-prior.ts';
import { expectAllClose, expectClose } from '../close.ts';

const SMOOTHNESS = { curvature: 0.05, slope: 0.2, centre: 1.5, spread: 2 };
const curves = fc.array(fc.double({ min: -4, max: 4, noNaN: true }), { minLength: 31, maxLength: 31 });
const half = (numbers: Float64Array): number => numbers.reduce((sum, each) => sum + each * each, 0) / 2;

test('standardFromCurve(prior, curve) is undone by curveFromStandard', () => {
  const prior = smoothPrior(31, 10, SMOOTHNESS);
  fc.assert(
    fc.property(curves, (curve) => {
      const z = new Float64Array(31);
      const back = new Float64Array(31);
      standardFromCurve(prior, Float64Array.from(curve), z, 0);
      curveFromStandard(prior, z, back, 0);
      expectAllClose(back, curve, 1e-9);
    }),
  );
});

test('standardFromCurve(prior, curve) squares to the differences of the curve over their stated spreads', () => {
  const prior = smoothPrior(31, 10, SMOOTHNESS);
  fc.assert(
    fc.property(curves, (curve) => {
      const z = new Float64Array(31);
      standardFromCurve(prior, Float64Array.from(curve), z, 0);
      const { curvature, slope, centre, spread } = SMOOTHNESS;
      let expected = 0;
      curve.forEach((value, i) => {
        const [before, after] = [curve[i - 1], curve[i + 1]];
        expected += ((value - centre) / spread) ** 2 / 31;
        if (after !== undefined) expected += ((after - value) / slope) ** 2;
        if (before !== undefined && after !== undefined) expected += ((after - 2 * value + before) / curvature) ** 2;
      });
      expectClose(half(z), expected / 2, 1e-6 * expected);
    }),
  );
});

test('gradientToStandard(prior, gradient) is the slope by the standard numbers', () => {
  const prior = smoothPrior(31, 10, SMOOTHNESS);
  const weights = Float64Array.from({ length: 31 }, (_, i) => Math.sin(i));
  const value = (z: Float64Array): number => {
    const curve = new Float64Array(31);
    curveFromStandard(prior, z, curve, 0);
    return curve.reduce((sum, each, i) => sum + each * weights[i]!, 0);
  };
  const gradient = Float64Array.from(weights);
  gradientToStandard(prior, gradient, 0);
  const z = Float64Array.from({ length: 31 }, (_, i) => Math.cos(3 * i));
  for (const i of [0, 1, 7, 29, 30]) {
    const moved = Float64Array.from(z);
    moved[i]! += 1;
    expectClose(gradient[i]!, value(moved) - value(z), 1e-9);
  }
});

test('smoothPrior(bands, step) believes the same of a smooth curve on a finer grid', () => {
  const cost = (step: number): number => {
    const bands = 300 / step + 1;
    const curve = Float64Array.from({ length: bands }, (_, i) => 1.5 + Math.sin((i * step) / 60));
    const z = new Float64Array(bands);
    standardFromCurve(smoothPrior(bands, step, SMOOTHNESS), curve, z, 0);
    return half(z);
  };
  expect(cost(5) / cost(10)).toBeGreaterThan(0.9);
  expect(cost(5) / cost(10)).toBeLessThan(1.1);
});
