import { damagedPicture, formatFault } from '../../book/checks/photo-format.ts';
import { measurePhoto } from '../../photo/measure-photo.ts';
import type { MeasureAnswer, MeasureRequest } from './measure-request.ts';
import { type DecodedPhoto, pixelsOfPhoto } from './pixels-of-photo.ts';

/** Measures a photo, in whichever place the script runs. */
export async function answerRequest({ photo, card, line }: MeasureRequest): Promise<MeasureAnswer> {
  let decoded: DecodedPhoto;
  try {
    decoded = await pixelsOfPhoto(photo);
  } catch (error) {
    const head = new Uint8Array(await photo.slice(0, 256).arrayBuffer());
    const said = error instanceof Error ? error.message : String(error);
    return { kind: 'unreadable', fault: formatFault(head) ?? damagedPicture(said) };
  }
  const { pixels, picture } = decoded;
  const { width, height } = pixels;
  return { kind: 'read', found: measurePhoto(pixels, card, line ? { line } : {}), width, height, picture };
}
