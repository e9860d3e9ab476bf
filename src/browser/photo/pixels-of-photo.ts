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

/** As a camera turned it. */
const UPRIGHT: ImageBitmapOptions = { imageOrientation: 'from-image' };
/** With the numbers of the file, whatever they mean: on their way through another space some strong colours are lost. */
const AS_STORED: ImageBitmapOptions = { ...UPRIGHT, colorSpaceConversion: 'none' };

/** Side of the piece in the middle by which it is told whether a browser gives the numbers of the file, pixels: all of most baits. */
const PIECE = 512;

/**
 * The pixels of a photo, upright and at most `LONGEST_SIDE` long, reduced in the one way of the book. One in Display P3 stays in it, as far as
 * the browser lets it; any other comes in sRGB.
 *
 * Rejects where the browser cannot decode it.
 */
export async function pixelsOfPhoto(photo: Blob): Promise<DecodedPhoto> {
  const space = await spaceOf(photo);
  const asStored = space !== 'srgb' && (await givesStored(photo));
  const image = await createImageBitmap(photo, asStored ? AS_STORED : UPRIGHT);
  try {
    const { width, height } = image;
    const canvas = canvasOf(width, Math.min(STRIP, height));
    // Numbers as stored are drawn as if they were those of sRGB, so that nothing changes them.
    const drawn = contextOf(canvas, asStored ? 'srgb' : space);
    const reducer = new PixelReducer({ width, height, space: asStored ? space : drawn.space });
    for (let top = 0; top < height; top += STRIP) {
      const rows = Math.min(STRIP, height - top);
      drawn.context.clearRect(0, 0, width, STRIP);
      drawn.context.drawImage(image, 0, top, width, rows, 0, 0, width, rows);
      reducer.add(drawn.context.getImageData(0, 0, width, rows, { colorSpace: drawn.space }).data);
    }
    return { pixels: reducer.result(), picture: await shownOf(image) };
  } finally {
    image.close();
  }
}

/** Whether the browser gives the numbers of the file where it is asked to: then they are others than those that it has brought to sRGB. */
async function givesStored(photo: Blob): Promise<boolean> {
  const pieces: Uint8ClampedArray[] = [];
  for (const options of [UPRIGHT, AS_STORED]) {
    const image = await createImageBitmap(photo, options);
    const { context } = contextOf(canvasOf(PIECE, PIECE), 'srgb');
    context.drawImage(image, (PIECE - image.width) / 2, (PIECE - image.height) / 2);
    image.close();
    pieces.push(context.getImageData(0, 0, PIECE, PIECE).data);
  }
  const [brought, stored] = pieces as [Uint8ClampedArray, Uint8ClampedArray];
  return brought.some((byte, at) => byte !== stored[at]);
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
