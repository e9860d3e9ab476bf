import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LONGEST_SIDE, PixelReducer } from '../../src/photo/pixel-reducer.ts';
import type { Pixels } from '../../src/photo/pixels.ts';

/** IEC 61966-2-1, both ways. */
const light = (byte: number): number => {
  const coded = byte / 255;
  return coded <= 0.04045 ? coded / 12.92 : ((coded + 0.055) / 1.055) ** 2.4;
};
const byteOf = (linear: number): number =>
  255 * (linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055);

const reduced = (pixels: Pixels, longest: number, rowsAtOnce = pixels.height): Pixels => {
  const reducer = new PixelReducer(pixels, longest);
  const data = Array.from(pixels.data);
  for (let row = 0; row < pixels.height; row += rowsAtOnce)
    reducer.add(data.slice(4 * pixels.width * row, 4 * pixels.width * (row + rowsAtOnce)));
  return reducer.result();
};

/** The mean of the area of one pixel of the smaller photo, straight from its definition. */
function meanOfArea({ data, width, height }: Pixels, to: Pixels, column: number, row: number, channel: number): number {
  const [across, down] = [width / to.width, height / to.height];
  const part = (from: number, by: number, index: number): number =>
    Math.max(0, Math.min(index + 1, (from + 1) * by) - Math.max(index, from * by)) / by;
  let sum = 0;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      sum += part(row, down, y) * part(column, across, x) * light(data[4 * (y * width + x) + channel]!);
  return byteOf(sum);
}

const photos = fc.tuple(fc.integer({ min: 1, max: 13 }), fc.integer({ min: 1, max: 13 })).chain(([width, height]) =>
  fc.record({
    width: fc.constant(width),
    height: fc.constant(height),
    data: fc.array(fc.integer({ min: 0, max: 255 }), { minLength: 4 * width * height, maxLength: 4 * width * height }),
  }),
);

describe('PixelReducer', () => {
  test('makes of each pixel the mean, in linear light, of the area that it covers', () => {
    fc.assert(
      fc.property(photos, fc.integer({ min: 1, max: 13 }), (photo, longest) => {
        const smaller = reduced(photo, longest);
        expect(Math.max(smaller.width, smaller.height)).toBeLessThanOrEqual(Math.max(longest, 1));
        if (smaller.width === photo.width && smaller.height === photo.height) return;
        for (let row = 0; row < smaller.height; row++)
          for (let column = 0; column < smaller.width; column++)
            for (let channel = 0; channel < 3; channel++) {
              const found = smaller.data[4 * (row * smaller.width + column) + channel]!;
              expect(Math.abs(found - meanOfArea(photo, smaller, column, row, channel))).toBeLessThan(0.56);
            }
      }),
      { numRuns: 60 },
    );
  });

  test('leaves a photo that is small enough as it is, to the byte', () => {
    fc.assert(
      fc.property(photos, (photo) => {
        expect(Array.from(reduced(photo, 13).data)).toEqual(photo.data);
      }),
      { numRuns: 20 },
    );
  });

  test('comes to the same whatever bands its rows come in', () => {
    fc.assert(
      fc.property(photos, fc.integer({ min: 1, max: 13 }), fc.integer({ min: 1, max: 5 }), (photo, longest, rows) => {
        expect(reduced(photo, longest, rows)).toEqual(reduced(photo, longest));
      }),
      { numRuns: 40 },
    );
  });

  test('makes 48 million pixels 4096 wide, and keeps the space', () => {
    const reducer = new PixelReducer({ width: 8064, height: 6048, space: 'display-p3' });
    expect(reducer.size).toEqual({ width: LONGEST_SIDE, height: 3072 });
    const small = new PixelReducer({ width: 1, height: 1, space: 'display-p3' });
    small.add([1, 2, 3, 255]);
    expect(small.result().space).toBe('display-p3');
  });

  test('refuses half rows, too many and too few', () => {
    const reducer = new PixelReducer({ width: 2, height: 2 });
    expect(() => reducer.add([0, 0, 0, 255])).toThrow(/no whole rows/);
    expect(() => reducer.result()).toThrow(/Only 0 of 2 rows/);
    expect(() => reducer.add(new Array(24).fill(0))).toThrow(/More than the 2 rows/);
  });
});
