import { emptyRaster, put } from '../../picture/laid-together.ts';
import type { BaitPicture } from '../../picture/light/drawn-picture.ts';
import type { Raster } from '../../picture/raster.ts';
import { BLACK_CARD, WHITE_CARD } from '../../render/swatch/tint.ts';
import { masterFrame } from '../../shapes/master-frame.ts';
import type { ShapedMold } from '../../shapes/shaped-mold.ts';
import type { PlainSide } from './pictured.ts';

/** A film of a bait's colour on the cards, as large as its picture: what is shown where that cannot be drawn. */
export function plainMaster(mold: ShapedMold, { white, black }: PlainSide): BaitPicture {
  return { overWhite: filmOn(WHITE_CARD, mold, white), overBlack: filmOn(BLACK_CARD, mold, black) };
}

/** Bare card round the film, as a part of the picture's height. */
const MARGIN = 0.2;

function filmOn(card: string, mold: ShapedMold, film: string): Raster {
  const { columns, rows } = masterFrame(mold);
  const margin = Math.round(rows * MARGIN);
  const picture = emptyRaster(columns, rows, channels(card));
  put(emptyRaster(columns - 2 * margin, rows - 2 * margin, channels(film)), picture, margin, margin);
  return picture;
}

function channels(hex: string): readonly [number, number, number] {
  const value = Number.parseInt(hex.slice(1), 16);
  return [value >> 16, (value >> 8) & 255, value & 255];
}
