/**
 * The card as it is printed, drawn fine: the simulator knows it from its picture alone, so that a wrong table of places shows.
 *
 * @packageDocumentation
 */
import sharp from 'sharp';

/** A printed card's picture. */
export interface CardPicture {
  /** mm as designed. */
  readonly width: number;
  readonly height: number;
  /** Length of the window, mm. */
  readonly room: number;
  /** Values of the file, 0 to 255, row by row from the left top, so many for each mm. */
  readonly values: Uint8Array;
  readonly columns: number;
  readonly rows: number;
  readonly perMm: number;
}

/** A multiple of 20, since edges of the card lie on whole twentieths of a mm: then no value lies between two. */
const PER_MM = 20;

/** Draws a card from its SVG, whose size is stated in mm. */
export async function drawnCard(svg: string, room: number): Promise<CardPicture> {
  const [, width, height] = /<svg[^>]*\bwidth="([\d.]+)mm"[^>]*\bheight="([\d.]+)mm"/.exec(svg) ?? [];
  if (width === undefined || height === undefined) throw new RangeError('the card states no size in mm');
  const [columns, rows] = [Number(width) * PER_MM, Number(height) * PER_MM];
  const { data } = await sharp(Buffer.from(svg), { density: 25.4 * PER_MM })
    .flatten({ background: '#fff' })
    .resize(columns, rows, { fit: 'fill', kernel: 'nearest' })
    .greyscale()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return {
    width: Number(width),
    height: Number(height),
    room,
    values: new Uint8Array(data),
    columns,
    rows,
    perMm: PER_MM,
  };
}
