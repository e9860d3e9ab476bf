import jsQR from 'jsqr';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { grown } from '../../src/measuring-card/box.ts';
import { markCells } from '../../src/measuring-card/mark-cells.ts';
import {
  type Box,
  CARDS,
  GREY_VALUES,
  type MeasuringCard,
  type Place,
} from '../../src/measuring-card/measuring-card.ts';
import { cardPicture } from '../../src/render/measuring-card/card-picture.ts';
import { DICTIONARY_CODES, foundMarks } from './found-marks.ts';

const ADDRESS = 'https://book.example/deep/photograph/';

interface Picture {
  readonly width: number;
  readonly height: number;
  /** RGBA */
  readonly data: Uint8Array;
  readonly perMm: number;
}

/** A card as it is printed, or the part of it that lies in a box. */
async function drawn(
  card: MeasuringCard,
  perMm: number,
  address?: string,
  part: Box = { ...card, x: 0, y: 0 },
): Promise<Picture> {
  const { x, y, width, height } = part;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width * perMm}" height="${height * perMm}" viewBox="${x} ${y} ${width} ${height}">${cardPicture(card, address)}</svg>`;
  const { data, info } = await sharp(Buffer.from(svg))
    .flatten({ background: '#fff' })
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, data, perMm };
}

/** Lightest and darkest value of red within a box, its rim of 0.2 mm left out. */
function valuesIn({ width, data, perMm }: Picture, box: Box): { readonly darkest: number; readonly lightest: number } {
  const rim = 0.2;
  const found = { darkest: 255, lightest: 0 };
  const [top, bottom] = [box.y + rim, box.y + box.height - rim].map((mm) => mm * perMm) as [number, number];
  const [left, right] = [box.x + rim, box.x + box.width - rim].map((mm) => mm * perMm) as [number, number];
  for (let row = Math.ceil(top); row < Math.floor(bottom); row++) {
    for (let column = Math.ceil(left); column < Math.floor(right); column++) {
      const value = data[4 * (row * width + column)]!;
      found.darkest = Math.min(found.darkest, value);
      found.lightest = Math.max(found.lightest, value);
    }
  }
  return found;
}

const around = ({ x, y }: Place): Box => ({ x: x - 1, y: y - 1, width: 2, height: 2 });

test('every mark of a card has the code of the dictionary', () => {
  for (const { id } of [...CARDS.small.marks, ...CARDS.large.marks]) {
    const bits = markCells(id).flat().map(Number).join('');
    expect(bits, `mark ${id}`).toBe(DICTIONARY_CODES[id]!.toString(2).padStart(36, '0'));
  }
  expect(() => markCells(1)).toThrow(/mark 1 has no code here/);
});

describe.each(Object.values(CARDS))('the printed picture of the $kind card', (card) => {
  test.each([undefined, ADDRESS])(
    'has all four marks where they are said to be, as another library reads them (address: %s)',
    async (address) => {
      const picture = await drawn(card, card.kind === 'small' ? 8 : 5, address);
      const marks = foundMarks(picture).filter(({ hammingDistance }) => hammingDistance === 0);
      expect(marks.map(({ id }) => id)).toEqual(card.marks.map(({ id }) => id).sort((one, other) => one - other));
      for (const { id, corners } of marks) {
        const { x, y, width, height } = card.marks.find((mark) => mark.id === id)!;
        const wanted = [
          { x, y },
          { x: x + width, y },
          { x: x + width, y: y + height },
          { x, y: y + height },
        ];
        for (const [at, corner] of corners.entries()) {
          // The library gives corners to about a pixel.
          expect(Math.abs(corner.x / picture.perMm - wanted[at]!.x)).toBeLessThan(0.3);
          expect(Math.abs(corner.y / picture.perMm - wanted[at]!.y)).toBeLessThan(0.3);
        }
      }
    },
  );

  test('is paper, black and grey where it is said to be', async () => {
    const picture = await drawn(card, 10, ADDRESS);
    for (const spot of card.paperSpots)
      expect(valuesIn(picture, around(spot)), JSON.stringify(spot)).toEqual({ darkest: 255, lightest: 255 });
    for (const spot of card.blackSpots) expect(valuesIn(picture, around(spot))).toEqual({ darkest: 0, lightest: 0 });
    for (const grey of card.greys) {
      const value = GREY_VALUES[grey.step]!;
      expect(valuesIn(picture, grey)).toEqual({ darkest: value, lightest: value });
    }
    const half = { ...card.window, width: card.window.width / 2 };
    expect(valuesIn(picture, half)).toEqual({ darkest: 255, lightest: 255 });
    expect(valuesIn(picture, { ...half, x: card.seamX })).toEqual({ darkest: 0, lightest: 0 });
  });

  test('has the address as a code in its place, and none where the book has no address or a long one', async () => {
    const part = grown(card.address, 2);
    const whole: Box = { x: 0, y: 0, width: part.width, height: part.height };
    const picture = await drawn(card, 20, ADDRESS, part);
    expect(jsQR(new Uint8ClampedArray(picture.data), picture.width, picture.height)?.data).toBe(ADDRESS);
    for (const other of [undefined, `https://book.example/${'long/'.repeat(20)}`])
      expect(valuesIn(await drawn(card, 20, other, part), whole)).toEqual({ darkest: 255, lightest: 255 });
  });
});
