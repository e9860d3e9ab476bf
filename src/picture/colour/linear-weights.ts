import { linearFromTristimulus } from '../../optics/display.ts';
import { BAND_COUNT } from '../../optics/spectrum.ts';
import { bookWeights } from '../../optics/tristimulus.ts';

/** Linear sRGB of a light of which X, Y or Z alone is 1. */
const [OF_X, OF_Y, OF_Z] = [
  linearFromTristimulus({ X: 1, Y: 0, Z: 0 }),
  linearFromTristimulus({ X: 0, Y: 1, Z: 0 }),
  linearFromTristimulus({ X: 0, Y: 0, Z: 1 }),
];

/** What to multiply the bands of a reflectance with for linear sRGB under D65: 36 numbers for red, then green, then blue. */
export const LINEAR_WEIGHTS: Float64Array = ((): Float64Array => {
  const weights = new Float64Array(3 * BAND_COUNT);
  const { x, y, z } = bookWeights('D65');
  for (const [channel, name] of (['r', 'g', 'b'] as const).entries())
    for (let band = 0; band < BAND_COUNT; band++)
      weights[channel * BAND_COUNT + band] = OF_X[name] * x[band]! + OF_Y[name] * y[band]! + OF_Z[name] * z[band]!;
  return weights;
})();

/** Writes linear sRGB of a reflectance of 36 bands, not clipped, at a place of a list. */
export function writeLinear(reflectance: ArrayLike<number>, out: Float64Array, at: number): void {
  for (let channel = 0; channel < 3; channel++) {
    const from = channel * BAND_COUNT;
    let sum = 0;
    for (let band = 0; band < BAND_COUNT; band++) sum += LINEAR_WEIGHTS[from + band]! * reflectance[band]!;
    out[at + channel] = sum;
  }
}
