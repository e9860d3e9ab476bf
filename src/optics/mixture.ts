/**
 * K and S of a mix from those of its parts.
 *
 * Source: D. R. Duncan, Proc. Phys. Soc. 52:390 (1940): absorption and scattering of the parts add up by concentration.
 */
import { BAND_COUNT, requireBands, type Spectrum } from './spectrum.ts';

/** Absorption K and scattering S: of a plastic or a mix, per mm; of a material, per mm per g/ml. Both >= 0. */
export interface OpticalConstants {
  readonly absorption: ArrayLike<number>;
  readonly scattering: ArrayLike<number>;
}

/** `OpticalConstants` of a mix, per mm, in typed arrays. */
export interface MixtureConstants {
  readonly absorption: Spectrum;
  readonly scattering: Spectrum;
}

/** A material in a mix. */
export interface MixturePart {
  /** Per mm per g/ml. */
  readonly constants: OpticalConstants;
  /** g of material per ml of plastic, >= 0. */
  readonly concentration: number;
}

/**
 * K and S of a plastic with materials in it.
 *
 * Units: plastic per mm, parts per mm per g/ml at g/ml; returns per mm.
 * Throws: RangeError if a concentration is negative or not finite, or a spectrum has not 36 bands.
 *
 * @example
 * mixtureConstants(clear, [{ constants: peat, concentration: 0.004 }]).absorption[0]
 * // clear.absorption[0] + 0.004 * peat.absorption[0]
 */
export function mixtureConstants(
  plastic: OpticalConstants,
  parts: readonly MixturePart[],
  out: MixtureConstants = { absorption: new Float64Array(BAND_COUNT), scattering: new Float64Array(BAND_COUNT) },
): MixtureConstants {
  const { absorption, scattering } = out;
  requireConstants(plastic, 'plastic');
  requireConstants(out, 'out');
  absorption.set(plastic.absorption);
  scattering.set(plastic.scattering);
  for (const { constants, concentration } of parts) {
    requireConstants(constants, 'part');
    if (!(concentration >= 0 && concentration < Number.POSITIVE_INFINITY)) {
      throw new RangeError(`Concentration is ${concentration} g/ml; give a finite number, at least 0`);
    }
    addScaled(absorption, concentration, constants.absorption);
    addScaled(scattering, concentration, constants.scattering);
  }
  return out;
}

function addScaled(sum: Spectrum, factor: number, values: ArrayLike<number>): void {
  for (let band = 0; band < BAND_COUNT; band++) sum[band]! += factor * values[band]!;
}

function requireConstants(constants: OpticalConstants, name: string): void {
  requireBands(constants.absorption, `absorption of ${name}`);
  requireBands(constants.scattering, `scattering of ${name}`);
}
