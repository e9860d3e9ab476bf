import sharp from 'sharp';
import { isDisplayP3 } from '../photo/display-p3-profile.ts';
import { PixelReducer } from '../photo/pixel-reducer.ts';
import type { Pixels } from '../photo/pixels.ts';
import { faultOf, UnreadablePhoto, uprightPhoto } from './read-photo.ts';

/** The pixels of a file, and how many of them, less than 1 where it was made smaller, one of the file's is long. */
export type ReadPixels = Pixels & { readonly scale: number };

/**
 * The pixels of a photo, upright and at most `LONGEST_SIDE` long. One in Display P3 stays in it, since strong colours lie outside sRGB; one
 * with any other profile is brought to sRGB.
 *
 * Throws: UnreadablePhoto, with what is wrong with it, of anything but a whole JPEG, PNG or WebP picture.
 */
export async function readPixels(original: Uint8Array): Promise<ReadPixels> {
  try {
    const space = await spaceOf(original);
    const upright = await uprightPhoto(original, { ignoreIcc: space === 'display-p3' });
    const { data, info } = await upright
      .toColourspace('srgb')
      .ensureAlpha()
      .raw()
      .toBuffer({ resolveWithObject: true });
    const reducer = new PixelReducer({ width: info.width, height: info.height, space });
    reducer.add(data);
    return { ...reducer.result(), scale: reducer.size.width / info.width };
  } catch (error) {
    throw new UnreadablePhoto(faultOf(error));
  }
}

async function spaceOf(original: Uint8Array): Promise<NonNullable<Pixels['space']>> {
  // What the formats are is checked before anything is decoded.
  await uprightPhoto(original);
  const { icc } = await sharp(original, { limitInputPixels: false }).metadata();
  return icc !== undefined && isDisplayP3(icc) ? 'display-p3' : 'srgb';
}
