import { PLASTIC_LOOKS, PLASTIC_SCATTERING_POWER, YELLOWNESS_RANGE } from '../tables/plastics.ts';
import type { MixtureConstants } from './mixture.ts';
import { BAND_COUNT, WAVELENGTHS } from './spectrum.ts';

/** How a base plastic looks by itself when cured. */
export type PlasticLook = keyof typeof PLASTIC_LOOKS;

/**
 * K and S per mm of a base plastic of which only its look is known: tier 'estimated'.
 *
 * @example plasticConstants('clear').scattering[17] // 0.003: at 550 nm
 */
export function plasticConstants(look: PlasticLook = 'clear'): MixtureConstants {
  const { absorption: K, yellowness, scattering: S } = PLASTIC_LOOKS[look];
  const absorption = new Float64Array(BAND_COUNT);
  const scattering = new Float64Array(BAND_COUNT);
  for (let band = 0; band < BAND_COUNT; band++) {
    const wavelength = WAVELENGTHS[band]!;
    absorption[band] = K + yellowness * Math.exp((400 - wavelength) / YELLOWNESS_RANGE);
    scattering[band] = S * (wavelength / 550) ** PLASTIC_SCATTERING_POWER;
  }
  return { absorption, scattering };
}
