/**
 * Photos opened: whether a file is a picture that the site can show, told by what is in it, whatever its name says.
 *
 * @packageDocumentation
 */
import sharp, { type Sharp, type SharpOptions } from 'sharp';
import type { PhotoFault } from '../book/checks/check-photos.ts';
import { damagedPicture, formatFault } from '../book/checks/photo-format.ts';

/** Largest width of the small version of a picture, px. */
export const SMALL_WIDTH = 480;

/** More than any camera's picture; a small file can unpack to gigabytes. */
const MOST_PIXELS = 150_000_000;

/** More than any camera's file of these formats; from memory, no source. Larger ones are not even read. */
export const MOST_PHOTO_BYTES: number = 200 * 1024 * 1024;

/** A picture that cannot be shown, with what is wrong with it. */
export class UnreadablePhoto extends Error {
  readonly fault: PhotoFault;

  constructor(fault: PhotoFault) {
    super(fault.found);
    this.fault = fault;
  }
}

/**
 * A photo turned upright and made at most `width` px wide; nothing is enlarged.
 *
 * Throws: as `uprightPhoto`.
 */
export async function smallerPhoto(original: Uint8Array, width: number): Promise<Sharp> {
  return (await uprightPhoto(original)).resize({ width, withoutEnlargement: true });
}

/**
 * A photo turned upright.
 *
 * @param decoding how its colours are read; unset: as sRGB, whatever its profile is
 *
 * Throws: UnreadablePhoto for what is no JPEG, PNG or WebP, or has more pixels than any camera's picture. What is damaged
 * further in is found when the pixels are asked for: see `photoFault`.
 */
export async function uprightPhoto(
  original: Uint8Array,
  decoding: Pick<SharpOptions, 'ignoreIcc'> = {},
): Promise<Sharp> {
  const fault = formatFault(original);
  // Others may hold programs or point to other files: they never reach a decoder.
  if (fault) throw new UnreadablePhoto(fault);
  const { width: columns, height: rows } = await sharp(original, { limitInputPixels: false }).metadata();
  if (columns * rows > MOST_PIXELS) {
    throw new UnreadablePhoto({
      found: `a picture of ${columns} × ${rows} pixels`,
      expected: `at most ${MOST_PIXELS / 1e6} million pixels`,
      why: 'no camera takes more, and a small file can unpack to gigabytes',
      fix: 'save it smaller, for instance 4000 pixels wide',
    });
  }
  // `rotate` turns the pixels by what the metadata say, before the metadata are dropped.
  return sharp(original, { ...decoding, limitInputPixels: MOST_PIXELS }).rotate();
}

/** What is wrong with the bytes of a photo; undefined where all of it can be shown. */
export async function photoFault(original: Uint8Array): Promise<PhotoFault | undefined> {
  try {
    // A picture that ends too early is found only by whoever wants its pixels.
    await (await smallerPhoto(original, SMALL_WIDTH)).raw().toBuffer();
    return undefined;
  } catch (error) {
    return faultOf(error);
  }
}

/** What is wrong with a photo, from what reading it threw. */
export function faultOf(error: unknown): PhotoFault {
  if (error instanceof UnreadablePhoto) return error.fault;
  return damagedPicture((error instanceof Error ? error.message : String(error)).split('\n')[0]!);
}

/** A file that no camera writes is not read at all. */
export function tooManyBytes(bytes: number): PhotoFault {
  return {
    found: `a picture of ${Math.round(bytes / 1024 / 1024)} MiB`,
    expected: `at most ${MOST_PHOTO_BYTES / 1024 / 1024} MiB`,
    why: 'no camera writes larger ones',
    fix: 'save it smaller, for instance 4000 pixels wide',
  };
}
