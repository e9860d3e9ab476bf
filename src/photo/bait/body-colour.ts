/**
 * The colour of a bait's body, whatever flake, bubbles and highlights lie in its zone.
 *
 * @packageDocumentation
 */
import type { LinearRgb } from '../pixels.ts';
import { oklabDistance, oklabOf } from './oklab.ts';
import type { Patch } from './rectify.ts';

/** The body of a zone. */
export interface Body {
  /** As a part of the light of paper: the mean of the body's pixels, in linear light. */
  readonly signal: LinearRgb;
  /** The middle of the cluster, OKLab. */
  readonly lab: Float32Array;
  /** One standard deviation of a pixel from that along an axis, OKLab; never below or above what the weights take. */
  readonly spread: number;
  /** Share of the zone's pixels that belong to the body, 0..1. */
  readonly share: number;
  /** Share of the zone's pixels at the camera's end, 0..1. */
  readonly clipped: number;
}

/** Pixels among which the densest cluster is looked for, and how far neighbours count, OKLab: one standard deviation. */
const SAMPLES = 400;
const NEIGHBOUR = 0.025;

/** A cluster of this part of the densest one's neighbours may be the body: dark flake hardly covers so much beside it. */
const DENSE_ENOUGH = 0.5;

/**
 * Bounds of the spread, OKLab. Without them the weights of a bait with much flake over black open up to its flake: two of such were
 * 20 and 38 ΔE00 off.
 */
const LEAST_SPREAD = 0.012;
const MOST_SPREAD = 0.03;

/** A pixel further off than this many standard deviations is none of the body's: J. W. Tukey's constant, from memory. */
export const REACH = 4.685;
const ROUNDS = 8;

/** Root of the median of chi-square with three degrees of freedom, 2.366 (from memory): median distance by one axis' deviation. */
const MEDIAN_DISTANCE = 1.538;

/**
 * The body of a zone: its densest cluster in OKLab, and then a mean in linear light in which a pixel counts the less the further it is off.
 */
export function bodyOf(patch: Patch): Body {
  const lab = oklabOf(patch.signal);
  const count = lab.length / 3;
  const centre = densest(lab, count);
  let spread = MOST_SPREAD;
  const weights = new Float32Array(count);
  for (let round = 0; round < ROUNDS; round++) {
    const reach = REACH * spread;
    const near: number[] = [];
    const sum = new Float64Array(4);
    for (let at = 0; at < count; at++) {
      const distance = oklabDistance(lab, 3 * at, centre, 0) / reach;
      weights[at] = distance < 1 ? (1 - distance * distance) ** 2 : 0;
      if (distance >= 1) continue;
      if (at % STRIDE === 0) near.push(distance * reach);
      for (let i = 0; i < 3; i++) sum[i]! += weights[at]! * lab[3 * at + i]!;
      sum[3]! += weights[at]!;
    }
    if (sum[3] === 0) break;
    for (let i = 0; i < 3; i++) centre[i] = sum[i]! / sum[3]!;
    spread = Math.min(MOST_SPREAD, Math.max(LEAST_SPREAD, deviationOf(near)));
  }
  return { ...weighedMean(patch, weights), lab: centre, spread };
}

/** One standard deviation along an axis of what lies at these distances from its middle; 0 of nothing. The distances are put in order. */
export function deviationOf(distances: number[]): number {
  distances.sort((one, other) => one - other);
  return (distances[Math.floor(distances.length / 2)] ?? 0) / MEDIAN_DISTANCE;
}

/** Every so many pixels tell the spread. */
const STRIDE = 7;

function weighedMean({ signal, clipped }: Patch, weights: Float32Array): Pick<Body, 'signal' | 'share' | 'clipped'> {
  let [r, g, b, sum, inside, ends] = [0, 0, 0, 0, 0, 0];
  for (let at = 0; at < weights.length; at++) {
    const weight = weights[at]!;
    ends += clipped[at]!;
    if (weight === 0) continue;
    inside += 1;
    sum += weight;
    r += weight * signal[3 * at]!;
    g += weight * signal[3 * at + 1]!;
    b += weight * signal[3 * at + 2]!;
  }
  const total = Math.max(sum, Number.MIN_VALUE);
  return {
    signal: { r: r / total, g: g / total, b: b / total },
    share: inside / weights.length,
    clipped: ends / weights.length,
  };
}

/**
 * OKLab of the pixel, of some all over the zone, that has most others near it: of the darkest cluster that is dense enough, since a lamp that
 * mirrors along a bait is one colour as well, and lighter.
 */
function densest(lab: Float32Array, count: number): Float32Array {
  const samples = Math.min(SAMPLES, count);
  const at = (sample: number): number => 3 * Math.floor(((sample + 0.5) * count) / samples);
  const near = new Float32Array(samples);
  for (let i = 0; i < samples; i++) {
    for (let j = 0; j < samples; j++) {
      const distance = oklabDistance(lab, at(i), lab, at(j)) / NEIGHBOUR;
      near[i]! += Math.exp((-distance * distance) / 2);
    }
  }
  const enough = DENSE_ENOUGH * near.reduce((most, each) => Math.max(most, each));
  const dense = Array.from(near.keys()).filter((sample) => near[sample]! >= enough);
  const darkest = dense.reduce((best, sample) => (lab[at(sample)]! < lab[at(best)]! ? sample : best));
  const peak = dense
    .filter((sample) => oklabDistance(lab, at(sample), lab, at(darkest)) < 2 * NEIGHBOUR)
    .reduce((best, sample) => (near[sample]! > near[best]! ? sample : best));
  return lab.slice(at(peak), at(peak) + 3);
}
