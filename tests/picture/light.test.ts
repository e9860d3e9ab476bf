import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { WHITE_CARD_BYTE } from '../../src/picture/light/cards.ts';
import { drawnPicture } from '../../src/picture/light/drawn-picture.ts';
import { fieldLight } from '../../src/picture/light/field-light.ts';
import { srgbByte } from '../../src/picture/light/srgb-bytes.ts';
import type { BaitField } from '../../src/shapes/bait-field.ts';
import { linearOfCoded } from '../../src/tables/srgb.ts';
import { ROOT } from '../run-cupbook.ts';
import { plainField } from './plain-field.ts';

const { backings } = USUAL_OPTICS;
const MOLD = { shape: 'stick', cavityMl: 6, bodyMm: 9, thinMm: 2.5, lengthMm: 70 } as const;

/** A bait of one colour all over: linear sRGB over white and over black. */
function ofColour(field: BaitField, white: number, black: number) {
  const numbers = (value: number): Float32Array => new Float32Array(3 * field.cover.length).fill(value);
  return { white: numbers(white), black: numbers(black) };
}

const CARD = WHITE_CARD_BYTE;

describe('light on a bait', () => {
  const field = plainField(MOLD);
  const hiding = ofColour(field, 0.2, 0.2);
  const clear = ofColour(field, 0.7, 0.02);
  const pictureOf = (colour: typeof hiding, turned = false) => drawnPicture({ field, colour, backings, turned });

  test('leaves what was computed as it is', () => {
    const before = [hiding.white.slice(), hiding.black.slice(), field.cover.slice(), field.heightMm.slice()];
    pictureOf(hiding);
    expect([hiding.white, hiding.black, field.cover, field.heightMm]).toEqual(before);
  });

  test('is the same bytes twice, whatever was drawn between', () => {
    const first = pictureOf(clear);
    pictureOf(hiding);
    const second = pictureOf(clear);
    expect(second.overWhite.rgb).toEqual(first.overWhite.rgb);
    expect(second.overBlack.rgb).toEqual(first.overBlack.rgb);
  });

  test('neither darkens nor lightens a bait as a whole by its shade', () => {
    const { inside, hiding: shade, clear: glow } = fieldLight(field, false);
    for (const values of [shade, glow]) {
      let [sum, cover] = [0, 0];
      for (const [i, at] of inside.entries()) {
        sum += values[i]! * field.cover[at]!;
        cover += field.cover[at]!;
      }
      expect(sum / cover).toBeCloseTo(1, 4);
    }
  });

  test('lights the side at the lamp of a body that hides, and the other of one that is clear', () => {
    const { inside, hiding: shade, clear: glow } = fieldLight(field, false);
    const mean = (values: Float32Array, from: number, to: number): number => {
      let [sum, count] = [0, 0];
      for (const [i, at] of inside.entries()) {
        if (field.part[at] !== 0 || field.across[at]! < from || field.across[at]! > to) continue;
        sum += values[i]!;
        count++;
      }
      return sum / count;
    };
    expect(mean(shade, -0.8, -0.4)).toBeGreaterThan(mean(shade, 0.4, 0.8));
    expect(mean(glow, 0.4, 0.8)).toBeGreaterThan(mean(glow, -0.8, -0.4));
  });

  test('casts no shadow far from a bait, and the deeper one below it', () => {
    const large = plainField(MOLD, 6);
    const [columns, rows] = [large.columns + 200, large.rows + 300];
    const wide = moved(large, columns, rows, 100, 150);
    const { rgb } = drawnPicture({ field: wide, colour: ofColour(wide, 0.05, 0.05), backings }).overWhite;
    const at = (x: number, y: number): number => rgb[3 * (y * columns + x)]!;
    for (let x = 0; x < columns; x++) expect([at(x, 0), at(x, rows - 1)]).toEqual([CARD, CARD]);
    for (let y = 0; y < rows; y++) expect([at(0, y), at(columns - 1, y)]).toEqual([CARD, CARD]);
    const middle = Math.round(columns / 2);
    const rim = (MOLD.bodyMm / 2 + 1) * wide.pixelsPerMm;
    const [above, below] = [at(middle, Math.round(rows / 2 - rim)), at(middle, Math.round(rows / 2 + rim))];
    expect(below).toBeLessThan(above);
    expect(below).toBeLessThan(CARD - 10);
  });

  test('falls through clear plastic: its shadow is the lighter one', () => {
    const shadeOf = (colour: typeof hiding): number => {
      const { rgb } = pictureOf(colour).overWhite;
      let sum = 0;
      for (let pixel = 0; pixel < field.cover.length; pixel++)
        if (field.cover[pixel] === 0) sum += CARD - rgb[3 * pixel]!;
      return sum;
    };
    expect(shadeOf(clear)).toBeLessThan(0.5 * shadeOf(hiding));
  });

  test('comes from the same side of the picture when the bait is turned round', () => {
    const [straight, turned] = [pictureOf(hiding).overWhite, pictureOf(hiding, true).overWhite];
    const { columns, rows, cover } = field;
    /** How much darker the card is at the right of the bait than at the left. */
    const lean = (rgb: Uint8ClampedArray, isTurned: boolean): number => {
      let sum = 0;
      for (let y = 0; y < rows; y++) {
        const held = (x: number): boolean => cover[y * columns + (isTurned ? columns - 1 - x : x)]! > 0;
        for (let x = 0; x < 10; x++) {
          const [left, right] = [x, columns - 1 - x];
          if (!held(left) && !held(right)) sum += rgb[3 * (y * columns + left)]! - rgb[3 * (y * columns + right)]!;
        }
      }
      return sum;
    };
    expect(lean(straight.rgb, false)).toBeGreaterThan(0);
    expect(lean(turned.rgb, true)).toBeGreaterThan(0);
  });

  test('is gloss within the bait alone: no pixel beside it is lighter than what a bait gathers', () => {
    const { rgb } = pictureOf(hiding).overBlack;
    let lightest = 0;
    for (let pixel = 0; pixel < field.cover.length; pixel++)
      if (field.cover[pixel] === 0) lightest = Math.max(lightest, rgb[3 * pixel]!);
    expect(lightest).toBeLessThanOrEqual(srgbByte(backings.black as number));
  });
});

test('pearl shines on the side at the lamp, as much as it dims elsewhere, and not where one sees through it', () => {
  const field = plainField(MOLD);
  const drawnAs = (pearl: number, clear: boolean): Uint8ClampedArray => {
    const colour = clear ? ofColour(field, 0.7, 0.012) : ofColour(field, 0.2, 0.2);
    return drawnPicture({ field, colour, backings, pearl }).overWhite.rgb;
  };
  const gains = (clear: boolean): { readonly most: number; readonly mean: number } => {
    const [plain, pearly] = [drawnAs(0, clear), drawnAs(1, clear)];
    const changes = [...field.cover.keys()]
      .filter((at) => field.cover[at] === 1)
      .map((at) => linearOfCoded(pearly[3 * at]! / 255) - linearOfCoded(plain[3 * at]! / 255));
    return { most: Math.max(...changes), mean: changes.reduce((sum, each) => sum + each, 0) / changes.length };
  };
  expect(gains(false).most).toBeGreaterThan(0.05);
  expect(Math.abs(gains(false).mean)).toBeLessThan(0.01);
  expect(gains(true).most).toBeLessThan(gains(false).most / 3);
});

test.each([0.9, 0.92, 0.7])('far from a bait a card of %f is as white as pages go on round it', (white) => {
  const field = plainField(MOLD);
  const { overWhite } = drawnPicture({ field, colour: ofColour(field, 0.2, 0.2), backings: { ...backings, white } });
  expect([...overWhite.rgb.slice(0, 3)]).toEqual([WHITE_CARD_BYTE, WHITE_CARD_BYTE, WHITE_CARD_BYTE]);
  const [, tile] = /--tile: #(\w{6});/.exec(readFileSync(join(ROOT, 'site/assets/base.css'), 'utf8'))!;
  expect(tile).toBe(WHITE_CARD_BYTE.toString(16).repeat(3));
});

test('a byte of sRGB is that of its curve', () => {
  for (let step = 0; step <= 1000; step++) {
    const linear = step / 1000;
    const coded = linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;
    expect(Math.abs(srgbByte(linear) - 255 * coded)).toBeLessThan(0.8);
  }
  expect([srgbByte(-0.2), srgbByte(3)]).toEqual([0, 255]);
});

/** The same bait in a larger picture. */
function moved(field: BaitField, columns: number, rows: number, right: number, down: number): BaitField {
  const lists = ['cover', 'thicknessMm', 'alongMm', 'across', 'halfMm', 'part', 'heightMm'] as const;
  const larger = { ...field, columns, rows, noseX: field.noseX + right, noseY: field.noseY + down };
  for (const name of lists) {
    const list = name === 'part' ? new Uint8Array(columns * rows) : new Float32Array(columns * rows);
    for (let y = 0; y < field.rows; y++)
      list.set(field[name].subarray(y * field.columns, (y + 1) * field.columns), (y + down) * columns + right);
    Object.assign(larger, { [name]: list });
  }
  return larger;
}
