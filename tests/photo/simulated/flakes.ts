/**
 * Flake in a bait: hexagons of one size thrown at random, drawn on a fine grid that lies along the bait.
 *
 * @packageDocumentation
 */
import { type Spectrum, spectrumOf } from '../../measure/foreign/physics/spectra.ts';
import type { Chance } from '../../measure/foreign/world/chance.ts';
import type { BaitShape } from './bait-shape.ts';

/** One kind of flake. */
export interface FlakeKind {
  readonly name: string;
  /** From one flat side to the other, mm. */
  readonly across: number;
  /** Part of the surface that is to be covered. */
  readonly wanted: number;
  readonly reflectance: Spectrum;
  /** How much flakes differ in brightness with how they lie: spread of its logarithm. */
  readonly glitter: number;
}

/** Where flakes lie. */
export interface FlakeMap {
  readonly kind: FlakeKind;
  readonly pitch: number;
  readonly columns: number;
  readonly rows: number;
  /** Brightness of the flake in a cell, times 1000; 0 where there is none. */
  readonly cells: Uint16Array;
}

const METALS: readonly (readonly [string, (nm: number) => number, number])[] = [
  ['silver', () => 0.72, 0.35],
  ['gold', (nm) => 0.12 + 0.62 / (1 + Math.exp((530 - nm) / 18)), 0.35],
  ['copper', (nm) => 0.12 + 0.5 / (1 + Math.exp((580 - nm) / 20)), 0.35],
  ['black', () => 0.035, 0.1],
  ['red', (nm) => 0.04 + 0.5 / (1 + Math.exp((610 - nm) / 10)), 0.25],
  ['blue', (nm) => 0.05 + 0.45 * Math.exp(-(((nm - 460) / 35) ** 2) / 2), 0.25],
  ['green', (nm) => 0.05 + 0.4 * Math.exp(-(((nm - 535) / 32) ** 2) / 2), 0.25],
];

/** Sizes that are sold, inches across (`.008` to `.062`). */
const SIZES = [0.008, 0.015, 0.025, 0.035, 0.04, 0.062];
const INCH = 25.4;

/** Some flake that is sold, 2 to 20 % of the surface. */
export function someFlakeKind(chance: Chance): FlakeKind {
  const [name, curve, glitter] = chance.oneOf(METALS);
  return {
    name,
    across: INCH * chance.oneOf(SIZES),
    wanted: 0.02 + 0.18 * chance.uniform() ** 1.5,
    reflectance: spectrumOf(curve),
    glitter,
  };
}

/** Throws flakes over a bait until so much of it is covered. */
export function thrownFlakes(kind: FlakeKind, shape: BaitShape, chance: Chance): FlakeMap {
  const pitch = Math.min(0.04, kind.across / 10);
  const half = Math.max(...Array.from({ length: 41 }, (_, at) => shape.halfWidth(((at - 20) / 41) * shape.length)));
  const [columns, rows] = [Math.ceil(shape.length / pitch), Math.ceil((2 * half) / pitch)];
  const cells = new Uint16Array(columns * rows);
  const area = (Math.sqrt(3) / 2) * kind.across ** 2;
  // So many that with those which lie on others as much is covered as is wanted.
  const count = Math.round((-Math.log(1 - kind.wanted) * shape.length * 2 * half) / area);
  const map = { kind, pitch, columns, rows, cells };
  for (let flake = 0; flake < count; flake++) {
    const bright = Math.min(60, Math.max(0.15, Math.exp(chance.normal(kind.glitter))));
    drawHexagon(
      map,
      chance.uniform() * columns,
      chance.uniform() * rows,
      chance.uniform() * Math.PI,
      Math.round(1000 * bright),
    );
  }
  return map;
}

function drawHexagon(
  { kind, pitch, columns, rows, cells }: FlakeMap,
  column: number,
  row: number,
  turn: number,
  value: number,
): void {
  const flat = kind.across / 2 / pitch;
  const reach = flat * 1.1548;
  const normals = [0, 1, 2].map(
    (side) => [Math.cos(turn + (side * Math.PI) / 3), Math.sin(turn + (side * Math.PI) / 3)] as const,
  );
  for (let y = Math.max(0, Math.floor(row - reach)); y <= Math.min(rows - 1, row + reach); y++) {
    for (let x = Math.max(0, Math.floor(column - reach)); x <= Math.min(columns - 1, column + reach); x++) {
      const [dx, dy] = [x + 0.5 - column, y + 0.5 - row];
      if (normals.every(([nx, ny]) => Math.abs(dx * nx + dy * ny) <= flat)) cells[y * columns + x] = value;
    }
  }
}

/** Brightness of the flake at a place of a bait, 1 as usual, 0 where there is none. */
export function flakeAt({ pitch, columns, rows, cells }: FlakeMap, along: number, across: number): number {
  const column = Math.floor(along / pitch + columns / 2);
  const row = Math.floor(across / pitch + rows / 2);
  return column < 0 || row < 0 || column >= columns || row >= rows ? 0 : cells[row * columns + column]! / 1000;
}

/** Part of a region of a bait that is covered, by its cells. */
export function coveredPart(map: FlakeMap, isIn: (along: number, across: number) => boolean): number {
  const { pitch, columns, rows, cells } = map;
  let [inside, covered] = [0, 0];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      if (!isIn((column + 0.5 - columns / 2) * pitch, (row + 0.5 - rows / 2) * pitch)) continue;
      inside++;
      if (cells[row * columns + column]! > 0) covered++;
    }
  }
  return inside === 0 ? Number.NaN : covered / inside;
}

/** Across of the circle that is as large as a flake: what a size "by area" is. */
export function acrossByArea({ across }: FlakeKind): number {
  return across * Math.sqrt((2 * Math.sqrt(3)) / Math.PI);
}
