/**
 * How light it is around each place of a photo. Phones make dark surroundings lighter and light ones darker: how much this one does, its
 * paper tells.
 *
 * @packageDocumentation
 */
import type { Place } from '../../measuring-card/measuring-card.ts';
import { LIGHT_OF_BYTE, type Pixels } from '../pixels.ts';

/** Cells along the long side, and pixels that are read of each, along and down. */
const CELLS = 64;
const READ = 4;

/** Surroundings reach this far: standard deviation of a bell, as a part of the long side. Common practice of phones, no source. */
const REACH = 0.045;

/** Darker than this all is dark. */
const DARK = 0.02;

/** The mean of ln of the light around a pixel. */
export function surroundings({ data, width, height }: Pixels): (pixel: Place) => number {
  const side = Math.max(width, height) / CELLS;
  const [columns, rows] = [Math.max(1, Math.round(width / side)), Math.max(1, Math.round(height / side))];
  const logs = new Float64Array(columns * rows);
  for (let row = 0; row < rows * READ; row++) {
    const y = Math.floor(((row + 0.5) * height) / (rows * READ));
    for (let column = 0; column < columns * READ; column++) {
      const x = Math.floor(((column + 0.5) * width) / (columns * READ));
      const light = LIGHT_OF_BYTE[data[4 * (y * width + x) + 1]!]!;
      logs[Math.floor(row / READ) * columns + Math.floor(column / READ)]! += Math.log(DARK + light) / READ ** 2;
    }
  }
  const around = belled(belled(logs, columns, rows, 1, columns), rows, columns, columns, 1);
  const at = (column: number, row: number): number => around[within(row, rows) * columns + within(column, columns)]!;
  return ({ x, y }) => {
    const [u, v] = [(x * columns) / width - 0.5, (y * rows) / height - 0.5];
    const [left, top] = [Math.floor(u), Math.floor(v)];
    const [right, down] = [u - left, v - top];
    const upper = at(left, top) * (1 - right) + at(left + 1, top) * right;
    const lower = at(left, top + 1) * (1 - right) + at(left + 1, top + 1) * right;
    return upper * (1 - down) + lower * down;
  };
}

/** Means by a bell along lines of `length` cells that lie `step` apart; lines begin `next` apart. The last cells go on beyond the edge. */
function belled(values: Float64Array, length: number, lines: number, step: number, next: number): Float64Array {
  const deviation = REACH * CELLS;
  const reach = Math.ceil(3 * deviation);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-(((i - reach) / deviation) ** 2) / 2));
  const sum = weights.reduce((all, each) => all + each, 0);
  const out = new Float64Array(values.length);
  for (let line = 0; line < lines; line++)
    for (let i = 0; i < length; i++)
      out[line * next + i * step] = weights.reduce(
        (mean, weight, j) => mean + (weight / sum) * values[line * next + within(i + j - reach, length) * step]!,
        0,
      );
  return out;
}

function within(at: number, count: number): number {
  return Math.max(0, Math.min(count - 1, at));
}
