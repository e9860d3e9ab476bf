import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lookDoubt, meansOf } from '../../src/optics/look-doubt.ts';
import { expectClose } from './close.ts';

/** Part of a chi distribution of three degrees of freedom below a point: its density, √(2/π) x² exp(−x²/2), summed by midpoints. */
function chiBelow(point: number): number {
  const steps = 20_000;
  const width = point / steps;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const x = (i + 0.5) * width;
    sum += x * x * Math.exp(-(x * x) / 2) * width;
  }
  return Math.sqrt(2 / Math.PI) * sum;
}

test('lookDoubt(means) is 1 for an instrument and 5 for a screen, that is a deviation of 0.7 and 3.5', () => {
  const [instrument, screen] = [lookDoubt('instrument'), lookDoubt('screen')];
  expect([instrument.bound, screen.bound]).toEqual([1, 5]);
  expectClose(instrument.sd, 0.7, 0.05);
  expectClose(screen.sd, 3.5, 0.05);
  expect(instrument.usual).toBe(true);
});

test('lookDoubt(means, bound) has nine in ten within the bound, where the three axes err alike', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.05, max: 40, noNaN: true }), (bound) => {
      const { sd, axisSd, ...doubt } = lookDoubt('screen', bound);
      expect(doubt).toEqual({ means: 'screen', bound });
      // 1.44 has three digits: the last may move the part by as much.
      expectClose(chiBelow(bound / axisSd), 0.9, 0.002);
      expectClose(Math.hypot(axisSd, axisSd, axisSd), sd, 1e-9 * sd);
    }),
    { numRuns: 20 },
  );
});

test('lookDoubt(means, bound, how) adds 4 in squares for a hot look and 3 for a wet one, whether the bound was stated or not', () => {
  expectClose(lookDoubt('screen', 3, { after: 'hot' }).bound, 5, 1e-12);
  expectClose(lookDoubt('screen', 4, { wet: true }).bound, 5, 1e-12);
  expectClose(lookDoubt('screen', undefined, { after: 'hot', wet: true }).bound, Math.sqrt(50), 1e-12);
  for (const after of ['10 min', 'next day']) expect(lookDoubt('instrument', 2, { after, wet: false }).bound).toBe(2);
});

test('meansOf(colours, camera) takes Lab for a photo where a camera is named, and what was measured band by band never', () => {
  const lab = { lab: [40, 2, 30], light: 'D65' };
  const bands = { reflectance: [8, 9], from: 400, step: 10 };
  expect([meansOf([lab]), meansOf([lab, lab], 'my phone'), meansOf(['#8a5a2b', lab])]).toEqual([
    'instrument',
    'screen',
    'screen',
  ]);
  expect([meansOf([bands], 'my phone'), meansOf([bands, lab], 'my phone'), meansOf([], 'my phone')]).toEqual([
    'instrument',
    'screen',
    'instrument',
  ]);
});
