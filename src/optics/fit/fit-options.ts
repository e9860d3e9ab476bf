/**
 * What the joint fit of materials believes before it has seen a film.
 *
 * Every figure was chosen by cross-validation on measured films, never by looking at the answer for one: see
 * `tests/bench/films.bench.ts`, which prints the scores.
 */
import type { Surface } from '../surface.ts';
import type { Smoothness } from './smooth-prior.ts';

/** Options of `fitMaterials`. */
export interface FitOptions {
  /** nm, rising in equal steps, each one of 380, 385 … 780. */
  readonly wavelengths: readonly number[];
  /**
   * What amounts mean. `fractions` of a film by mass, where how much room a gram takes is found by the fit (a factor a
   * material). `concentrations` in g per ml of plastic, the plastic itself being a material of amount 1.
   */
  readonly amounts: 'fractions' | 'concentrations';
  readonly surface: Surface;
  /** Of the bare backings. */
  readonly backingSurface: Surface;
  /** Of ln K and ln S, per unit of thickness. */
  readonly absorption: Smoothness;
  readonly scattering: Smoothness;
  /** Standard deviation of ln factor. */
  readonly factorSpread: number;
  /** Standard deviation of ln thickness, of films and of the drawdowns of one film. */
  readonly thicknessSpread: number;
  readonly drawdownSpread: number;
  /** What a good measurement of a film and a good model differ by: ΔE00, and in units of lightness a band. */
  readonly colourNoise: number;
  readonly bandNoise: number;
  /** Degrees of freedom of Student's t for a film's misfit: the fewer, the less a bad film weighs. */
  readonly robustness: number;
  /**
   * What the model itself misses on a mix whose materials are well known, as a standard deviation in ΔE00 along each of
   * three axes; and by how much the Gaussian about a fit is too narrow.
   */
  readonly modelMiss: number;
  readonly posteriorScale: number;
  readonly maxIterations: number;
  readonly tolerance: number;
}

/** The options where none are named. */
export const FIT_DEFAULTS: Omit<FitOptions, 'wavelengths'> = {
  amounts: 'fractions',
  surface: { k1: 0.037, k2: 0.62, specular: 'included' },
  backingSurface: { k1: 0.04, k2: 0.6, specular: 'included' },
  absorption: { curvature: 0.6, slope: 1, centre: 0, spread: 2.5 },
  scattering: { curvature: 0.03, slope: 0.15, centre: 1.3, spread: 0.85 },
  factorSpread: 0.4,
  thicknessSpread: 0.5,
  drawdownSpread: 0.07,
  colourNoise: 1,
  bandNoise: 1.5,
  robustness: 20,
  modelMiss: 0.8,
  posteriorScale: 1.3,
  maxIterations: 2000,
  tolerance: 1e-7,
};
