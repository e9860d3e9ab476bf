/**
 * From materials to the look of a film, and how the look changes with every unknown.
 *
 * K = Σ v k and S = Σ v s of the materials (Duncan 1940), the film over its backing (Kubelka 1948), the surface (Saunderson
 * 1942). Where amounts are fractions by mass, v of a material is amount × factor divided by the sum of all: its share of
 * the film's volume, as far as optics can tell.
 *
 * Unknowns are ln k, ln s and ln factor of materials, and ln thickness, so that nothing can turn negative.
 */
import { effectiveDepth, layerOver } from '../kubelka-munk.ts';
import { type Surface, surfaceInward } from '../surface.ts';

/** A material in numbers: k and s in each band, and its factor. */
export interface MaterialNumbers {
  readonly absorption: Float64Array;
  readonly scattering: Float64Array;
  readonly factor: number;
}

/** A film or a part of one in numbers. */
export interface FilmNumbers {
  /** Positions in the list of materials. */
  readonly materials: readonly number[];
  readonly amounts: readonly number[];
}

/** Space for a film's K and S and effective amounts; made once, written often. */
export interface FilmState {
  readonly K: Float64Array;
  readonly S: Float64Array;
  /** Effective amounts, in the order of the film's materials. */
  readonly v: Float64Array;
}

/** Darkest backing inside its surface: one darker than its own gloss is measured wrongly, not blacker than black. */
const DARKEST_BACKING = 0.002;
const LIGHTEST_BACKING = 0.995;

/** What a bare backing reflects once a film lies on it, without its surface. */
export function backingInside(backing: ArrayLike<number>, surface: Surface): Float64Array {
  return Float64Array.from(backing, (measured) =>
    Math.min(LIGHTEST_BACKING, Math.max(DARKEST_BACKING, surfaceInward(Math.min(1, measured), surface))),
  );
}

/** Space for a film of so many materials. */
export function filmState(bands: number, materials: number): FilmState {
  return { K: new Float64Array(bands), S: new Float64Array(bands), v: new Float64Array(materials) };
}

/** Writes K, S and effective amounts of a film. */
export function mixFilm(
  film: FilmNumbers,
  materials: readonly MaterialNumbers[],
  amounts: 'fractions' | 'concentrations',
  out: FilmState,
): void {
  const { K, S, v } = out;
  let total = 0;
  for (let i = 0; i < film.materials.length; i++) {
    v[i] = film.amounts[i]! * (amounts === 'fractions' ? materials[film.materials[i]!]!.factor : 1);
    total += v[i]!;
  }
  K.fill(0);
  S.fill(0);
  for (let i = 0; i < film.materials.length; i++) {
    if (amounts === 'fractions') v[i]! /= total;
    const { absorption, scattering } = materials[film.materials[i]!]!;
    const share = v[i]!;
    for (let band = 0; band < K.length; band++) {
      K[band]! += share * absorption[band]!;
      S[band]! += share * scattering[band]!;
    }
  }
}

/** Reflectance of a layer with its surface, and its derivatives by K and S: all written into `out`. */
export interface LayerSlopes {
  R: number;
  byK: number;
  byS: number;
}

/**
 * Reflectance from outside of a layer over a backing, with derivatives.
 *
 * Shape: K, S per unit of thickness; Rg is the backing inside, as from `backingInside`.
 */
export function layerSlopes(
  K: number,
  S: number,
  thickness: number,
  Rg: number,
  surface: Surface,
  out: LayerSlopes,
): void {
  const t = effectiveDepth(K, S, thickness);
  const R = layerOver(K, S, t, Rg);
  const gammaSquared = K * (K + 2 * S);
  const x2 = gammaSquared * thickness * thickness;
  // d t / d(γ²), divided by 2 below: (X sech² − t) / γ² in the limit of thin layers is −(2/3) X³ (1 − (4/5) γ²X²).
  const slope =
    x2 < 1e-3
      ? -(2 / 3) * thickness ** 3 * (1 - 0.8 * x2)
      : (thickness * (1 - gammaSquared * t * t) - t) / gammaSquared;
  const tK = slope * (K + S);
  const tS = slope * K;
  const A = K + S;
  const denominator = 1 + A * t - Rg * S * t;
  const numeratorK = S * tK - Rg * (t + A * tK);
  const denominatorK = t + A * tK - Rg * S * tK;
  const numeratorS = t + S * tS - Rg * (t + A * tS);
  const denominatorS = t + A * tS - Rg * (t + S * tS);
  const { k1, k2 } = surface;
  const passed = 1 - k2 * R;
  const outward = ((1 - k1) * (1 - k2)) / passed;
  const outwardSlope = outward / passed;
  out.R = (surface.specular === 'included' ? k1 : 0) + outward * R;
  out.byK = (outwardSlope * (numeratorK - R * denominatorK)) / denominator;
  out.byS = (outwardSlope * (numeratorS - R * denominatorS)) / denominator;
}
