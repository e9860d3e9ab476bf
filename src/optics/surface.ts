/**
 * The boundary between the plastic and what surrounds it.
 *
 * Source: J. L. Saunderson, J. Opt. Soc. Am. 32:727 (1942).
 */
import { INDEX_PLASTIC, INDEX_WATER, SURFACE_K1, SURFACE_K2 } from '../tables/surface.ts';
import { mapSpectrum, type Spectrum } from './spectrum.ts';

/** How a boundary reflects. */
export interface Surface {
  /** Share of the light from outside that is reflected before it enters, 0..1. */
  readonly k1: number;
  /** Share of the diffuse light from inside that is reflected back inward, 0..1. */
  readonly k2: number;
  /**
   * Whether the gloss is in the reflectance outside: an instrument with its trap closed takes it in, an eye and a camera
   * look past it.
   */
  readonly specular: 'included' | 'excluded';
}

/** Smooth plastic in air as an instrument sees it, gloss included. */
export const IN_AIR: Surface = { k1: SURFACE_K1, k2: SURFACE_K2, specular: 'included' };

/**
 * Smooth plastic in air as one looks at it: beside the gloss. The surface of colours that were seen, photographed or
 * written down, and of the colours that the book shows; any darkness can be seen so, where gloss alone would be 4 %.
 */
export const BESIDE_GLOSS: Surface = { k1: SURFACE_K1, k2: SURFACE_K2, specular: 'excluded' };

/** Nothing between inside and outside. */
export const NO_SURFACE: Surface = { k1: 0, k2: 0, specular: 'included' };

/** Smooth plastic in water, beside the gloss: nearly all light enters, and little is held back inside. */
export const IN_WATER: Surface = fresnelSurface(INDEX_PLASTIC / INDEX_WATER, 'excluded');

/**
 * k1 and k2 of a smooth boundary from its relative refractive index.
 *
 * k1 is for light that falls straight on, k2 for diffuse light from inside, total reflection included.
 * Units: relativeIndex of the plastic to what surrounds it, above 1 and up to 3.
 * Throws: RangeError if the index is not in that range.
 * Source: Fresnel's equations; their integral over diffuse light in closed form: J. W. T. Walsh, Dept. Sci. Ind. Res.
 * Illum. Res. Tech. Paper 2:10 (1926), as given by S. Q. Duntley, J. Opt. Soc. Am. 32:61 (1942) (citation from memory);
 * 1 − k2 = (1 − k1 diffuse)/n².
 *
 * @example fresnelSurface(1.5).k2 // 0.59635, to 5 digits
 */
export function fresnelSurface(relativeIndex: number, specular: Surface['specular'] = 'included'): Surface {
  const n = relativeIndex;
  if (!(n > 1 && n <= 3)) {
    throw new RangeError(`Relative index is ${n}; give that of the plastic to its surroundings, above 1 and up to 3`);
  }
  const n2 = n * n;
  const n4 = n2 * n2;
  const diffuse =
    0.5 +
    ((n - 1) * (3 * n + 1)) / (6 * (n + 1) ** 2) +
    ((n2 * (n2 - 1) ** 2) / (n2 + 1) ** 3) * Math.log((n - 1) / (n + 1)) -
    (2 * n * n2 * (n2 + 2 * n - 1)) / ((n2 + 1) * (n4 - 1)) +
    ((8 * n4 * (n4 + 1)) / ((n2 + 1) * (n4 - 1) ** 2)) * Math.log(n);
  return { k1: ((n - 1) / (n + 1)) ** 2, k2: 1 - (1 - diffuse) / n2, specular };
}

/**
 * Reflectance outside from the reflectance inside.
 *
 * Units: R 0..1; returns 0..1.
 * Throws: RangeError if R is not in 0..1.
 * Source: Saunderson 1942; Rm = k1 + (1 − k1)(1 − k2) R / (1 − k2 R), without the first k1 where the gloss is excluded.
 *
 * @example surfaceOutward(0.38196601125) // 0.230284, to 6 digits
 */
export function surfaceOutward(R: number, surface: Surface = IN_AIR): number {
  if (!(R >= 0 && R <= 1)) throw new RangeError(`R is ${R}; give a reflectance between 0 and 1, never percent`);
  const { k1, k2 } = surface;
  return (surface.specular === 'included' ? k1 : 0) + ((1 - k1) * (1 - k2) * R) / (1 - k2 * R);
}

/**
 * Reflectance inside from the reflectance outside, the inverse of `surfaceOutward`.
 *
 * What is darker than the gloss itself, or lighter than the surface lets anything be, comes in as 0 or 1.
 * Units: Rm 0..1; returns 0..1.
 * Throws: RangeError if Rm is not in 0..1.
 *
 * @example surfaceInward(0.230284208364) // 0.381966, to 6 digits
 */
export function surfaceInward(Rm: number, surface: Surface = IN_AIR): number {
  if (!(Rm >= 0 && Rm <= 1)) throw new RangeError(`Rm is ${Rm}; give a reflectance between 0 and 1, never percent`);
  const { k1, k2 } = surface;
  const entered = surface.specular === 'included' ? Rm - k1 : Rm;
  if (entered <= 0) return 0;
  return Math.min(1, entered / ((1 - k1) * (1 - k2) + k2 * entered));
}

/** `surfaceOutward` of a whole spectrum. */
export function surfaceOutwardSpectrum(R: ArrayLike<number>, surface: Surface = IN_AIR): Spectrum {
  return mapSpectrum(R, (value) => surfaceOutward(value, surface));
}
