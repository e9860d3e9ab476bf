import { expect } from 'vitest';
import { deltaE00 } from '../../../src/optics/delta-e00.ts';
import { labFromLinear } from '../../../src/optics/display.ts';
import type { LinearRgb } from '../../../src/photo/pixels.ts';
import { toneOf } from '../../../src/photo/tone/tone.ts';
import { referenceTest } from '../../optics/reference.ts';
import { type ChartPatch, cardBesideChart, chartAsCard, chartPatches, signalOf, WHITE } from './chart-photos.ts';

const PHOTOS = ['a', 'b'];

/** ΔE00 of the 24 patches of a photo, and which count as colours that were seen. */
function errorsOf(patches: readonly ChartPatch[], seen: (signal: LinearRgb) => LinearRgb) {
  return patches.map((patch, i) => ({
    off: deltaE00(patch.lab, labFromLinear(seen(signalOf(patches, patch)))),
    counts: i < WHITE && patch.unclipped,
  }));
}

function errorsWithKnownGreys(photo: string) {
  const patches = chartPatches(photo);
  const { signals, values } = chartAsCard(patches);
  return errorsOf(patches, toneOf(signals, values).of);
}

const mean = (errors: readonly { readonly off: number }[]): number =>
  errors.reduce((sum, { off }) => sum + off, 0) / errors.length;
const quantile = (numbers: readonly number[], part: number): number =>
  [...numbers].sort((one, other) => one - other)[Math.round(part * (numbers.length - 1))]!;

for (const [photo, most] of [
  ['a', 3],
  ['b', 3.5],
] as const)
  referenceTest(`known greys: the 24 patches of photo ${photo} of a chart are off by ${most} on average`, () => {
    expect(mean(errorsWithKnownGreys(photo))).toBeLessThan(most);
  });

referenceTest('known greys: half of the colours of both photos are within 3.6, nine in ten within 8.5', () => {
  const colours = PHOTOS.flatMap(errorsWithKnownGreys).flatMap(({ off, counts }) => (counts ? off : []));
  expect(colours.length).toBeGreaterThan(30);
  expect(quantile(colours, 0.5)).toBeLessThan(3.6);
  expect(quantile(colours, 0.9)).toBeLessThan(8.5);
});

referenceTest('greys that nobody has measured, a print 14 % lighter or darker: much better than no tone', () => {
  for (const photo of PHOTOS) {
    const patches = chartPatches(photo);
    for (const power of [0.86, 1, 1.14]) {
      const tone = toneOf(cardBesideChart(patches, power), { scaleMm: 80 });
      const toned = mean(errorsOf(patches, tone.of));
      const without = mean(errorsOf(patches, tone.untoned));
      expect(toned, `${photo} ${power}`).toBeLessThan(0.65 * without);
    }
  }
});
