/**
 * What the joint fit of materials believes before it has seen a film.
 *
 * The figures of `FIT_DEFAULTS` were chosen by cross-validation, in coarse steps, on 41 measured films of oil paints: Geldof
 * et al., Heritage Science 6:17 (2018), doi 10.1186/s40494-018-0181-6. `tests/measure/films.bench.ts` prints the scores.
 * What mattered most: scattering smooth over wavelength and of a usual strength; thickness left loose, so that a film
 * tells K/S more than either; the surface; the density of a paint. What mattered little: the spread of factors, the weight of
 * bad films. Leaving one out flatters the bounds, so they were made wider than it asks for: `weighing`, `modelMiss` and
 * `strangersMiss` say by what reasoning. But by how much was decided with an eye on what leaving out says of them.
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
  /** Standard deviation of ln factor of a material whose density is not known. */
  readonly factorSpread: number;
  /** g/ml, of the materials of which it is known. */
  readonly densities: ReadonlyMap<string, number>;
  /** What a known density says of a factor: ln factor is about −power × ln(density / usual), within `spread`. */
  readonly byDensity: { readonly power: number; readonly usual: number; readonly spread: number };
  /** Standard deviation of ln amount of a part that is next to nothing of its film (see `weighingSpreads`). */
  readonly weighing: number;
  /** Standard deviation of ln thickness, of films and of the drawdowns of one film. */
  readonly thicknessSpread: number;
  readonly drawdownSpread: number;
  /** What a good measurement of a film and a good model differ by: ΔE00, and in units of lightness a band. */
  readonly colourNoise: number;
  readonly bandNoise: number;
  /** Degrees of freedom of Student's t for a film's misfit: the fewer, the less a bad film weighs. */
  readonly robustness: number;
  /**
   * What the theory itself misses of a mix whose materials are well known, as a standard deviation in ΔE00 along each of three
   * axes. With 1, which is what one film left out at a time asks for, a study found only 71 % of films that had been kept apart
   * from every choice within the bound of nine in ten: a spread 1.3 times as wide at least. 1.6, with no other allowance.
   */
  readonly modelMiss: number;
  /**
   * As many times as much where no film tells how the materials get on: two of them never met in one, or none holds nearly as
   * much of one (see `theoryMiss`). By reasoning, no source: theory has no word for what pigments do to one another.
   */
  readonly strangersMiss: number;
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
  densities: new Map(),
  byDensity: { power: 0.7, usual: 2, spread: 0.2 },
  weighing: 0.1,
  thicknessSpread: 0.4,
  drawdownSpread: 0.2,
  colourNoise: 1,
  bandNoise: 1.5,
  robustness: 20,
  modelMiss: 1.6,
  strangersMiss: 2,
  maxIterations: 2000,
  tolerance: 1e-7,
};
