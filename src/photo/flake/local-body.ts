/**
 * How each pixel of a zone differs from the body at its place.
 *
 * @packageDocumentation
 */
import { type Body, deviationOf, REACH } from '../bait/body-colour.ts';
import { oklabDistance, oklabOf, writeOklab } from '../bait/oklab.ts';
import type { Patch } from '../bait/rectify.ts';
import { lengthwiseBody } from './lengthwise-body.ts';

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

/** Every so many pixels tell the noise. */
const STRIDE = 5;

/** Distances of a zone from its body. */
export function besideBody(patch: Patch, body: Body): BesideBody {
  const { columns, rows, perMm, signal } = patch;
  const lab = oklabOf(signal);
  const local = lengthwiseBody(patch, lab);
  const [distance, light, lighter] = [0, 1, 2].map(() => new Float32Array(columns * rows)) as [
    Float32Array,
    Float32Array,
    Float32Array,
  ];
  const hereLab = new Float32Array(3);
  const near: number[] = [];
  for (let at = 0; at < columns * rows; at++) {
    writeOklab(local[3 * at]!, local[3 * at + 1]!, local[3 * at + 2]!, hereLab, 0);
    const apart = oklabDistance(lab, 3 * at, hereLab, 0);
    distance[at] = apart;
    light[at] = oklabDistance(signal, 3 * at, local, 3 * at);
    lighter[at] = lab[3 * at]! - hereLab[0]!;
    if (at % STRIDE === 0 && apart < REACH * body.spread) near.push(apart);
  }
  return { columns, rows, perMm, signal, distance, light, lighter, noise: deviationOf(near) };
}
