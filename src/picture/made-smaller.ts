import { codedOfLinear, linearOfCoded } from '../tables/srgb.ts';
import type { Raster } from './raster.ts';

/** Light of a byte of a screen, 0 to 1. */
const LIGHT = Float32Array.from({ length: 256 }, (_, byte) => linearOfCoded(byte / 255));

/** Steps of light from which a coded value is looked up: the darkest two values are 40 steps apart. */
const STEPS = 1 << 17;
const CODED = Uint8Array.from({ length: STEPS + 1 }, (_, step) => Math.round(255 * codedOfLinear(step / STEPS)));

/** Which pixels of a line go into each pixel of a shorter one, and by how much. */
interface Shares {
  readonly from: Int32Array;
  /** `taps` numbers a pixel, 1 together. */
  readonly weights: Float32Array;
  readonly taps: number;
}

function sharesOf(long: number, short: number): Shares {
  const step = long / short;
  const taps = Math.min(long, Math.ceil(step) + 1);
  const from = new Int32Array(short);
  const weights = new Float32Array(short * taps);
  for (let at = 0; at < short; at++) {
    const [begin, end] = [at * step, Math.min(long, (at + 1) * step)];
    from[at] = Math.min(Math.floor(begin), long - taps);
    for (let tap = 0; tap < taps; tap++) {
      const pixel = from[at]! + tap;
      weights[at * taps + tap] = Math.max(0, Math.min(end, pixel + 1) - Math.max(begin, pixel)) / (end - begin);
    }
  }
  return { from, weights, taps };
}

/** Kept from picture to picture: to fetch so much memory anew takes longer than to fill it. */
let kept = new Float32Array(0);

/**
 * A picture made smaller: each pixel is the mean of the light of the area that it covers, as an eye further away has it.
 *
 * Throws RangeError for a size that is larger, or nothing.
 */
export function madeSmaller(picture: Raster, columns: number, rows: number): Raster {
  if (columns < 1 || rows < 1 || columns > picture.columns || rows > picture.rows)
    throw new RangeError(
      `${picture.columns} × ${picture.rows} cannot be made ${columns} × ${rows}: give at most its own size.`,
    );
  if (columns === picture.columns && rows === picture.rows) return picture;
  const across = sharesOf(picture.columns, columns);
  const down = sharesOf(picture.rows, rows);
  const narrow = columns * 3;
  if (kept.length < picture.rows * narrow) kept = new Float32Array(picture.rows * narrow);
  narrowed(picture, columns, across);
  const rgb = new Uint8ClampedArray(rows * narrow);
  const sum = new Float32Array(narrow);
  for (let row = 0; row < rows; row++) {
    sum.fill(0);
    for (let tap = 0; tap < down.taps; tap++) {
      const weight = down.weights[row * down.taps + tap]!;
      if (weight === 0) continue;
      const line = (down.from[row]! + tap) * narrow;
      for (let at = 0; at < narrow; at++) sum[at]! += weight * kept[line + at]!;
    }
    const line = row * narrow;
    for (let at = 0; at < narrow; at++) rgb[line + at] = CODED[Math.min(STEPS, (sum[at]! * STEPS + 0.5) | 0)]!;
  }
  return { columns, rows, rgb };
}

/** Every row of a picture made shorter, as light, into what is kept. */
function narrowed({ columns: wide, rows, rgb }: Raster, columns: number, { from, weights, taps }: Shares): void {
  for (let row = 0; row < rows; row++) {
    const line = row * wide;
    let out = row * columns * 3;
    for (let at = 0; at < columns; at++) {
      let red = 0;
      let green = 0;
      let blue = 0;
      let pixel = (line + from[at]!) * 3;
      for (let tap = at * taps; tap < (at + 1) * taps; tap++) {
        const weight = weights[tap]!;
        red += weight * LIGHT[rgb[pixel]!]!;
        green += weight * LIGHT[rgb[pixel + 1]!]!;
        blue += weight * LIGHT[rgb[pixel + 2]!]!;
        pixel += 3;
      }
      kept[out] = red;
      kept[out + 1] = green;
      kept[out + 2] = blue;
      out += 3;
    }
  }
}
