/**
 * Linear sRGB of a reflectance under D65, by sums of its own.
 *
 * @packageDocumentation
 */
import type { Spectrum } from '../../measure/foreign/physics/spectra.ts';
import { D65, OBSERVER } from './lights.ts';
import type { Rgb } from './rgb.ts';

const WHITE = OBSERVER.map((curve) => curve.reduce((sum, each, band) => sum + each * D65[band]!, 0));

// IEC 61966-2-1, from X, Y and Z of D65 with Y of white 1.
const TO_RGB = [
  [3.2406, -1.5372, -0.4986],
  [-0.9689, 1.8758, 0.0415],
  [0.0557, -0.204, 1.057],
] as const;
// X and Z of D65 in IEC 61966-2-1: the sums are brought to them, so that a perfect diffuser is 1, 1, 1.
const STANDARD_WHITE = [0.9505, 1, 1.089] as const;

/** Linear sRGB under D65; a perfect diffuser is 1, 1, 1 (within 0.0002). */
export function screenColour(reflectance: Spectrum): Rgb {
  const xyz = OBSERVER.map((curve, axis) => {
    const sum = curve.reduce((all, each, band) => all + each * D65[band]! * reflectance[band]!, 0);
    return (sum / WHITE[axis]!) * STANDARD_WHITE[axis]!;
  });
  const [r = 0, g = 0, b = 0] = TO_RGB.map((row) => row.reduce((sum, each, axis) => sum + each * xyz[axis]!, 0));
  return [r, g, b];
}

/** The value 0..1 that a file has for a linear one, and back (IEC 61966-2-1). */
export function encoded(linear: number): number {
  return linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;
}

/** See `encoded`. */
export function decoded(value: number): number {
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
}
