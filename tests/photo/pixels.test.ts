import Color from 'colorjs.io';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inSrgbPrimaries, LIGHT_OF_BYTE, lightOfPixel, type Pixels } from '../../src/photo/pixels.ts';
import { expectClose } from '../optics/close.ts';

const CHANNELS = ['r', 'g', 'b'] as const;
const byte = fc.integer({ min: 0, max: 255 });

test('LIGHT_OF_BYTE is the curve of IEC 61966-2-1, and rises', () => {
  for (let value = 0; value < 256; value++) {
    const v = value / 255;
    expectClose(LIGHT_OF_BYTE[value]!, v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4, 1e-12, `${value}`);
    if (value > 0) expect(LIGHT_OF_BYTE[value]).toBeGreaterThan(LIGHT_OF_BYTE[value - 1]!);
  }
});

test('lightOfPixel is colorjs.io’s srgb-linear of srgb and of p3, beyond 0..1 too', () => {
  fc.assert(
    fc.property(byte, byte, byte, fc.constantFrom('srgb', 'display-p3'), (r, g, b, space) => {
      const pixels: Pixels = { data: [9, 9, 9, 255, r, g, b, 255], width: 1, height: 2, space };
      const theirs = new Color(space === 'srgb' ? 'srgb' : 'p3', [r / 255, g / 255, b / 255]).to('srgb-linear').coords;
      const ours = lightOfPixel(pixels, 0, 1);
      CHANNELS.forEach((channel, index) => {
        expectClose(ours[channel], theirs[index] ?? 0, 1e-6, `${space} ${r} ${g} ${b} ${channel}`);
      });
    }),
  );
});

test('the green of a P3 screen has less than no red of sRGB; white is white in both', () => {
  expect(inSrgbPrimaries({ r: 0, g: 1, b: 0 }, 'display-p3').r).toBeLessThan(-0.2);
  const white = inSrgbPrimaries({ r: 1, g: 1, b: 1 }, 'display-p3');
  for (const channel of CHANNELS) expectClose(white[channel], 1, 1e-9, channel);
  expect(inSrgbPrimaries({ r: 0.2, g: 1, b: 0.4 }, undefined)).toEqual({ r: 0.2, g: 1, b: 0.4 });
});
