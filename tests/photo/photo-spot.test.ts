import { expect, test } from 'vitest';
import { hexOfSpot, spotOf } from '../../src/photo/photo-spot.ts';
import type { Pixels } from '../../src/photo/pixels.ts';

/** A photo of one colour, with some pixels of others. */
function photo(hex: string, others: Readonly<Record<string, string>> = {}): Pixels {
  const [width, height] = [40, 30];
  const bytes = (colour: string): readonly number[] =>
    [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
  const data = Array.from({ length: width * height }, (_, at) => [
    ...bytes(others[`${at % width},${Math.floor(at / width)}`] ?? hex),
    255,
  ]).flat();
  return { data, width, height };
}

test('hexOfSpot(spotOf(photo)) is the colour of an even photo, at its edges too', () => {
  for (const [x, y] of [
    [20, 15],
    [0, 0],
    [39.9, 29.9],
  ] as const)
    expect(hexOfSpot(spotOf(photo('#8a6a44'), x, y, 6))).toBe('#8a6a44');
});

test('a highlight and a grain of dust in the spot change nothing', () => {
  const spotted = photo('#8a6a44', { '20,15': '#ffffff', '21,15': '#ffffff', '19,14': '#000000' });
  expect(hexOfSpot(spotOf(spotted, 20, 15, 5))).toBe('#8a6a44');
});

test('the mean is taken in linear light: half black, half white is #bcbcbc, not #808080', () => {
  // 0.5 in linear light is 1.055·0.5^(1/2.4) − 0.055 = 0.7354 in sRGB (IEC 61966-2-1), of 255: 187.5.
  const white = Object.fromEntries(
    Array.from({ length: 1200 }, (_, at) => [
      `${at % 40},${Math.floor(at / 40)}`,
      at % 2 === 0 ? '#000000' : '#ffffff',
    ]),
  );
  expect(hexOfSpot(spotOf(photo('#000000', white), 20, 15, 14))).toMatch(/^#(b[9a-f])\1\1$/);
});

test('with the white card of the photo, a warm lamp and a dim one are taken out', () => {
  // sRGB 188, 137 and 99 are 0.50, 0.25 and 0.125 in linear light: the light of this photo, on a card of 0.9.
  const under = (r: number, g: number, b: number) => ({ r: r * 0.5, g: g * 0.25, b: b * 0.125 });
  const card = under(0.9, 0.9, 0.9);
  expect(hexOfSpot(card, card)).toBe('#f3f3f3');
  const bait = { r: 0.25415, g: 0.14413, b: 0.05781 };
  expect(hexOfSpot(bait)).toBe('#8a6a44');
  expect(hexOfSpot(under(bait.r, bait.g, bait.b), card)).toBe('#8a6a44');
});

test('a card in the dark gives a colour, not a fault; a spot beside the photo is one', () => {
  expect(hexOfSpot({ r: 0.2, g: 0.2, b: 0.2 }, { r: 0, g: 0, b: 0 })).toBe('#ffffff');
  expect(() => spotOf(photo('#8a6a44'), 80, 15, 3)).toThrow(/outside the photo of 40 × 30/);
});
