import { expect, test } from 'vitest';
import { fieldVolumeMl } from '../../src/shapes/bait-field.ts';

test('fieldVolumeMl(field) sums an ellipsoid, and half of it where half of each pixel is bait', () => {
  const [columns, rows, pixelsPerMm] = [500, 200, 10];
  const [long, high, deep] = [22, 8, 5];
  const cover = new Float32Array(columns * rows).fill(1);
  const thicknessMm = cover.map((_, at) => {
    const x = ((at % columns) + 0.5 - columns / 2) / pixelsPerMm / long;
    const y = (Math.floor(at / columns) + 0.5 - rows / 2) / pixelsPerMm / high;
    return 2 * deep * Math.sqrt(Math.max(0, 1 - x * x - y * y));
  });
  const volume = ((4 / 3) * Math.PI * long * high * deep) / 1000;
  expect(fieldVolumeMl({ cover, thicknessMm, pixelsPerMm })).toBeCloseTo(volume, 2);
  expect(fieldVolumeMl({ cover: cover.fill(0.5), thicknessMm, pixelsPerMm })).toBeCloseTo(volume / 2, 2);
});
