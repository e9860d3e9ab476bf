/**
 * K and S of one material as two smooth spectra that show given colours: for chips of which no spectra are known.
 *
 * Sought are ln k and ln s in every band, so that neither is negative. Least: the squared CIELAB differences of all views,
 * and the squared steps of ln k and ln s from band to band. A chip over both backings gives six numbers, smoothness decides
 * the rest; chips of several doses say more, because Beer's and Duncan's laws bind them together.
 *
 * Levenberg and Marquardt's method. Its matrix is tridiagonal (smoothness) plus one rank a number seen, so that each step is
 * solved by Woodbury's identity in the few dimensions of what was seen.
 */

import type { Light } from '../tables/lights.ts';
import { cieRootSlope } from './cie-root.ts';
import { type Lab, labFromTristimulus } from './cielab.ts';
import { effectiveDepth, layerOver } from './kubelka-munk.ts';
import { solveLinear } from './linear-system.ts';
import type { MixtureConstants, OpticalConstants } from './mixture.ts';
import { type LightPath, NO_PATH, pathFactor } from './optical-model.ts';
import { BAND_COUNT } from './spectrum.ts';
import { type Surface, surfaceOutward } from './surface.ts';
import { bookWeights } from './tristimulus.ts';

/** A layer with the material in it, seen over one backing. */
export interface ColourView {
  /** g/ml. */
  readonly concentration: number;
  /** mm. */
  readonly thickness: number;
  /** Reflectance of the backing, in optical contact: a spectrum. */
  readonly backing: ArrayLike<number>;
  /** Under `light`; unset: D65. */
  readonly lab: Lab;
  readonly light?: Light;
}

/**
 * CIELAB difference that weighs as much as a step by a factor of e² in k or s from one band to the next. Chosen on the 19
 * paints of `tests/optics/from-chips.test.ts`, where a quarter or four times as much predicts their mixtures worse.
 */
const TOLERANCE = 0.3;
const STIFFNESS = 0.25;

/**
 * As many times as stiff is s: what a material scatters changes more slowly over the spectrum than what it absorbs. Chosen on
 * the same paints: from one chip the median is ΔE00 4.65 with 1, 4.38 with 4, 4.34 with 8, 4.50 with 16 and 5.16 with 40.
 */
const EVENNESS = 8;

/** k and s are kept within this factor of one optical thickness of the middle layer. */
const RANGE = Math.log(1e4);

const UNKNOWNS = 2 * BAND_COUNT;

/** Where ln k and ln s begin among the unknowns, and how stiff each is. */
const STIFFNESSES = [
  [0, STIFFNESS],
  [BAND_COUNT, EVENNESS * STIFFNESS],
] as const;
const MOST_STEPS = 100;
const LEAST_DAMPING = 1e-6;
const MOST_DAMPING = 1e8;
const NUDGE = 1e-6;

/**
 * The smoothest k and s that show the views' colours, from a first guess.
 *
 * Units: plastic per mm; guess and result per mm per g/ml.
 */
export function smoothFit(
  views: readonly ColourView[],
  plastic: OpticalConstants,
  guess: OpticalConstants,
  surface: Surface,
  path: LightPath = NO_PATH,
): MixtureConstants {
  const depth = views.reduce((sum, { concentration, thickness }) => sum + concentration * thickness, 0);
  const unit = views.length / depth;
  let logs = new Float64Array(UNKNOWNS);
  for (let band = 0; band < BAND_COUNT; band++) {
    logs[band] = withinRange(Math.log(guess.absorption[band]! / unit));
    logs[BAND_COUNT + band] = withinRange(Math.log(guess.scattering[band]! / unit));
  }
  const trial = (at: Float64Array): Trial => trialAt(views, plastic, surface, path, unit, at);
  let now = trial(logs);
  let damping = 1e-2;
  for (let step = 0; step < MOST_STEPS && damping < MOST_DAMPING; step++) {
    const move = bestMove(logs, now, damping);
    const next = logs.map((value, i) => withinRange(value + move[i]!));
    const tried = trial(next);
    if (tried.cost < now.cost) {
      const settled = now.cost - tried.cost < 1e-4 * now.cost;
      logs = next;
      now = tried;
      damping = Math.max(LEAST_DAMPING, damping / 5);
      if (settled) break;
    } else damping *= 4;
  }
  const values = logs.map((value) => Math.exp(value) * unit);
  return { absorption: values.slice(0, BAND_COUNT), scattering: values.slice(BAND_COUNT) };
}

/** What constants show: weighted colour errors, their slopes (one row of unknowns an error), and what is to be least. */
interface Trial {
  readonly errors: Float64Array;
  readonly slopes: readonly Float64Array[];
  readonly cost: number;
}

function trialAt(
  views: readonly ColourView[],
  plastic: OpticalConstants,
  surface: Surface,
  path: LightPath,
  unit: number,
  logs: Float64Array,
): Trial {
  const errors = new Float64Array(3 * views.length);
  const slopes: Float64Array[] = [];
  const R = new Float64Array(BAND_COUNT);
  const byLog = new Float64Array(UNKNOWNS);
  for (const [index, { concentration, thickness, backing, lab, light }] of views.entries()) {
    const { x, y, z, white } = bookWeights(light);
    let X = 0;
    let Y = 0;
    let Z = 0;
    for (let band = 0; band < BAND_COUNT; band++) {
      const K = Math.exp(logs[band]!) * unit * concentration;
      const S = Math.exp(logs[BAND_COUNT + band]!) * unit * concentration;
      const seen = (moreK: number, moreS: number): number => {
        const mixedS = plastic.scattering[band]! + S * (1 + moreS);
        const factor = pathFactor(path, mixedS * thickness);
        const allS = mixedS * factor;
        const allK = (plastic.absorption[band]! + K * (1 + moreK)) * factor;
        const inside = layerOver(allK, allS, effectiveDepth(allK, allS, thickness), backing[band]!);
        return surfaceOutward(inside, surface);
      };
      R[band] = seen(0, 0);
      byLog[band] = (seen(NUDGE, 0) - R[band]!) / NUDGE;
      byLog[BAND_COUNT + band] = (seen(0, NUDGE) - R[band]!) / NUDGE;
      X += x[band]! * R[band]!;
      Y += y[band]! * R[band]!;
      Z += z[band]! * R[band]!;
    }
    const now = labFromTristimulus({ X, Y, Z }, white);
    errors[3 * index] = (now.L - lab.L) / TOLERANCE;
    errors[3 * index + 1] = (now.a - lab.a) / TOLERANCE;
    errors[3 * index + 2] = (now.b - lab.b) / TOLERANCE;
    const fx = cieRootSlope(X / white.X) / white.X / TOLERANCE;
    const fy = cieRootSlope(Y) / TOLERANCE;
    const fz = cieRootSlope(Z / white.Z) / white.Z / TOLERANCE;
    slopes.push(
      byLog.map((slope, i) => 116 * fy * y[i % BAND_COUNT]! * slope),
      byLog.map((slope, i) => 500 * (fx * x[i % BAND_COUNT]! - fy * y[i % BAND_COUNT]!) * slope),
      byLog.map((slope, i) => 200 * (fy * y[i % BAND_COUNT]! - fz * z[i % BAND_COUNT]!) * slope),
    );
  }
  let cost = 0;
  for (const error of errors) cost += error * error;
  eachStep((band, before, stiffness) => {
    cost += stiffness * (logs[band]! - logs[before]!) ** 2;
  });
  return { errors, slopes, cost };
}

/** The step of Gauss and Newton, damped: (T + Jᵀ J) move = −gradient, T tridiagonal, J the slopes. */
function bestMove(logs: Float64Array, { errors, slopes }: Trial, damping: number): Float64Array {
  const downhill = new Float64Array(UNKNOWNS);
  for (const [row, slope] of slopes.entries()) addScaled(downhill, -errors[row]!, slope);
  eachStep((band, before, stiffness) => {
    const pull = stiffness * (logs[band]! - logs[before]!);
    downhill[band]! -= pull;
    downhill[before]! += pull;
  });
  const smoothed = solveStiff(downhill, damping);
  const rows = slopes.length;
  const solvedSlopes = slopes.map((slope) => solveStiff(slope, damping));
  const small = new Float64Array(rows * rows);
  for (let i = 0; i < rows; i++) {
    for (let j = 0; j < rows; j++) small[i * rows + j] = dot(slopes[i]!, solvedSlopes[j]!) + (i === j ? 1 : 0);
  }
  const along = Float64Array.from(slopes, (slope) => dot(slope, smoothed));
  // The matrix is 1 plus a square: never singular.
  solveLinear(small, along);
  for (let row = 0; row < rows; row++) addScaled(smoothed, -along[row]!, solvedSlopes[row]!);
  return smoothed;
}

/** T x = right, for T of the stiffness of both spectra plus damping: Thomas's elimination, each spectrum by itself. */
function solveStiff(right: Float64Array, damping: number): Float64Array {
  const x = right.slice();
  const upper = new Float64Array(BAND_COUNT);
  for (const [offset, stiffness] of STIFFNESSES) {
    for (let band = 0; band < BAND_COUNT; band++) {
      const inner = band > 0 && band < BAND_COUNT - 1;
      const before = band > 0 ? stiffness : 0;
      const pivot = (inner ? 2 : 1) * stiffness + damping - before * (band > 0 ? upper[band - 1]! : 0);
      upper[band] = stiffness / pivot;
      x[offset + band] = (x[offset + band]! + (band > 0 ? before * x[offset + band - 1]! : 0)) / pivot;
    }
    for (let band = BAND_COUNT - 2; band >= 0; band--) x[offset + band]! += upper[band]! * x[offset + band + 1]!;
  }
  return x;
}

/** Calls with each two neighbours among the unknowns, k first, then s. */
function eachStep(use: (band: number, before: number, stiffness: number) => void): void {
  for (const [offset, stiffness] of STIFFNESSES) {
    for (let i = offset + 1; i < offset + BAND_COUNT; i++) use(i, i - 1, stiffness);
  }
}

function withinRange(log: number): number {
  return Math.min(RANGE, Math.max(-RANGE, log));
}

function addScaled(sum: Float64Array, factor: number, values: Float64Array): void {
  for (let i = 0; i < sum.length; i++) sum[i]! += factor * values[i]!;
}

function dot(one: Float64Array, other: Float64Array): number {
  let total = 0;
  for (let i = 0; i < one.length; i++) total += one[i]! * other[i]!;
  return total;
}
