import type { BaitField } from '../shapes/bait-field.ts';
import { sideColour } from './colour/side-colour.ts';
import type { PicturedBait } from './pictured-bait.ts';
import type { Raster } from './raster.ts';

/** A side of a bait over both cards. */
export interface BaitPicture {
  readonly overWhite: Raster;
  readonly overBlack: Raster;
}

/**
 * Draws a bait as it lies in a field.
 *
 * @param from the side that is looked at; from the far side the bait is turned round, its nose at the right. A bait without another side looks the same from there
 */
export function baitPicture(bait: PicturedBait, field: BaitField, from: 'near' | 'far'): BaitPicture {
  const side = from === 'far' ? (bait.far ?? bait.near) : bait.near;
  const { colour } = sideColour(bait, side, field);
  const over = (plastic: Float32Array, card: number | readonly number[]): Raster => {
    const raster = composed(plastic, field, typeof card === 'number' ? card : card[18]!);
    return from === 'far' ? turned(raster) : raster;
  };
  return {
    overWhite: over(colour.white, bait.optics.backings.white),
    overBlack: over(colour.black, bait.optics.backings.black),
  };
}

/** Plastic over a bare card, in 8 bits. */
function composed(plastic: Float32Array, { columns, rows, cover }: BaitField, card: number): Raster {
  const rgb = new Uint8ClampedArray(3 * columns * rows);
  for (let at = 0; at < rgb.length; at++) {
    const part = cover[(at / 3) | 0]!;
    rgb[at] = 255 * coded(part === 0 ? card : part * plastic[at]! + (1 - part) * card);
  }
  return { columns, rows, rgb };
}

/** sRGB's transfer curve, IEC 61966-2-1. */
function coded(linear: number): number {
  return linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;
}

function turned({ columns, rows, rgb }: Raster): Raster {
  const out = new Uint8ClampedArray(rgb.length);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const [from, to] = [3 * (row * columns + column), 3 * (row * columns + columns - 1 - column)];
      for (let channel = 0; channel < 3; channel++) out[to + channel] = rgb[from + channel]!;
    }
  return { columns, rows, rgb: out };
}
