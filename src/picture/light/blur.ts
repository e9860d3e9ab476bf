import { keptFloats } from '../kept-arrays.ts';

/**
 * Blurs numbers of a grid by running means in either direction, several times over, which together are nearly Gauss's curve, of standard
 * deviation √(passes r (r + 1)/3) cells for a radius r. Beyond the grid there is 0. Written over.
 *
 * @param radius whole cells to either side
 */
export function blur(values: Float32Array, columns: number, rows: number, radius: number, passes: number): void {
  if (radius < 1) return;
  const line = keptFloats('blur line', columns);
  for (let pass = 0; pass < passes; pass++) {
    for (let row = 0; row < rows; row++) alongRow(values, row * columns, columns, radius, line);
    downColumns(values, columns, rows, radius);
  }
}

/** Radius of running means for a standard deviation in cells. */
export function blurRadius(deviation: number, passes: number): number {
  return Math.max(1, Math.round(Math.sqrt((3 * deviation * deviation) / passes + 0.25) - 0.5));
}

function alongRow(values: Float32Array, from: number, count: number, radius: number, line: Float32Array): void {
  const part = 1 / (2 * radius + 1);
  for (let i = 0; i < count; i++) line[i] = values[from + i]!;
  let sum = 0;
  for (let i = 0; i < Math.min(radius, count); i++) sum += line[i]!;
  for (let i = 0; i < count; i++) {
    if (i + radius < count) sum += line[i + radius]!;
    if (i > radius) sum -= line[i - radius - 1]!;
    values[from + i] = sum * part;
  }
}

/** All columns at once, row after row, as they lie in memory. */
function downColumns(values: Float32Array, columns: number, rows: number, radius: number): void {
  const part = 1 / (2 * radius + 1);
  const sums = keptFloats('blur sums', columns).fill(0);
  // Rows that are written over are still to be taken off the sums.
  const held = radius + 1;
  const before = keptFloats('blur rows', held * columns);
  for (let row = 0; row < Math.min(radius, rows); row++) {
    const from = row * columns;
    for (let x = 0; x < columns; x++) sums[x]! += values[from + x]!;
  }
  for (let row = 0; row < rows; row++) {
    const from = row * columns;
    const keep = (row % held) * columns;
    if (row + radius < rows) {
      const ahead = from + radius * columns;
      for (let x = 0; x < columns; x++) sums[x]! += values[ahead + x]!;
    }
    // The row that is left behind has the place that this one takes.
    if (row > radius) for (let x = 0; x < columns; x++) sums[x]! -= before[keep + x]!;
    for (let x = 0; x < columns; x++) {
      before[keep + x] = values[from + x]!;
      values[from + x] = sums[x]! * part;
    }
  }
}
