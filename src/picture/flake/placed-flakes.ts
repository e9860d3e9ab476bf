/**
 * Where the flakes of a bait lie: evenly in its plastic, turned any way, as in a stirred cup.
 *
 * @packageDocumentation
 */
import type { Run } from '../../patterns/place.ts';
import type { BaitField } from '../../shapes/bait-field.ts';
import { randomFrom } from '../../values/random-from.ts';

/** Flakes of one kind, one number each. */
export interface PlacedFlakes {
  readonly count: number;
  /** Middle, in pixels from the upper left. */
  readonly x: Float32Array;
  readonly y: Float32Array;
  /** The pixel in which its middle is, and which run of its line of sight it lies in. */
  readonly pixel: Int32Array;
  readonly run: Uint8Array;
  /** Plastic above it as a part of the thickness there, 0 to 1. */
  readonly deep: Float32Array;
  /** The normal of its face, a unit vector: to the right, down, and towards the eye (above 0). */
  readonly nx: Float32Array;
  readonly ny: Float32Array;
  readonly nz: Float32Array;
  /** How far it is turned in its own plane, radians. */
  readonly turn: Float32Array;
  /** 0 to 1, what is left to chance in its shine. */
  readonly chance: Float32Array;
}

/** Running sums of a field's plastic, column by column, from which places are drawn. */
export interface Plastic {
  /** Plastic before each column, and in all of them: pixels × mm. */
  readonly columns: Float64Array;
  /** Within each column, plastic down to and with each row. */
  readonly rows: Float32Array;
}

const plastics = new WeakMap<BaitField, Plastic>();

/** Of a field, made once. */
export function plasticOf(field: BaitField): Plastic {
  const plastic = plastics.get(field) ?? newPlastic(field);
  plastics.set(field, plastic);
  return plastic;
}

function newPlastic({ columns, rows, cover, thicknessMm }: BaitField): Plastic {
  const before = new Float64Array(columns + 1);
  const within = new Float32Array(columns * rows);
  for (let x = 0; x < columns; x++) {
    let sum = 0;
    for (let y = 0; y < rows; y++) {
      const at = y * columns + x;
      sum += cover[at]! * thicknessMm[at]!;
      within[x * rows + y] = sum;
    }
    before[x + 1] = before[x]! + sum;
  }
  return { columns: before, rows: within };
}

/** Which flakes are placed. */
export interface ToPlace {
  /** The cup that they are in, by its place in the bait. */
  readonly cup: number;
  /** In a millilitre of that cup. */
  readonly perMl: number;
  /** Longest side, mm: in plastic thinner than that they lie down. */
  readonly longestMm: number;
  /** What a line of sight runs through at a pixel, the near cup first. */
  runsAt(pixel: number): readonly Run[];
  /** Looked at from the far side, where what was near is deep. */
  readonly far: boolean;
  readonly seed: string;
}

/** Numbers drawn for each flake, whether it is in the cup or not: so the same flakes are met from either side. */
const DRAWN = 7;

/**
 * Places the flakes of a kind. Of all places in the bait those count that are in the cup, so that each cup has its own flake and no other's.
 */
export function placedFlakes(
  { field, plastic }: { readonly field: BaitField; readonly plastic: Plastic },
  { cup, perMl, longestMm, runsAt, far, seed }: ToPlace,
): PlacedFlakes {
  const { columns, rows, thicknessMm, pixelsPerMm } = field;
  const random = randomFrom(seed);
  const total = plastic.columns[columns]!;
  const volumeMl = total / pixelsPerMm ** 2 / 1000;
  // The fraction left over is a flake in that fraction of baits.
  const most = Math.floor(perMl * volumeMl + random());
  const placed = newFlakes(most);
  let count = 0;
  const drawn = new Float64Array(DRAWN);
  // A normal that points to the eye on one side points from it on the other.
  const side = far ? -1 : 1;
  for (let candidate = 0; candidate < most; candidate++) {
    for (let i = 0; i < DRAWN; i++) drawn[i] = random();
    const [along, across, depth, tilt, around, turn, chance] = drawn as unknown as Seven;
    const column = columnAt(plastic.columns, along * total);
    const inColumn = plastic.columns[column + 1]! - plastic.columns[column]!;
    const row = rowAt(plastic.rows, column * rows, rows, across * inColumn);
    const pixel = row * columns + column;
    const deep = far ? 1 - depth : depth;
    const run = runOf(runsAt(pixel), cup, deep);
    if (run < 0) continue;
    const above = row > 0 ? plastic.rows[column * rows + row - 1]! : 0;
    placed.x[count] = column + (along * total - plastic.columns[column]!) / inColumn;
    placed.y[count] = row + (across * inColumn - above) / (plastic.rows[column * rows + row]! - above);
    placed.pixel[count] = pixel;
    placed.run[count] = run;
    placed.deep[count] = deep;
    // All directions are as likely where it has room: then the cosine of the tilt is even, which gives Cauchy's mean of one half.
    const flattest = flattestCosine(thicknessMm[pixel]!, longestMm);
    const nz = Math.max(STANDING, flattest + (1 - flattest) * tilt);
    const level = Math.sqrt(1 - nz * nz);
    const angle = 2 * Math.PI * around;
    placed.nx[count] = level * Math.cos(angle) * side;
    placed.ny[count] = level * Math.sin(angle) * side;
    placed.nz[count] = nz;
    placed.turn[count] = 2 * Math.PI * turn;
    placed.chance[count] = chance;
    count++;
  }
  return { ...placed, count };
}

type Seven = [number, number, number, number, number, number, number];

/** A flake on its edge is drawn with this cosine: its film has a thickness too. */
const STANDING = 0.02;

/** The least cosine of a flake's tilt in plastic so thick: it is as high as it is long times the sine. */
export function flattestCosine(thicknessMm: number, longestMm: number): number {
  const sine = thicknessMm / longestMm;
  return sine >= 1 ? 0 : Math.sqrt(1 - sine * sine);
}

function newFlakes(count: number): Omit<PlacedFlakes, 'count'> {
  const numbers = (): Float32Array => new Float32Array(count);
  return {
    x: numbers(),
    y: numbers(),
    pixel: new Int32Array(count),
    run: new Uint8Array(count),
    deep: numbers(),
    nx: numbers(),
    ny: numbers(),
    nz: numbers(),
    turn: numbers(),
    chance: numbers(),
  };
}

function columnAt(before: Float64Array, sum: number): number {
  let [low, high] = [0, before.length - 2];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (before[middle + 1]! > sum) high = middle;
    else low = middle + 1;
  }
  return low;
}

function rowAt(sums: Float32Array, from: number, rows: number, sum: number): number {
  let [low, high] = [0, rows - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sums[from + middle]! > sum) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Which run of a line of sight a depth falls into, if that is of a cup; else −1. */
function runOf(runs: readonly Run[], cup: number, deep: number): number {
  let end = 0;
  for (let i = 0; i < runs.length; i++) {
    end += runs[i]!.part;
    if (deep < end || i === runs.length - 1) return runs[i]!.cup === cup ? i : -1;
  }
  return -1;
}
