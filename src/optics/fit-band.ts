/**
 * K and S of one material in one band from any number of layers with it: damped least squares in two unknowns, neither
 * below 0.
 */
import { effectiveDepth, layerOver } from './kubelka-munk.ts';
import { type LightPath, NO_PATH, pathFactor } from './optical-model.ts';
import { type Surface, surfaceOutward } from './surface.ts';

/** A layer with the material in it, in one band. */
export interface BandObservation {
  /** g/ml, above 0. */
  readonly concentration: number;
  /** mm. */
  readonly thickness: number;
  /** K and S of the plastic, per mm. */
  readonly plasticK: number;
  readonly plasticS: number;
  /** Reflectance of the backing, in optical contact. */
  readonly Rg: number;
  /** What was measured, outside the surface. */
  readonly measured: number;
}

/** K and S of a material, per mm per g/ml. */
export interface BandConstants {
  readonly k: number;
  readonly s: number;
}

/**
 * Reflectance that a change by a factor of e from the neighbour band counts for. A layer that hides its backing says nothing
 * of S alone, and one darker than its gloss nothing of how strong K is; there, and only there, this decides. S changes slowly
 * with wavelength, K does not.
 */
const PULL_K = 2e-5;
const PULL_S = 2e-4;

/** k and s below this, in optical thicknesses, are alike to the pull. */
const NEARLY_NONE = 1e-3;

/** Largest K·X and S·X of the middle layer that are tried. */
const DEEPEST = 1000;

const MOST_STEPS = 80;

/**
 * The k and s that come nearest to the observations.
 *
 * Shape: `start`, the neighbour band's result, is where the search begins and what it leans to where the observations
 * leave it open; without it a few places are tried.
 * Returns the constants and the sum of squared differences in reflectance.
 */
export function fitBand(
  observations: readonly BandObservation[],
  surface: Surface,
  start?: BandConstants,
  path: LightPath = NO_PATH,
): BandConstants & { readonly squares: number } {
  // In units of one optical thickness of the middle layer, both unknowns are of the order of 1.
  const depth = observations.reduce((sum, { concentration, thickness }) => sum + concentration * thickness, 0);
  const unit = observations.length / depth;
  const predicted = (o: BandObservation, k: number, s: number): number => {
    const S = o.plasticS + o.concentration * s * unit;
    const factor = pathFactor(path, S * o.thickness);
    const metK = (o.plasticK + o.concentration * k * unit) * factor;
    const metS = S * factor;
    return surfaceOutward(layerOver(metK, metS, effectiveDepth(metK, metS, o.thickness), o.Rg), surface);
  };
  const lean = start && { k: start.k / unit, s: start.s / unit };
  const residuals = (k: number, s: number, into: Float64Array): number => {
    let squares = 0;
    for (let i = 0; i < observations.length; i++) {
      const error = predicted(observations[i]!, k, s) - observations[i]!.measured;
      into[i] = error;
      squares += error * error;
    }
    const last = observations.length;
    const pullK = lean ? PULL_K * Math.log((k + NEARLY_NONE) / (lean.k + NEARLY_NONE)) : 0;
    const pullS = lean ? PULL_S * Math.log((s + NEARLY_NONE) / (lean.s + NEARLY_NONE)) : 0;
    into[last] = pullK;
    into[last + 1] = pullS;
    return squares + pullK * pullK + pullS * pullS;
  };
  const starts = lean ? [lean, ...STARTS] : STARTS;
  let best: { k: number; s: number; squares: number } | undefined;
  for (const from of starts) {
    const found = descend(residuals, observations.length + 2, from.k, from.s);
    if (!best || found.squares < best.squares * (1 - 1e-6)) best = found;
  }
  const { k, s, squares } = best!;
  return { k: k * unit, s: s * unit, squares };
}

const STARTS: readonly { readonly k: number; readonly s: number }[] = [
  { k: 0.3, s: 0.3 },
  { k: 0.05, s: 2 },
  { k: 2, s: 0.2 },
];

type Residuals = (k: number, s: number, into: Float64Array) => number;

/** Levenberg and Marquardt's method; an unknown at 0 that would go below is left there for the step. */
function descend(
  residuals: Residuals,
  count: number,
  k0: number,
  s0: number,
): { k: number; s: number; squares: number } {
  let k = k0;
  let s = s0;
  let damping = 1e-3;
  const now = new Float64Array(count);
  const tried = new Float64Array(count);
  const byK = new Float64Array(count);
  const byS = new Float64Array(count);
  let squares = residuals(k, s, now);
  for (let step = 0; step < MOST_STEPS && damping < 1e12; step++) {
    const dk = 1e-6 * (k + 1e-3);
    const ds = 1e-6 * (s + 1e-3);
    residuals(k + dk, s, byK);
    residuals(k, s + ds, byS);
    let kk = 0;
    let ks = 0;
    let ss = 0;
    let gk = 0;
    let gs = 0;
    for (let i = 0; i < count; i++) {
      const jk = (byK[i]! - now[i]!) / dk;
      const js = (byS[i]! - now[i]!) / ds;
      kk += jk * jk;
      ks += jk * js;
      ss += js * js;
      gk += jk * now[i]!;
      gs += js * now[i]!;
    }
    const kFree = kk > 0 && !(k === 0 && gk > 0);
    const sFree = ss > 0 && !(s === 0 && gs > 0);
    if (!kFree && !sFree) break;
    let improved = false;
    while (!improved && damping < 1e12) {
      const a = kk * (1 + damping);
      const d = ss * (1 + damping);
      let moveK = kFree ? -gk / a : 0;
      let moveS = sFree ? -gs / d : 0;
      if (kFree && sFree) {
        const determinant = a * d - ks * ks;
        moveK = (-gk * d + gs * ks) / determinant;
        moveS = (-gs * a + gk * ks) / determinant;
      }
      const nextK = Math.min(DEEPEST, Math.max(0, k + moveK));
      const nextS = Math.min(DEEPEST, Math.max(0, s + moveS));
      const next = residuals(nextK, nextS, tried);
      if (next < squares) {
        const settled = squares - next < 1e-14 * squares;
        k = nextK;
        s = nextS;
        squares = next;
        now.set(tried);
        damping = Math.max(1e-9, damping / 5);
        improved = true;
        if (settled) return { k, s, squares };
      } else damping *= 4;
    }
  }
  return { k, s, squares };
}
