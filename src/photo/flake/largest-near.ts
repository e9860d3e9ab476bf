/**
 * The largest value of a picture in a square around each pixel.
 *
 * Shape: rows of `columns` values; `reach` pixels to each side.
 */
export function largestNear(values: Float32Array, columns: number, rows: number, reach: number): Float32Array {
  const along = new Float32Array(values.length);
  const out = new Float32Array(values.length);
  for (let row = 0; row < rows; row++) largestInLine(values, along, row * columns, 1, columns, reach);
  for (let column = 0; column < columns; column++) largestInLine(along, out, column, columns, rows, reach);
  return out;
}

function largestInLine(
  from: Float32Array,
  to: Float32Array,
  start: number,
  step: number,
  length: number,
  reach: number,
): void {
  for (let i = 0; i < length; i++) {
    let largest = 0;
    const end = Math.min(length - 1, i + reach);
    for (let j = Math.max(0, i - reach); j <= end; j++) {
      const value = from[start + j * step]!;
      if (value > largest) largest = value;
    }
    to[start + i * step] = largest;
  }
}
