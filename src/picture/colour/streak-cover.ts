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
  const lines = streakLines(field, streaks);
  const asked = someOf(field);
  const plastic = Float64Array.from(asked, (pixel) => cover[pixel]! * thicknessMm[pixel]!);
  let all = 0;
  let together = 0;
  const same = Float64Array.from(asked, (pixel) => sameCupBehind(thicknessMm[pixel]!, streakMm));
  for (let index = 0; index < asked.length; index++) {
    all += plastic[index]!;
    together += plastic[index]! * (share * share + same[index]! * share * (1 - share));
  }
  /** The border of streaks that are carried so far, and what part of the plastic they cover in both halves. */
  const distances = new Float64Array(asked.length);
  const bordered = (carried: number): number => {
    for (let index = 0; index < asked.length; index++) distances[index] = lines.distance(asked[index]!, carried);
    return borderOf(distances, plastic, share * all);
  };
  const nearBorder = bordered(0);
  const nearCover = Float64Array.from(distances, (distance) => 1 - rampUp(distance, nearBorder, SOFT_MM));
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
  for (let pixel = 0; pixel < cover.length; pixel++) {
    if (cover[pixel] === 0) continue;
    near[pixel] = 1 - rampUp(lines.distance(pixel, 0), nearBorder, SOFT_MM);
    far[pixel] = 1 - rampUp(lines.distance(pixel, carried), farBorder, SOFT_MM);
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

/** Pixels of a bait, spread evenly over it: by the golden section, so that they fall in step with no streaks. */
function someOf({ cover }: BaitField): Int32Array {
  const covered: number[] = [];
  for (let pixel = 0; pixel < cover.length; pixel++) if (cover[pixel]! > 0) covered.push(pixel);
  if (covered.length <= ASKED) return Int32Array.from(covered);
  return Int32Array.from({ length: ASKED }, (_, index) => {
    const place = (index * 0.6180339887498949) % 1;
    return covered[Math.floor(place * covered.length)]!;
  }).sort();
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

/** How wide streaks differ, and how far they wander, at each place of a grid. */
interface StreakLines {
  /** Distance of a pixel from the middle of the next streak, mm, in the widths that streaks have there; those in the far half carried off so far, in widths from one to the next. */
  distance(pixel: number, carried: number): number;
}

function streakLines(field: BaitField, { seed, share, streakMm }: Streaks): StreakLines {
  const { cover, across, halfMm, thicknessMm } = field;
  const periodMm = streakMm / share;
  const noise = (name: string): Noise => noiseOf(seedOf(`${seed} ${name}`));
  const [slow, middle, fine, wide, deep] = [
    noise('slow'),
    noise('middle'),
    noise('fine'),
    noise('wide'),
    noise('deep'),
  ];
  const wanders = new Float32Array(cover.length);
  const widths = new Float32Array(cover.length);
  const carries = new Float32Array(cover.length);
  const grid = new NoiseGrid(field, (x, y, out, at) => {
    const m = middle(x / 13, y / 5);
    const f = fine(x / 4 + 1.5 * m, y / 2);
    out[at] = 2.3 * slow(x / 30, y / 9) + 0.8 * m + 0.25 * f;
    out[at + 1] = 1 + 0.9 * wide(x / 11, y / 4);
    out[at + 2] = 1.2 * deep(x / 16, y / 6) + 0.4 * fine(x / 5 + 17.3, y / 2.5 + 9.1);
  });
  const here = new Float64Array(KINDS);
  for (let pixel = 0; pixel < cover.length; pixel++) {
    if (cover[pixel] === 0) continue;
    grid.read(pixel, here);
    const v = across[pixel]!;
    wanders[pixel] = here[0]! + (halfMm[pixel]! * v * (1 + 0.25 * v * v)) / periodMm;
    widths[pixel] = here[1]!;
    carries[pixel] = (here[2]! * thicknessMm[pixel]!) / (thicknessMm[pixel]! + streakMm);
  }
  return {
    distance(pixel, carried) {
      const turns = wanders[pixel]! + carried * carries[pixel]!;
      return (Math.abs(turns - Math.floor(turns) - 0.5) * periodMm) / widths[pixel]!;
    },
  };
}
