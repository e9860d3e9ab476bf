import { codedOfLinear, linearOfCoded } from '../tables/srgb.ts';
import type { Raster } from './raster.ts';

/** Light of a byte of a screen, 0 to 1. */
const LIGHT = Float32Array.from({ length: 256 }, (_, byte) => linearOfCoded(byte / 255));

/** Steps of light from which a coded value is looked up: the darkest two values are 40 steps apart. */
const STEPS = 1 << 17;
const CODED = Uint8Array.from({ length: STEPS + 1 }, (_, step) => Math.round(255 * codedOfLinear(step / STEPS)));

/** Which pixels of a line go into each pixel of a shorter one, and by how much. */
interface Shares {
  /** The first of them, and where its weight stands, those of the others behind it; one more at the end. */
  readonly from: Int32Array;
  readonly first: Int32Array;
  /** Above 0, 1 together for each pixel. */
  readonly weights: Float32Array;
}

/** Less of a pixel than this is rounding. */
const NOTHING = 1e-9;

function sharesOf(long: number, short: number): Shares {
  const step = long / short;
  const from = new Int32Array(short);
  const first = new Int32Array(short + 1);
  const weights = new Float32Array(short * (Math.ceil(step) + 1));
  let count = 0;
  for (let at = 0; at < short; at++) {
    const [begin, end] = [at * step, Math.min(long, (at + 1) * step)];
    from[at] = Math.floor(begin + NOTHING);
    first[at] = count;
    for (let pixel = from[at]!; pixel < end - NOTHING; pixel++)
      weights[count++] = (Math.min(end, pixel + 1) - Math.max(begin, pixel)) / (end - begin);
  }
  first[short] = count;
  return { from, first, weights };
}

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
  const rgb = new Uint8ClampedArray(rows * narrow);
  const sum = new Float32Array(narrow);
  const lights = new Float32Array(picture.columns * 3);
  // Of one row, the last: the next row that is made may begin with it.
  const line = new Float32Array(narrow);
  let inLine = -1;
  for (let row = 0; row < rows; row++) {
    sum.fill(0);
    for (let tap = down.first[row]!, from = down.from[row]!; tap < down.first[row + 1]!; tap++, from++) {
      if (from !== inLine) narrowed(picture, from, across, lights, line);
      inLine = from;
      const weight = down.weights[tap]!;
      for (let at = 0; at < narrow; at++) sum[at]! += weight * line[at]!;
    }
    const start = row * narrow;
    for (let at = 0; at < narrow; at++) rgb[start + at] = CODED[Math.min(STEPS, (sum[at]! * STEPS + 0.5) | 0)]!;
  }
  return { columns, rows, rgb };
}

/** A row of a picture made shorter, as light. */
function narrowed(
  { columns: wide, rgb }: Raster,
  row: number,
  { from, first, weights }: Shares,
  lights: Float32Array,
  line: Float32Array,
): void {
  const start = row * wide * 3;
  for (let at = 0; at < lights.length; at++) lights[at] = LIGHT[rgb[start + at]!]!;
  let tap = 0;
  for (let at = 0; at < from.length; at++) {
    let red = 0;
    let green = 0;
    let blue = 0;
    let pixel = from[at]! * 3;
    for (const end = first[at + 1]!; tap < end; tap++) {
      const weight = weights[tap]!;
      red += weight * lights[pixel]!;
      green += weight * lights[pixel + 1]!;
      blue += weight * lights[pixel + 2]!;
      pixel += 3;
    }
    line[3 * at] = red;
    line[3 * at + 1] = green;
    line[3 * at + 2] = blue;
  }
}
