import { isDisplayP3 } from '../../photo/display-p3-profile.ts';
import { jpegProfile } from '../../photo/jpeg-profile.ts';
import { PixelReducer } from '../../photo/pixel-reducer.ts';
import type { Pixels } from '../../photo/pixels.ts';

/** A photo decoded. */
export interface DecodedPhoto {
  readonly pixels: Pixels;
  /** The same to be shown. */
  readonly picture: ImageBitmap;
}

/** Longest side of what is shown, pixels. */
const SHOWN = 1400;

/** Rows that are taken off the picture at once: some phones' browsers draw at most 16.7 million pixels, and a strip of 48 million is far below. */
const STRIP = 128;

/** Profiles stand before the pixels, after what a camera writes of itself. */
const BEFORE_PIXELS = 1 << 20;

type Space = NonNullable<Pixels['space']>;
type Context = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;

/**
 * The pixels of a photo, upright and at most `LONGEST_SIDE` long, reduced in the one way of the book. One in Display P3 stays in it, where the
 * browser keeps it; any other comes in sRGB.
 *
 * Rejects where the browser cannot decode it.
 */
export async function pixelsOfPhoto(photo: Blob): Promise<DecodedPhoto> {
  const image = await createImageBitmap(photo, { imageOrientation: 'from-image' });
  try {
    const { width, height } = image;
    const canvas = canvasOf(width, Math.min(STRIP, height));
    const { context, space } = contextOf(canvas, await spaceOf(photo));
    const reducer = new PixelReducer({ width, height, space });
    for (let top = 0; top < height; top += STRIP) {
      const rows = Math.min(STRIP, height - top);
      context.clearRect(0, 0, width, STRIP);
      context.drawImage(image, 0, top, width, rows, 0, 0, width, rows);
      reducer.add(context.getImageData(0, 0, width, rows, { colorSpace: space }).data);
    }
    return { pixels: reducer.result(), picture: await shownOf(image) };
  } finally {
    image.close();
  }
}

async function spaceOf(photo: Blob): Promise<Space> {
  const profile = jpegProfile(new Uint8Array(await photo.slice(0, BEFORE_PIXELS).arrayBuffer()));
  return profile !== undefined && isDisplayP3(profile) ? 'display-p3' : 'srgb';
}

/** Browsers that know no other space than sRGB draw and give that, and say nothing of it. */
function contextOf(
  canvas: OffscreenCanvas | HTMLCanvasElement,
  colorSpace: Space,
): { readonly context: Context; readonly space: Space } {
  const context = canvas.getContext('2d', { willReadFrequently: true, colorSpace }) as Context | null;
  if (context === null) throw new Error('this browser draws no pictures');
  const given = context.getImageData(0, 0, 1, 1, { colorSpace }).colorSpace;
  return { context, space: given === 'display-p3' ? given : 'srgb' };
}

function canvasOf(width: number, height: number): OffscreenCanvas | HTMLCanvasElement {
  if (typeof OffscreenCanvas !== 'undefined') return new OffscreenCanvas(width, height);
  return Object.assign(document.createElement('canvas'), { width, height });
}

async function shownOf(image: ImageBitmap): Promise<ImageBitmap> {
  const by = Math.min(1, SHOWN / Math.max(image.width, image.height));
  const size = { width: Math.max(1, Math.round(by * image.width)), height: Math.max(1, Math.round(by * image.height)) };
  const canvas = canvasOf(size.width, size.height);
  (canvas.getContext('2d') as Context).drawImage(image, 0, 0, size.width, size.height);
  return createImageBitmap(canvas);
}
