import sharp, { type Sharp } from 'sharp';
import { emptyRaster, put, putFaded } from '../../picture/laid-together.ts';
import type { BaitPicture } from '../../picture/light/drawn-picture.ts';
import { madeSmaller } from '../../picture/made-smaller.ts';
import type { Raster } from '../../picture/raster.ts';
import { SHARED_PICTURE } from '../../render/shared-head.ts';
import type { LinkWords } from './pictured.ts';
import type { Outlines } from './title-outlines.ts';

const { width: WIDTH, height: HEIGHT } = SHARED_PICTURE;

/** Of letters, px: how far from the edge, how large, and the least size before a text is left out. */
const EDGE = 44;
const TITLE = { size: 54, least: 26 } as const;
const BOOK = { size: 27, least: 18 } as const;

/** The card along the upper edge of a picture. The light that a bait gathers reaches far, so that it is bare nowhere. */
function cardOf({ rgb, columns }: Raster): readonly [number, number, number] {
  const sum = [0, 0, 0];
  for (let at = 0; at < columns * 3; at++) sum[at % 3]! += rgb[at]!;
  return sum.map((each) => Math.round(each / columns)) as [number, number, number];
}

/** Over so many pixels the card of a picture becomes that of the whole. */
export const FADE = 28;

/** A bait as large as it can be over white and over black, for a link; the halves lie as on its page. */
export function linkRaster({ overWhite: white, overBlack: black }: BaitPicture, besides: boolean): Raster {
  const [columns, rows] = besides ? [WIDTH / 2, HEIGHT] : [WIDTH, HEIGHT / 2];
  const whole = emptyRaster(WIDTH, HEIGHT, cardOf(white));
  put(emptyRaster(columns, rows, cardOf(black)), whole, WIDTH - columns, HEIGHT - rows);
  for (const [half, x, y] of [
    [white, 0, 0],
    [black, WIDTH - columns, HEIGHT - rows],
  ] as const) {
    // The bare card above and below a bait may be cut; the words need a strip, above over white and below over black.
    const room = besides ? rows : rows - STRIP;
    const scale = Math.min(columns / half.columns, room / (half.rows * KEPT_HEIGHT), 1);
    const small = madeSmaller(half, Math.floor(half.columns * scale), Math.floor(half.rows * scale));
    const left = x + ((columns - small.columns) >> 1);
    const top = y + ((room - small.rows) >> 1) + (half === white ? rows - room : 0);
    putFaded(cutTo(small, top, y, y + rows), whole, left, Math.max(top, y), FADE);
  }
  return whole;
}

/** Part of a picture's height that the bait needs. */
const KEPT_HEIGHT = 0.86;
/** Height for a line of words, px. */
const STRIP = 62;

/** Rows of a picture that begins at `top`, from one place to another. */
function cutTo({ columns, rows, rgb }: Raster, top: number, from: number, until: number): Raster {
  const [first, last] = [Math.max(0, from - top), Math.min(rows, until - top)];
  return { columns, rows: last - first, rgb: rgb.subarray(first * columns * 3, last * columns * 3) };
}

/** The words on a link's picture, as SVG of its size. */
export function linkWords({ title, book }: LinkWords, outlines: Outlines): Buffer {
  const lines = [
    lineOf(title, outlines, TITLE, '#1c1c1c', () => [EDGE, EDGE + TITLE.size * 0.74]),
    lineOf(book, outlines, BOOK, '#d4d4d4', (width) => [WIDTH - EDGE - width, HEIGHT - EDGE * 0.8]),
  ];
  return Buffer.from(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}">${lines.join('')}</svg>`,
  );
}

function lineOf(
  text: string,
  outlines: Outlines,
  { size, least }: { readonly size: number; readonly least: number },
  fill: string,
  place: (width: number) => readonly [x: number, y: number],
): string {
  const outlined = outlines(text.trim());
  if (!outlined || outlined.width === 0) return '';
  const fitting = Math.min(size, (WIDTH - 2 * EDGE) / outlined.width);
  if (fitting < least) return '';
  const [x, y] = place(outlined.width * fitting);
  return `<g fill="${fill}" transform="translate(${x} ${y}) scale(${fitting})">${outlined.markup}</g>`;
}

/** A raster as what sharp goes on with. */
export function sharpOf({ columns, rows, rgb }: Raster): Sharp {
  return sharp(rgb, { raw: { width: columns, height: rows, channels: 3 } });
}
