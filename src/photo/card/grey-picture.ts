import type { Pixels } from '../pixels.ts';

/** A small grey picture: bytes as in the photo, each the mean of a square of it. */
export interface GreyPicture {
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
  /** How wide such a square is, pixels of the photo. */
  readonly factor: number;
}

/**
 * A photo made smaller by a whole factor, grey. What is left over at the right and at the bottom is not in it.
 *
 * Greys are means of bytes, not of light: they are looked at for edges only.
 */
export function greyPicture({ data, width, height }: Pixels, factor: number): GreyPicture {
  const columns = Math.floor(width / factor);
  const rows = Math.floor(height / factor);
  const grey = new Uint8Array(columns * rows);
  const sums = new Uint32Array(columns);
  for (let row = 0; row < rows; row++) {
    sums.fill(0);
    for (let line = 0; line < factor; line++) {
      let at = 4 * (row * factor + line) * width;
      for (let column = 0; column < columns; column++) {
        let sum = 0;
        for (let pixel = 0; pixel < factor; pixel++, at += 4) sum += data[at]! + 2 * data[at + 1]! + data[at + 2]!;
        sums[column]! += sum;
      }
    }
    for (let column = 0; column < columns; column++)
      grey[row * columns + column] = sums[column]! / (4 * factor * factor);
  }
  return { data: grey, width: columns, height: rows, factor };
}
