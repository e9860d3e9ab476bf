/** Marker codes of ISO/IEC 10918-1: what opens a picture, a segment of data of an application (its second), and the pixels. */
const START = 0xffd8;
const SCAN = 0xffda;
const APPLICATION_2 = 0xffe2;

const SIGNATURE = 'ICC_PROFILE\0';

/**
 * The colour profile that a JPEG carries; undefined where there is none, or not the whole of it.
 *
 * Source: ICC.1:2022, annex B.4: pieces in APP2 segments, each with its signature, its number from 1 and how many there are; from memory.
 *
 * @param file its first bytes, up to the pixels
 */
export function jpegProfile(file: Uint8Array): Uint8Array | undefined {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  if (view.byteLength < 2 || view.getUint16(0) !== START) return undefined;
  const pieces: Uint8Array[] = [];
  let count = 0;
  for (let at = 2; at + 4 <= view.byteLength; ) {
    const [marker, length] = [view.getUint16(at), view.getUint16(at + 2)];
    const end = at + 2 + length;
    if (marker === SCAN || marker < 0xff00 || length < 2 || end > view.byteLength) break;
    const data = file.subarray(at + 4, end);
    if (marker === APPLICATION_2 && String.fromCharCode(...data.subarray(0, SIGNATURE.length)) === SIGNATURE) {
      const [number = 0, of = 0] = data.subarray(SIGNATURE.length, SIGNATURE.length + 2);
      pieces[number - 1] = data.subarray(SIGNATURE.length + 2);
      count = of;
    }
    at = end;
  }
  if (count === 0 || Array.from({ length: count }, (_, i) => pieces[i]).includes(undefined)) return undefined;
  return joined(pieces.slice(0, count));
}

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
