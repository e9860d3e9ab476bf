/**
 * Where streaks of a cup lie in a bait: in the near half of its thickness, and in the far one.
 *
 * All is in mm from the bait's nose, so that a bait has the same streaks in every size.
 *
 * @packageDocumentation
 */

import { sameCupBehind } from '../../optics/streaks.ts';
import type { BaitField } from '../../shapes/bait-field.ts';
import { KINDS, NoiseGrid } from './noise-grid.ts';
import { type Noise, noiseOf, seedOf } from './streak-noise.ts';
import { rampUp } from './volume-bins.ts';

/** How much of each pixel streaks cover, 0 to 1: of the bait's plastic together their share, in both halves. */
export interface StreakCover {
  readonly near: Float32Array;
  readonly far: Float32Array;
}

/** Streaks of one cup in what else there is. */
export interface Streaks {
  readonly seed: string;
  /** Of the plastic. */
  readonly share: number;
  /** How wide one is, mm. */
  readonly streakMm: number;
}

/** Width over which two streaks run into each other, mm. Looked for by eye. */
const SOFT_MM = 0.25;

/** Pixels by which it is found how wide streaks are for their share, and how far they are carried in the depth: so many, spread evenly. */
const ASKED = 12000;

/** Finds both, in halves of what they may be. */
const HALVINGS = 14;

/** See the top of the file. */
export function streakCover(field: BaitField, streaks: Streaks): StreakCover {
  const { cover, thicknessMm } = field;
  const { share, streakMm } = streaks;
  const pixels = pixelsOf(field);
  const lines = streakLines(field, pixels, streaks);
  const asked = someOf(pixels.length);
  const some = linesAt(lines, asked);
  const plastic = new Float64Array(asked.length);
  const same = new Float64Array(asked.length);
  let all = 0;
  let together = 0;
  for (let index = 0; index < asked.length; index++) {
    const pixel = pixels[asked[index]!]!;
    plastic[index] = cover[pixel]! * thicknessMm[pixel]!;
    same[index] = sameCupBehind(thicknessMm[pixel]!, streakMm);
    all += plastic[index]!;
    together += plastic[index]! * (share * share + same[index]! * share * (1 - share));
  }
  /** The border of streaks that are carried so far. */
  const distances = new Float64Array(asked.length);
  const bordered = (carried: number): number => {
    for (let index = 0; index < asked.length; index++) distances[index] = distanceAt(some, index, carried);
    return borderOf(distances, plastic, share * all);
  };
  const nearBorder = bordered(0);
  const nearCover = distances.map((distance) => 1 - rampUp(distance, nearBorder, SOFT_MM));
  /** What part of the plastic they cover in both halves. */
  const inBoth = (carried: number): number => {
    const border = bordered(carried);
    let sum = 0;
    for (let index = 0; index < asked.length; index++) {
      const far = 1 - rampUp(distances[index]!, border, SOFT_MM);
      sum += plastic[index]! * coveredInBoth(nearCover[index]!, far, same[index]!);
    }
    return sum;
  };
  const carried = firstBelow(inBoth, together);
  const farBorder = bordered(carried);
  const near = new Float32Array(cover.length);
  const far = new Float32Array(cover.length);
  for (let index = 0; index < pixels.length; index++) {
    const pixel = pixels[index]!;
    near[pixel] = 1 - rampUp(distanceAt(lines, index, 0), nearBorder, SOFT_MM);
    far[pixel] = 1 - rampUp(distanceAt(lines, index, carried), farBorder, SOFT_MM);
  }
  return { near, far };
}

/**
 * The part of a pixel that a cup has in both halves.
 *
 * @param same as `sameCupBehind`: as far as one streak goes through both halves, their borders run together
 */
export function coveredInBoth(near: number, far: number, same: number): number {
  return same * Math.min(near, far) + (1 - same) * near * far;
}

function pixelsOf({ cover }: BaitField): Int32Array {
  const pixels = new Int32Array(cover.length);
  let count = 0;
  for (let pixel = 0; pixel < cover.length; pixel++) if (cover[pixel]! > 0) pixels[count++] = pixel;
  return pixels.subarray(0, count);
}

/** Some places of a list so long, spread evenly over it: by the golden section, so that they fall in step with no streaks. */
function someOf(count: number): Int32Array {
  const some = new Int32Array(Math.min(count, ASKED));
  for (let index = 0; index < some.length; index++)
    some[index] = count > ASKED ? ((index * 0.6180339887498949) % 1) * count : index;
  return some;
}

/** Distances are told apart in so many steps. */
const STEPS = 512;
const PLASTIC = new Float64Array(STEPS);

/** The border within which so much of the plastic lies. */
function borderOf(distances: Float64Array, plastic: Float64Array, wanted: number): number {
  let most = 0;
  for (let index = 0; index < distances.length; index++) most = Math.max(most, distances[index]!);
  PLASTIC.fill(0);
  for (let index = 0; index < distances.length; index++)
    PLASTIC[Math.min(STEPS - 1, ((STEPS * distances[index]!) / most) | 0)]! += plastic[index]!;
  let [low, high] = [0, most];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const border = (low + high) / 2;
    let within = 0;
    for (let step = 0; step < STEPS; step++)
      if (PLASTIC[step]! > 0) within += PLASTIC[step]! * (1 - rampUp(((step + 0.5) * most) / STEPS, border, SOFT_MM));
    if (within < wanted) low = border;
    else high = border;
  }
  return (low + high) / 2;
}

/** How far streaks may be carried off in the depth, in widths from one to the next. */
const FARTHEST = 12;
const FIRST = 0.25;

/** The least value at which a function that begins above something is no more than that; the farthest if it never is. */
function firstBelow(reached: (at: number) => number, wanted: number): number {
  let [low, high] = [0, FIRST];
  while (high < FARTHEST && reached(high) > wanted) [low, high] = [high, high + FIRST];
  for (let step = 0; step < 7; step++) {
    const middle = (low + high) / 2;
    if (reached(middle) > wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** How streaks lie at each pixel of a list. */
interface StreakLines {
  /** How far into them it is, in widths from one to the next. */
  readonly wander: Float32Array;
  /** From one to the next, mm, in the widths that streaks have there. */
  readonly periodMm: Float32Array;
  /** How far those in the far half are carried off there, as a part of how far they are carried at most. */
  readonly carry: Float32Array;
}

/** Distance of a pixel from the middle of the next streak, mm; those in the far half are carried off so far, in widths from one to the next. */
function distanceAt({ wander, periodMm, carry }: StreakLines, index: number, carried: number): number {
  const turns = wander[index]! + carried * carry[index]!;
  return Math.abs(turns - Math.floor(turns) - 0.5) * periodMm[index]!;
}

function linesAt(lines: StreakLines, places: Int32Array): StreakLines {
  const at = (values: Float32Array): Float32Array => {
    const some = new Float32Array(places.length);
    for (let index = 0; index < places.length; index++) some[index] = values[places[index]!]!;
    return some;
  };
  return { wander: at(lines.wander), periodMm: at(lines.periodMm), carry: at(lines.carry) };
}

function streakLines(field: BaitField, pixels: Int32Array, { seed, share, streakMm }: Streaks): StreakLines {
  const { across, halfMm, thicknessMm } = field;
  const usualMm = streakMm / share;
  const noise = (name: string): Noise => noiseOf(seedOf(`${seed} ${name}`));
  const [slow, middle, fine, wide, deep] = [
    noise('slow'),
    noise('middle'),
    noise('fine'),
    noise('wide'),
    noise('deep'),
  ];
  const grid = new NoiseGrid(field, (x, y, out, at) => {
    const m = middle(x / 13, y / 5);
    const f = fine(x / 4 + 1.5 * m, y / 2);
    out[at] = 2.3 * slow(x / 30, y / 9) + 0.8 * m + 0.25 * f;
    out[at + 1] = 1 + 0.9 * wide(x / 11, y / 4);
    out[at + 2] = 1.2 * deep(x / 16, y / 6) + 0.4 * fine(x / 5 + 17.3, y / 2.5 + 9.1);
  });
  const wander = new Float32Array(pixels.length);
  const periodMm = new Float32Array(pixels.length);
  const carry = new Float32Array(pixels.length);
  const here = new Float64Array(KINDS);
  for (let index = 0; index < pixels.length; index++) {
    const pixel = pixels[index]!;
    grid.read(pixel, here);
    const v = across[pixel]!;
    const mm = thicknessMm[pixel]!;
    wander[index] = here[0]! + (halfMm[pixel]! * v * (1 + 0.25 * v * v)) / usualMm;
    periodMm[index] = usualMm / here[1]!;
    carry[index] = (here[2]! * mm) / (mm + streakMm);
  }
  return { wander, periodMm, carry };
}
