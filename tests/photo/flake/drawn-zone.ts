/**
 * Zones of a bait with flake, drawn by a formula: a round body, hexagons thrown at random, blur and noise.
 *
 * @packageDocumentation
 */
import type { Patch } from '../../../src/photo/bait/rectify.ts';
import { normal, seeded } from '../bait/drawn-window.ts';

/** Linear red, green and blue. */
type Rgb = readonly [number, number, number];

/** Flake of one kind to be thrown. */
export interface Thrown {
  /** From flat side to flat side, mm. */
  readonly across: number;
  /** Part of the zone that is wanted. */
  readonly wanted: number;
  readonly colour: Rgb;
  /** How much flakes differ in brightness: spread of its logarithm. */
  readonly glitter?: number;
}

/** A zone and what is really in it. */
export interface DrawnZone {
  readonly patch: Patch;
  /** Share of the zone that each kind covers, in the order given: a later one lies before an earlier one. */
  readonly covered: readonly number[];
  /** Diameter of a disc as large as a flake, mm. */
  readonly diameters: readonly number[];
}

const [LENGTH, WIDTH] = [26, 5];

/** Cells of the drawing for each pixel of the patch, per side. */
const FINE = 3;

/** How a zone is seen; a streak is a highlight along it. */
export interface Seen {
  readonly perMm?: number;
  readonly noise?: number;
  readonly seed?: number;
  readonly streak?: boolean;
}

/** A zone with flake. */
export function drawnZone(body: Rgb, kinds: readonly Thrown[], seen: Seen = {}): DrawnZone {
  const { perMm = 18, noise = 0.01, seed = 1, streak = false } = seen;
  const [columns, rows] = [Math.round(LENGTH * perMm), Math.round(WIDTH * perMm)];
  const random = seeded(seed * 7919 + 1);
  const fine = throwAll(kinds, columns * FINE, rows * FINE, perMm * FINE, random);
  const signal = new Float32Array(3 * columns * rows);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      // The sides of a round bait are darker by a tenth.
      const shade = 1 - 0.1 * ((2 * row) / rows - 1) ** 2;
      const lit = streak && Math.abs(row / perMm - 1.2) < 0.35 && column / perMm > 5 && column / perMm < 17;
      for (let i = 0; i < FINE * FINE; i++) {
        const cell = fine.cells[(row * FINE + Math.floor(i / FINE)) * columns * FINE + column * FINE + (i % FINE)]!;
        const colour = cell === 0 ? body : kinds[(cell & 7) - 1]!.colour;
        const bright = cell === 0 ? shade : (cell >> 3) / 1000;
        for (let channel = 0; channel < 3; channel++)
          signal[3 * (row * columns + column) + channel]! += (lit ? 1.05 : colour[channel]! * bright) / FINE ** 2;
      }
    }
  blur(signal, columns, rows);
  for (let at = 0; at < signal.length; at++)
    signal[at] = Math.max(0, signal[at]! + noise * Math.sqrt(0.1 + signal[at]!) * normal(random));
  const piece = { corner: { x: 0, y: 0 }, turn: 0, length: LENGTH, width: WIDTH };
  return {
    patch: { piece, columns, rows, perMm, signal, clipped: new Uint8Array(columns * rows) },
    covered: fine.covered,
    diameters: kinds.map(({ across }) => across * Math.sqrt((2 * Math.sqrt(3)) / Math.PI)),
  };
}

/** Hexagons until so much is covered; a cell holds kind + 8 times 1000 times brightness. */
function throwAll(
  kinds: readonly Thrown[],
  columns: number,
  rows: number,
  perMm: number,
  random: () => number,
): { readonly cells: Int32Array; readonly covered: readonly number[] } {
  const cells = new Int32Array(columns * rows);
  for (const [kind, { across, wanted, glitter = 0.2 }] of kinds.entries()) {
    const half = (across / 2) * perMm;
    const count = Math.round((-Math.log(1 - wanted) * columns * rows) / (2 * Math.sqrt(3) * half * half));
    for (let flake = 0; flake < count; flake++) {
      const [x, y, turn] = [random() * columns, random() * rows, (random() * Math.PI) / 3];
      const bright = Math.round(1000 * Math.min(3, Math.exp(glitter * normal(random))));
      const sides = [0, 1, 2].map((i) => turn + (i * Math.PI) / 3).map((angle) => [Math.cos(angle), Math.sin(angle)]);
      const reach = 1.16 * half;
      for (let row = Math.max(0, Math.floor(y - reach)); row < Math.min(rows, y + reach); row++)
        for (let column = Math.max(0, Math.floor(x - reach)); column < Math.min(columns, x + reach); column++)
          if (sides.every(([c, s]) => Math.abs(c! * (column + 0.5 - x) + s! * (row + 0.5 - y)) <= half))
            cells[row * columns + column] = kind + 1 + 8 * bright;
    }
  }
  const covered = kinds.map((_, kind) => {
    let count = 0;
    for (const cell of cells) count += (cell & 7) === kind + 1 ? 1 : 0;
    return count / cells.length;
  });
  return { cells, covered };
}

/** A lens: [1 2 1] / 4 twice in both directions. */
function blur(signal: Float32Array, columns: number, rows: number): void {
  for (const [step, length, lines, next] of [
    [3, columns, rows, 3 * columns],
    [3 * columns, rows, columns, 3],
    [3, columns, rows, 3 * columns],
    [3 * columns, rows, columns, 3],
  ] as const)
    for (let line = 0; line < lines; line++)
      for (let channel = 0; channel < 3; channel++) {
        let before = signal[line * next + channel]!;
        for (let i = 0; i < length; i++) {
          const at = line * next + channel + i * step;
          const here = signal[at]!;
          signal[at] = (before + 2 * here + signal[i + 1 < length ? at + step : at]!) / 4;
          before = here;
        }
      }
}
