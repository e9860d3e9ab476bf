import type { Place } from '../measuring-card/measuring-card.ts';
import type { CardValues } from '../photo/card-values.ts';
import { measurePhoto } from '../photo/measure-photo.ts';
import type { PhotoMeasured, PhotoRefused } from '../photo/photo-measured.ts';
import { refusalText } from '../words/photo-refusal.ts';
import { SHOW_THE_BAIT } from '../words/photo-result.ts';
import { pixelsOfFile } from './photo-file.ts';
import type { Line } from './photo-places.ts';

/** What a photo tells, or why it tells nothing: then in sentences as well, with what to do. Places are those of the file's own pixels, upright. */
export type PhotoTold =
  | { readonly file: string; readonly measured: PhotoMeasured }
  | { readonly file: string; readonly refused: PhotoRefused; readonly says: string }
  | { readonly file: string; readonly refused: { readonly reason: 'unreadable' }; readonly says: string };

/**
 * Measures the photo in a file.
 *
 * @param file as it was named, and where it is
 * @param line along the bait, if a maker says where it lies
 */
export async function photoOfBait(
  { file, path }: { readonly file: string; readonly path: string },
  values: CardValues,
  line: Line | undefined,
): Promise<PhotoTold> {
  const pixels = await pixelsOfFile(path);
  if ('unreadable' in pixels) return { file, refused: { reason: 'unreadable' }, says: pixels.unreadable };
  const { scale } = pixels;
  const aim = line === undefined ? {} : { line: [scaled(line[0], scale), scaled(line[1], scale)] as const };
  const found = measurePhoto(pixels, values, aim);
  if (found.kind === 'refused') {
    const hint = found.reason === 'no-bait' && line === undefined ? ` ${SHOW_THE_BAIT}` : '';
    return { file, refused: found, says: `${refusalText(found)}${hint}` };
  }
  const inFile = (places: readonly Place[]): readonly Place[] => places.map((place) => scaled(place, 1 / scale));
  const { baitPixels, zonePixels } = found;
  return { file, measured: { ...found, baitPixels: inFile(baitPixels), zonePixels: zonePixels.map(inFile) } };
}

/** A place in a photo that is so many times as large. */
export function scaled({ x, y }: Place, by: number): Place {
  return { x: x * by, y: y * by };
}
