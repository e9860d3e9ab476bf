/**
 * What the window of a card looks like beside the bait: paper on one half, black on the other.
 *
 * @packageDocumentation
 */
import type { LinearRgb } from '../pixels.ts';
import { oklabDistance, oklabOf, writeOklab } from './oklab.ts';
import { type Patch, placeIn } from './rectify.ts';

/** The two halves of a window. */
export type Half = 'white' | 'black';

/** A patch of the window as it differs from what lies behind the bait. */
export interface Contrast {
  readonly patch: Patch;
  /** OKLab distance of each pixel from the background of its half. 0 beside the seam, where the halves run into each other. */
  readonly distance: Float32Array;
  /** Distance that is more than noise, by half. */
  readonly least: Readonly<Record<Half, number>>;
}

/** The strips at the window's long sides are background, if they look like it: mm, and OKLab. */
const STRIP_MM = 2.5;
const ALIKE = 0.12;

/** Distances are never smaller than this to count: creases, the light field's rest. And noise counts so many times its rms. */
const LEAST = 0.035;
const TIMES_NOISE = 4;

/** Lens and light from beside blur the seam by this, mm. */
const SEAM_MM = 0.7;

/**
 * How a patch differs from the background.
 *
 * Shape: the patch may lie at any angle; `seamX` is where black begins on the card; `black` is the light of black as a part of paper's.
 * The background of each half is the mean of what looks like it, without the bait, near the patch's long sides.
 */
export function contrastOf(patch: Patch, seamX: number, black: LinearRgb): Contrast {
  const lab = oklabOf(patch.signal);
  const nominal = { white: oklab({ r: 1, g: 1, b: 1 }), black: oklab(black) };
  const halves = halvesOf(patch, seamX);
  const grounds = {
    white: groundOf(patch, lab, halves, 1, nominal.white),
    black: groundOf(patch, lab, halves, 2, nominal.black),
  };
  const distance = new Float32Array(halves.length);
  for (let at = 0; at < halves.length; at++)
    if (halves[at] !== 0)
      distance[at] = oklabDistance(lab, 3 * at, halves[at] === 1 ? grounds.white.lab : grounds.black.lab, 0);
  return { patch, distance, least: { white: grounds.white.least, black: grounds.black.least } };
}

/** 1 on white, 2 on black, 0 beside the seam. */
function halvesOf({ piece, columns, rows, perMm }: Patch, seamX: number): Uint8Array {
  const halves = new Uint8Array(columns * rows);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const { x } = placeIn(piece, (column + 0.5) / perMm, (row + 0.5) / perMm);
      if (Math.abs(x - seamX) > SEAM_MM) halves[row * columns + column] = x < seamX ? 1 : 2;
    }
  return halves;
}

/** Mean of a half's background and how far a pixel of it must be from that to be something else. */
function groundOf(
  { columns, rows, perMm }: Patch,
  lab: Float32Array,
  halves: Uint8Array,
  half: number,
  nominal: Float32Array,
): { readonly lab: Float32Array; readonly least: number } {
  const strip = Math.min(rows / 2, Math.round(STRIP_MM * perMm));
  const sum = new Float64Array(3);
  const alike: number[] = [];
  for (let row = 0; row < rows; row++) {
    if (row >= strip && row < rows - strip) continue;
    for (let column = 0; column < columns; column++) {
      const at = row * columns + column;
      if (halves[at] !== half || oklabDistance(lab, 3 * at, nominal, 0) > ALIKE) continue;
      alike.push(at);
      for (let i = 0; i < 3; i++) sum[i]! += lab[3 * at + i]!;
    }
  }
  if (alike.length === 0) return { lab: nominal, least: LEAST };
  const mean = Float32Array.from(sum, (each) => each / alike.length);
  const squares = alike.reduce((total, at) => total + oklabDistance(lab, 3 * at, mean, 0) ** 2, 0);
  return { lab: mean, least: Math.max(LEAST, TIMES_NOISE * Math.sqrt(squares / alike.length)) };
}

function oklab({ r, g, b }: LinearRgb): Float32Array {
  const lab = new Float32Array(3);
  writeOklab(r, g, b, lab, 0);
  return lab;
}
