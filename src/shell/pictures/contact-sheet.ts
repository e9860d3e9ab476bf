import sharp from 'sharp';
import { emptyRaster, putFaded } from '../../picture/laid-together.ts';
import { WHITE_CARD_BYTE } from '../../picture/light/cards.ts';
import { SHARED_PICTURE } from '../../render/shared-head.ts';
import { FADE, sharpOf } from './shared-link.ts';
import type { Outlines } from './title-outlines.ts';

const { width: WIDTH, height: HEIGHT } = SHARED_PICTURE;
const CARD = [WHITE_CARD_BYTE, WHITE_CARD_BYTE, WHITE_CARD_BYTE] as const;
const EDGE = 44;
const TITLE = { size: 54, least: 26, strip: 100 } as const;
/** Baits in a row and rows of them. */
const GRID = { columns: 4, rows: 3 } as const;

/** Baits that a sheet has at most. */
export const SHEET_BAITS: number = GRID.columns * GRID.rows;

/** Baits on the white card under a title, as the bytes of a JPEG: the picture of a link to a whole book. */
export async function contactSheet(
  tiles: readonly Uint8Array[],
  title: string,
  outlines: Outlines,
): Promise<Uint8Array> {
  const columns = Math.min(GRID.columns, Math.ceil(Math.sqrt(tiles.length)));
  const rows = Math.ceil(tiles.length / columns);
  const [wide, high] = [(WIDTH - EDGE) / columns, (HEIGHT - TITLE.strip - EDGE / 2) / rows];
  const sheet = emptyRaster(WIDTH, HEIGHT, CARD);
  for (const [at, tile] of tiles.entries()) {
    const { data, info } = await sharp(tile)
      .resize(Math.floor(wide), Math.floor(high), { fit: 'inside' })
      .removeAlpha()
      .raw()
      .toBuffer({ resolveWithObject: true });
    const small = { columns: info.width, rows: info.height, rgb: new Uint8ClampedArray(data) };
    const left = Math.round(EDGE / 2 + (at % columns) * wide + (wide - info.width) / 2);
    const top = Math.round(TITLE.strip + Math.floor(at / columns) * high + (high - info.height) / 2);
    putFaded(small, sheet, left, top, FADE / 2);
  }
  const text = outlines(title.trim());
  const size = text && text.width > 0 ? Math.min(TITLE.size, (WIDTH - 2 * EDGE) / text.width) : 0;
  const words = `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${TITLE.strip}">${size < TITLE.least ? '' : `<g fill="#1c1c1c" transform="translate(${EDGE} ${EDGE + TITLE.size * 0.74}) scale(${size})">${text!.markup}</g>`}</svg>`;
  return sharpOf(sheet)
    .composite([{ input: Buffer.from(words), left: 0, top: 0 }])
    .jpeg({ quality: 78 })
    .toBuffer();
}
