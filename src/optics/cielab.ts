/**
 * CIELAB 1976.
 *
 * Source: ISO/CIE 11664-4.
 */

import type { Light } from '../tables/lights.ts';
import { cieCube, cieRoot } from './cie-root.ts';
import { type Tristimulus, tristimulus, whitePoint } from './tristimulus.ts';

/** CIELAB coordinates: L 0..100, a and b about −128..128. */
export interface Lab {
  readonly L: number;
  readonly a: number;
  readonly b: number;
}

/** `Lab` relative to D65: what every Lab of this book is, unless a light is named. */
export type LabD65 = Lab;

const WHITE_D65 = whitePoint('D65');

/**
 * CIELAB from tristimulus values.
 *
 * Units: both tristimulus values on the scale where Y of white is 1.
 *
 * @example labFromTristimulus(whitePoint('D65')) // { L: 100, a: 0, b: 0 }
 */
export function labFromTristimulus(XYZ: Tristimulus, white: Tristimulus = WHITE_D65): LabD65 {
  const fx = cieRoot(XYZ.X / white.X);
  const fy = cieRoot(XYZ.Y / white.Y);
  const fz = cieRoot(XYZ.Z / white.Z);
  return { L: 116 * fy - 16, a: 500 * (fx - fy), b: 200 * (fy - fz) };
}

/**
 * Tristimulus values from CIELAB.
 *
 * @example tristimulusFromLab({ L: 50, a: 0, b: 0 }).Y // 0.184187, to 6 digits
 */
export function tristimulusFromLab(lab: Lab, white: Tristimulus = WHITE_D65): Tristimulus {
  const fy = (lab.L + 16) / 116;
  return {
    X: white.X * cieCube(fy + lab.a / 500),
    Y: white.Y * cieCube(fy),
    Z: white.Z * cieCube(fy - lab.b / 200),
  };
}

/**
 * CIELAB of a reflectance under a light, relative to that light's white.
 *
 * Throws: RangeError if R has not 36 bands, or there is no such light.
 *
 * @example labOf(constantSpectrum(1)) // { L: 100, a: 0, b: 0 }
 */
export function labOf(R: ArrayLike<number>, light: Light = 'D65'): Lab {
  return labFromTristimulus(tristimulus(R, light), whitePoint(light));
}

/**
 * Chroma: distance from grey.
 *
 * @example chroma({ L: 50, a: 3, b: 4 }) // 5
 */
export function chroma(lab: Lab): number {
  return Math.sqrt(lab.a * lab.a + lab.b * lab.b);
}
