import type { Planes } from './blurred.ts';

/** How much lighter or darker a phone makes each place of a photo because of what lies around it. */
export interface LocalGains {
  /** Puts the gains of a row of pixels into `gains`. */
  alongRow(row: number, gains: Float32Array): void;
}

/** Pixels of a photo are taken together until so many are left across. */
const ACROSS = 48;

/**
 * Dark surroundings are lightened and light ones darkened: the gain is their light against the photo's mean to the power of minus
 * `amount`. Surroundings reach over about a sixth of the photo.
 */
export function localGains(light: Planes, width: number, height: number, amount: number): LocalGains {
  if (amount === 0) return { alongRow: (_, along) => along.fill(1) };
  const side = Math.max(width, height) / ACROSS;
  const [columns, rows] = [Math.ceil(width / side), Math.ceil(height / side)];
  let logs = new Float32Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const pixel =
        Math.min(height - 1, Math.floor((row + 0.5) * side)) * width +
        Math.min(width - 1, Math.floor((column + 0.5) * side));
      logs[row * columns + column] = Math.log(0.02 + light[3 * pixel + 1]!);
    }
  }
  for (let round = 0; round < 16; round++) logs = smoothed(logs, columns, rows);
  const mean = logs.reduce((sum, each) => sum + each, 0) / logs.length;
  const gains = logs.map((each) => Math.exp(-amount * (each - mean)));
  return {
    alongRow: (row, along) => {
      const y = Math.max(0, Math.min(rows - 1.001, row / side - 0.5));
      const top = Math.floor(y);
      const below = y - top;
      const between = Float32Array.from({ length: columns }, (_, column) => {
        const at = top * columns + column;
        return gains[at]! + below * (gains[at + columns]! - gains[at]!);
      });
      for (let column = 0; column < width; column++) {
        const x = Math.max(0, Math.min(columns - 1.001, column / side - 0.5));
        const left = Math.floor(x);
        along[column] = between[left]! + (x - left) * (between[left + 1]! - between[left]!);
      }
    },
  };
}

function smoothed(values: Float32Array, columns: number, rows: number): Float32Array<ArrayBuffer> {
  return Float32Array.from(values, (value, at) => {
    const [column, row] = [at % columns, Math.floor(at / columns)];
    const of = (x: number, y: number): number =>
      values[Math.max(0, Math.min(rows - 1, y)) * columns + Math.max(0, Math.min(columns - 1, x))]!;
    return (4 * value + of(column - 1, row) + of(column + 1, row) + of(column, row - 1) + of(column, row + 1)) / 8;
  });
}
