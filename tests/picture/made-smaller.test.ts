import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { above, beside, emptyRaster, put, putFaded } from '../../src/picture/laid-together.ts';
import { madeSmaller } from '../../src/picture/made-smaller.ts';
import type { Raster } from '../../src/picture/raster.ts';

const raster = (columns: number, rows: number, values: readonly number[]): Raster => ({
  columns,
  rows,
  rgb: Uint8ClampedArray.from(values),
});

/** sRGB's transfer curve as its standard has it (IEC 61966-2-1), and back. */
const light = (value: number): number => {
  const coded = value / 255;
  return coded <= 0.04045 ? coded / 12.92 : ((coded + 0.055) / 1.055) ** 2.4;
};
const coded = (linear: number): number =>
  Math.round(255 * (linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055));

/** The mean light of each area, pixel by pixel as it is defined. */
function plainly({ columns, rows, rgb }: Raster, wide: number, high: number): readonly number[] {
  const shared = (at: number, step: number, pixel: number): number =>
    Math.max(0, Math.min((at + 1) * step, pixel + 1) - Math.max(at * step, pixel));
  const [across, down] = [columns / wide, rows / high];
  const out: number[] = [];
  for (let y = 0; y < high; y++)
    for (let x = 0; x < wide; x++)
      for (let channel = 0; channel < 3; channel++) {
        let sum = 0;
        for (let row = 0; row < rows; row++)
          for (let column = 0; column < columns; column++)
            sum +=
              shared(y, down, row) * shared(x, across, column) * light(rgb[(row * columns + column) * 3 + channel]!);
        out.push(coded(sum / (across * down)));
      }
  return out;
}

describe('madeSmaller(picture, columns, rows)', () => {
  test('mixes light and not coded values: black and white make the grey of half the light', () => {
    const mixed = madeSmaller(raster(2, 1, [0, 0, 0, 255, 255, 255]), 1, 1);
    expect([...mixed.rgb]).toEqual([188, 188, 188]);
  });

  test('is the mean of the area of each pixel, for any sizes', () => {
    const picture = fc
      .record({ columns: fc.integer({ min: 1, max: 12 }), rows: fc.integer({ min: 1, max: 9 }) })
      .chain(({ columns, rows }) =>
        fc.record({
          picture: fc
            .array(fc.integer({ min: 0, max: 255 }), { minLength: columns * rows * 3, maxLength: columns * rows * 3 })
            .map((values) => raster(columns, rows, values)),
          wide: fc.integer({ min: 1, max: columns }),
          high: fc.integer({ min: 1, max: rows }),
        }),
      );
    fc.assert(
      fc.property(picture, ({ picture: large, wide, high }) => {
        const small = madeSmaller(large, wide, high);
        expect([small.columns, small.rows]).toEqual([wide, high]);
        const wanted = plainly(large, wide, high);
        expect(Math.max(...wanted.map((value, at) => Math.abs(value - small.rgb[at]!)))).toBeLessThanOrEqual(1);
      }),
      { numRuns: 60 },
    );
  });

  test('refuses what is larger, or nothing', () => {
    const picture = raster(1, 1, [1, 2, 3]);
    expect(() => madeSmaller(picture, 2, 1)).toThrow(RangeError);
    expect(() => madeSmaller(picture, 1, 0)).toThrow(RangeError);
  });
});

describe('pictures laid together', () => {
  test('fade along their edges, and are whole within', () => {
    const ground = emptyRaster(9, 9, [0, 0, 0]);
    putFaded(emptyRaster(9, 9, [200, 200, 200]), ground, 0, 0, 4);
    const row = Array.from({ length: 9 }, (_, column) => ground.rgb[(4 * 9 + column) * 3]!);
    expect(row).toEqual([25, 75, 125, 175, 200, 175, 125, 75, 25]);
  });

  const [red, blue] = [emptyRaster(1, 1, [255, 0, 0]), emptyRaster(1, 1, [0, 0, 255])];

  test('lie above one another, beside one another', () => {
    expect(above(red, blue)).toEqual(raster(1, 2, [255, 0, 0, 0, 0, 255]));
    expect(beside(red, blue)).toEqual(raster(2, 1, [255, 0, 0, 0, 0, 255]));
  });

  test('and in one another, cut off along the edges', () => {
    const ground = emptyRaster(2, 2, [0, 0, 0]);
    put(above(beside(red, red), beside(blue, blue)), ground, 1, -1);
    expect([...ground.rgb]).toEqual([0, 0, 0, 0, 0, 255, 0, 0, 0, 0, 0, 0]);
    put(red, ground, 5, 5);
    putFaded(red, ground, 5, 5, 1);
    expect([...ground.rgb.subarray(9)]).toEqual([0, 0, 0]);
  });
});
