/**
 * How well a body hides what is behind it.
 *
 * Source: the idea of ISO 6504-3: luminance over black by luminance over white.
 */
import type { Light } from '../tables/lights.ts';
import type { OpticalModel } from './optical-model.ts';
import { type Body, stackReflectances } from './stack.ts';
import { BESIDE_GLOSS, type Surface } from './surface.ts';
import { tristimulus } from './tristimulus.ts';

/** What a body is looked at with; unset: D65, beside the gloss. */
export interface Viewing {
  readonly light?: Light;
  readonly surface?: Surface;
  readonly optics: OpticalModel;
}

/**
 * Contrast ratio of two views: Y over black by Y over white. 1 hides everything.
 *
 * Shape: reflectances as seen, spectra. Two views without any light in them are alike: 1.
 *
 * @example contrastRatio(constantSpectrum(0.2), constantSpectrum(0.4)) // 0.5
 */
export function contrastRatio(
  overBlack: ArrayLike<number>,
  overWhite: ArrayLike<number>,
  light: Light = 'D65',
): number {
  const white = tristimulus(overWhite, light).Y;
  return white > 0 ? tristimulus(overBlack, light).Y / white : 1;
}

/** Thicker than any bait, mm. */
const THICKEST = 1000;

/**
 * Thickness in mm at which a body's contrast ratio reaches `ratio`; undefined if not even a metre of it does.
 *
 * Units: K and S per mm; ratio in (0, 1), unset: 0.98, which ISO 6504-3 takes for hiding.
 * Throws: RangeError if the ratio is not in (0, 1) or a coefficient is out of range.
 */
export function hidingThickness(body: Body, options: Viewing & { readonly ratio?: number }): number | undefined {
  const { ratio = 0.98, light = 'D65', surface = BESIDE_GLOSS, optics } = options;
  const backings = [optics.backings.white, optics.backings.black];
  if (!(ratio > 0 && ratio < 1)) throw new RangeError(`Contrast ratio is ${ratio}; give a number between 0 and 1`);
  const reached = (thickness: number): boolean => {
    const layers = [{ ...body, thickness }];
    const [white, black] = stackReflectances(layers, backings, surface, optics.path);
    return contrastRatio(black!, white!, light) >= ratio;
  };
  if (reached(0)) return 0;
  let enough = 0.001;
  while (!reached(enough)) {
    if (enough >= THICKEST) return undefined;
    enough = Math.min(THICKEST, enough * 2);
  }
  let tooThin = enough / 2;
  while (enough - tooThin > 1e-6 * enough) {
    const middle = (enough + tooThin) / 2;
    if (reached(middle)) enough = middle;
    else tooThin = middle;
  }
  return enough;
}
