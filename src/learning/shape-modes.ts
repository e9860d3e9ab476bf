import { BAND_COUNT, WAVELENGTHS } from '../optics/spectrum.ts';
import { SHAPE_MODES, SHAPE_RANGE_NM } from '../tables/material-priors.ts';
import { symmetricEigen } from './symmetric-eigen.ts';

/**
 * The curves that a smooth spectrum of unknown level and shape is made of: the leading axes of the covariance
 * level² + shape² exp(−Δ²/(2 · 55²)), Δ in nm, each as long as one standard deviation along it.
 *
 * Of independent standard normal numbers, one for each, their sum has that covariance, but for the little that the other axes hold.
 * Shape: `SHAPE_MODES` spectra, the one that does most first. Units: those of the deviations, of ln K.
 */
export function shapeModes(levelSd: number, shapeSd: number): readonly Float64Array[] {
  const C = new Float64Array(BAND_COUNT * BAND_COUNT);
  for (let i = 0; i < BAND_COUNT; i++) {
    for (let j = 0; j < BAND_COUNT; j++) {
      const apart = (WAVELENGTHS[i]! - WAVELENGTHS[j]!) / SHAPE_RANGE_NM;
      C[i * BAND_COUNT + j] = levelSd ** 2 + shapeSd ** 2 * Math.exp(-apart * apart * 0.5);
    }
  }
  return symmetricEigen(C, BAND_COUNT)
    .slice(0, SHAPE_MODES)
    .map(({ value, vector }) => vector.map((each) => each * Math.sqrt(value)));
}
