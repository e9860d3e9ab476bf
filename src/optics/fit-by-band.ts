import { type OpticalFault, opticalFault } from './fault.ts';
import { type BandObservation, fitBand } from './fit-band.ts';
import type { MixtureConstants, OpticalConstants } from './mixture.ts';
import { type Backings, type LightPath, NO_PATH } from './optical-model.ts';
import { BAND_COUNT, constantSpectrum, requireBands, WAVELENGTHS } from './spectrum.ts';
import type { Surface } from './surface.ts';

/** A film or bait of plastic with one material in it, measured over both backings. */
export interface MeasuredChip {
  /** g/ml, above 0. */
  readonly concentration: number;
  /** mm, above 0. */
  readonly thickness: number;
  /** Reflectances as measured, outside the surface: spectra, 0..1. */
  readonly overWhite: ArrayLike<number>;
  readonly overBlack: ArrayLike<number>;
  readonly backings: Backings;
}

/** Less contrast than this, in every band of every chip, is none. */
const NO_CONTRAST = 0.002;

/**
 * K and S of a material from chips that were checked, all of them jointly in each band by least squares in reflectance.
 *
 * The search goes outward from the band that shows most of the backing, each band beginning where its neighbour ended.
 */
export function fitByBand(
  plastic: OpticalConstants,
  chips: readonly MeasuredChip[],
  surface: Surface,
  path: LightPath = NO_PATH,
): MixtureConstants {
  const absorption = new Float64Array(BAND_COUNT);
  const scattering = new Float64Array(BAND_COUNT);
  const clearest = clearestBand(chips);
  const solve = (band: number, neighbour?: number): void => {
    const start = neighbour === undefined ? undefined : { k: absorption[neighbour]!, s: scattering[neighbour]! };
    const { k, s } = fitBand(observationsIn(band, plastic, chips), surface, start, path);
    absorption[band] = k;
    scattering[band] = s;
  };
  solve(clearest);
  for (let band = clearest + 1; band < BAND_COUNT; band++) solve(band, band - 1);
  for (let band = clearest - 1; band >= 0; band--) solve(band, band + 1);
  return { absorption, scattering };
}

/**
 * The first thing wrong with chips: a figure that is out of range, every chip hiding its backing, a chip that is darker over white.
 *
 * Throws: RangeError if a spectrum has not 36 bands.
 */
export function chipFault(chips: readonly MeasuredChip[]): OpticalFault | undefined {
  if (chips.length === 0) return opticalFault('out-of-range', 'No chips, expected at least one over white and black');
  let contrast = 0;
  for (const [i, { concentration, thickness, overWhite, overBlack }] of chips.entries()) {
    requireBands(overWhite, 'reflectance over white');
    requireBands(overBlack, 'reflectance over black');
    if (!(concentration > 0 && Number.isFinite(concentration) && thickness > 0 && Number.isFinite(thickness))) {
      return opticalFault(
        'out-of-range',
        `Chip ${i + 1} has ${concentration} g/ml at ${thickness} mm, expected numbers above 0`,
      );
    }
    let difference = 0;
    for (let band = 0; band < BAND_COUNT; band++) {
      const white = overWhite[band]!;
      const black = overBlack[band]!;
      if (!(white >= 0 && white <= 1 && black >= 0 && black <= 1)) {
        return opticalFault(
          'out-of-range',
          `Chip ${i + 1} has reflectances ${white} over white and ${black} over black, expected numbers between 0 and 1, never percent`,
          WAVELENGTHS[band],
        );
      }
      difference += white - black;
      contrast = Math.max(contrast, white - black);
    }
    if (difference < -NO_CONTRAST * BAND_COUNT) {
      return opticalFault(
        'darker-over-white',
        `Chip ${i + 1} is darker over white than over black: swapped, or two films of different thickness`,
      );
    }
  }
  if (contrast < NO_CONTRAST) {
    return opticalFault(
      'opaque',
      'Every chip hides its backing, so that K and S can’t be told apart: make a thinner one',
    );
  }
  return undefined;
}

function clearestBand(chips: readonly MeasuredChip[]): number {
  let clearest = 0;
  let most = Number.NEGATIVE_INFINITY;
  for (let band = 0; band < BAND_COUNT; band++) {
    let contrast = 0;
    for (const { overWhite, overBlack } of chips) contrast += overWhite[band]! - overBlack[band]!;
    if (contrast > most) {
      most = contrast;
      clearest = band;
    }
  }
  return clearest;
}

function observationsIn(band: number, plastic: OpticalConstants, chips: readonly MeasuredChip[]): BandObservation[] {
  const plasticK = plastic.absorption[band]!;
  const plasticS = plastic.scattering[band]!;
  return chips.flatMap(({ concentration, thickness, overWhite, overBlack, backings }) => {
    const layer = { concentration, thickness, plasticK, plasticS };
    return [
      { ...layer, Rg: backingIn(backings.white, band), measured: overWhite[band]! },
      { ...layer, Rg: backingIn(backings.black, band), measured: overBlack[band]! },
    ];
  });
}

function backingIn(backing: number | ArrayLike<number>, band: number): number {
  return (typeof backing === 'number' ? constantSpectrum(backing) : backing)[band]!;
}
