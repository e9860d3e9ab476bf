/**
 * How each pixel of a zone differs from the body at its place.
 *
 * @packageDocumentation
 */
import { solveLinear } from '../../optics/linear-system.ts';
import type { Body } from '../bait/body-colour.ts';
import { oklabDistance, oklabOf, writeOklab } from '../bait/oklab.ts';
import type { Patch } from '../bait/rectify.ts';
import { CHANNELS } from '../channels.ts';

/** A zone beside its body. Three numbers a pixel where it says so. */
export interface BesideBody {
  readonly columns: number;
  readonly rows: number;
  readonly perMm: number;
  /** Light as a part of paper's, three numbers. */
  readonly signal: Float32Array;
  /** Of each pixel from the body at its place: in OKLab, and as light. */
  readonly distance: Float32Array;
  readonly light: Float32Array;
  /** How much lighter than the body it is, OKLab. */
  readonly lighter: Float32Array;
  /** One standard deviation of a body's pixel along an axis, OKLab. */
  readonly noise: number;
}

/** A bait is round: its body's light is a polynomial of second degree of the place, fitted to every so many of its pixels. */
const TERMS = 6;
const STRIDE = 5;

/** Pixels within this many standard deviations of the middle of the body are of it. */
const REACH = 4.685;
const MEDIAN_DISTANCE = 1.538;

/** Distances of a zone from its body. */
export function besideBody(patch: Patch, body: Body): BesideBody {
  const { columns, rows, perMm, signal } = patch;
  const lab = oklabOf(signal);
  const surface = surfaceOf(lab, patch, body);
  const [distance, light, lighter] = [0, 1, 2].map(() => new Float32Array(columns * rows)) as [
    Float32Array,
    Float32Array,
    Float32Array,
  ];
  const here = new Float32Array(3);
  const hereLab = new Float32Array(3);
  const near: number[] = [];
  for (let at = 0; at < columns * rows; at++) {
    surface(at % columns, Math.floor(at / columns), here);
    writeOklab(here[0]!, here[1]!, here[2]!, hereLab, 0);
    const apart = oklabDistance(lab, 3 * at, hereLab, 0);
    distance[at] = apart;
    light[at] = oklabDistance(signal, 3 * at, here, 0);
    lighter[at] = lab[3 * at]! - hereLab[0]!;
    if (at % STRIDE === 0 && apart < REACH * body.spread) near.push(apart);
  }
  near.sort((one, other) => one - other);
  const noise = (near[Math.floor(near.length / 2)] ?? 0) / MEDIAN_DISTANCE;
  return { columns, rows, perMm, signal, distance, light, lighter, noise };
}

/** The body's light by place. */
function surfaceOf(
  lab: Float32Array,
  { columns, rows, signal }: Patch,
  body: Body,
): (column: number, row: number, out: Float32Array) => void {
  const matrix = new Float64Array(TERMS * TERMS);
  const sides = [0, 1, 2].map(() => new Float64Array(TERMS));
  const terms = new Float64Array(TERMS);
  for (let at = 0; at < columns * rows; at += STRIDE) {
    if (oklabDistance(lab, 3 * at, body.lab, 0) > REACH * body.spread) continue;
    writeTerms(at % columns, Math.floor(at / columns), columns, rows, terms);
    for (let i = 0; i < TERMS; i++) {
      for (let j = 0; j < TERMS; j++) matrix[TERMS * i + j]! += terms[i]! * terms[j]!;
      for (let axis = 0; axis < 3; axis++) sides[axis]![i]! += terms[i]! * signal[3 * at + axis]!;
    }
  }
  // Keeps terms that a few pixels cannot tell near 0.
  for (let i = 1; i < TERMS; i++) matrix[(TERMS + 1) * i]! += RIDGE * (1 + matrix[0]!);
  // Each side becomes the coefficients of its channel.
  const solved = matrix[0]! > 0 && sides.every((side) => solveLinear(matrix.slice(), side));
  return (column, row, out) => {
    writeTerms(column, row, columns, rows, terms);
    for (let axis = 0; axis < 3; axis++) {
      let value = 0;
      for (let i = 0; i < TERMS; i++) value += sides[axis]![i]! * terms[i]!;
      out[axis] = solved ? value : body.signal[CHANNELS[axis]!];
    }
  };
}

const RIDGE = 1e-4;

function writeTerms(column: number, row: number, columns: number, rows: number, out: Float64Array): void {
  const u = (2 * column) / columns - 1;
  const v = (2 * row) / rows - 1;
  out[0] = 1;
  out[1] = u;
  out[2] = v;
  out[3] = u * u;
  out[4] = u * v;
  out[5] = v * v;
}
