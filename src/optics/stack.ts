/**
 * Arrangements of cups in a bait: layers in optical contact, and cups side by side.
 */
import { coverWithFlakes, type SpreadFlake } from './flake.ts';
import type { OpticalConstants } from './mixture.ts';
import { type LightPath, NO_PATH, pathFactor } from './optical-model.ts';
import { BAND_COUNT, constantSpectrum, requireBands, type Spectrum, spectrumFrom } from './spectrum.ts';
import { streakColumns } from './streaks.ts';
import { NO_SURFACE, type Surface, surfaceOutward } from './surface.ts';

/** Coloured plastic: K and S per mm, and the flake in it. */
export interface Body extends OpticalConstants {
  readonly flakes?: readonly SpreadFlake[];
}

/** A body of a thickness in mm. */
export interface Layer extends Body {
  readonly thickness: number;
}

/** A body that is a share of the bait, any positive number: shares are taken relative to their sum. */
export interface SharedBody extends Body {
  readonly share: number;
}

/**
 * Reflectance of layers over a backing, the near layer first, without surfaces between them.
 *
 * Each layer is the backing of the one before it (P. Kubelka, J. Opt. Soc. Am. 44:330 (1954), says why that is right).
 * Returns reflectances inside the plastic, or outside it where a surface is given.
 * Shape: backing is one number or a spectrum. Unset: no surface, and K and S as they stand (see `optical-model.ts`).
 * Throws: RangeError, naming the wavelength, if a layer or the backing is out of range.
 *
 * @example stackReflectance([], 0.9)[0] // 0.9
 */
export function stackReflectance(
  layers: readonly Layer[],
  backing: number | ArrayLike<number>,
  surface: Surface = NO_SURFACE,
  path: LightPath = NO_PATH,
): Spectrum {
  return stackReflectances(layers, [backing], surface, path)[0]!;
}

/** `stackReflectance` over several backings at once, which costs little more than over one. */
export function stackReflectances(
  layers: readonly Layer[],
  backings: readonly (number | ArrayLike<number>)[],
  surface: Surface = NO_SURFACE,
  path: LightPath = NO_PATH,
): readonly Spectrum[] {
  const stacks = backings.map((backing) =>
    typeof backing === 'number' ? constantSpectrum(backing) : spectrumFrom(backing),
  );
  coverWithLayers(layers, stacks, surface, path);
  return stacks;
}

const NO_FLAKES: readonly SpreadFlake[] = [];

/** `stackReflectances` over backings that are written over. */
export function coverWithLayers(
  layers: readonly Layer[],
  backings: readonly Spectrum[],
  surface: Surface,
  path: LightPath,
): void {
  const factors = path.d === 0 ? undefined : pathFactors(layers, path);
  for (let near = layers.length - 1; near >= 0; near--) {
    const { absorption, scattering, thickness, flakes = NO_FLAKES } = layers[near]!;
    const K = factors ? times(absorption, factors, MET_K, 'absorption') : absorption;
    const S = factors ? times(scattering, factors, MET_S, 'scattering') : scattering;
    coverWithFlakes(K, S, thickness, flakes, backings);
  }
  if (surface === NO_SURFACE) return;
  for (const R of backings) {
    for (let band = 0; band < BAND_COUNT; band++) R[band] = surfaceOutward(R[band]!, surface);
  }
}

/** The same layers with K′ for K and S′ for S: as parts of that bait, whatever of it is looked through. */
export function alongPath<Kind extends Layer>(layers: readonly Kind[], path: LightPath): readonly Kind[] {
  const factors = pathFactors(layers, path);
  return layers.map((layer) => ({
    ...layer,
    absorption: times(layer.absorption, factors, new Float64Array(BAND_COUNT), 'absorption'),
    scattering: times(layer.scattering, factors, new Float64Array(BAND_COUNT), 'scattering'),
  }));
}

// Nothing is made for a bait of which only a colour is wanted: a book looks at hundreds of them a recipe.
const FACTORS = new Float64Array(BAND_COUNT);
const MET_K = new Float64Array(BAND_COUNT);
const MET_S = new Float64Array(BAND_COUNT);

/** K′/K, which is S′/S, in every band of a bait; written over by the next call. */
function pathFactors(layers: readonly Layer[], path: LightPath): Spectrum {
  FACTORS.fill(0);
  for (const { scattering, thickness } of layers) {
    requireBands(scattering, 'scattering');
    for (let band = 0; band < BAND_COUNT; band++) FACTORS[band]! += scattering[band]! * thickness;
  }
  for (let band = 0; band < BAND_COUNT; band++) FACTORS[band] = pathFactor(path, FACTORS[band]!);
  return FACTORS;
}

function times(spectrum: ArrayLike<number>, factors: Spectrum, out: Spectrum, name: string): Spectrum {
  requireBands(spectrum, name);
  for (let band = 0; band < BAND_COUNT; band++) out[band] = spectrum[band]! * factors[band]!;
  return out;
}

/** A column of a swirl: layers, the near one first, and its part of the face. */
export interface SwirlColumn {
  readonly layers: readonly Layer[];
  readonly share: number;
}

/**
 * What an eye looks through in a swirl of cups: see `streakColumns`.
 *
 * Units: mm; width of a streak unset: 2.
 * Throws: RangeError if there are none, or a share is not above 0.
 */
export function swirlColumns(cups: readonly SharedBody[], thickness: number, streak?: number): readonly SwirlColumn[] {
  const total = totalShare(cups);
  const columns = streakColumns(
    cups.map(({ share }) => share / total),
    thickness,
    streak,
  );
  return columns.map(({ runs, share }) => ({
    layers: runs.map(({ cup, part }): Layer => {
      const { share: _, ...body } = cups[cup]!;
      return { ...body, thickness: part * thickness };
    }),
    share,
  }));
}

/**
 * Reflectance of what lies side by side, such as the columns of a swirl: the mean by area, as an eye sees it that can't tell the streaks
 * apart.
 *
 * Shape: reflectances outside the plastic, spectra; shares are taken relative to their sum.
 * Throws: RangeError if there are none, a share is not above 0, or a spectrum has not 36 bands.
 *
 * @example swirlReflectance([{ reflectance: constantSpectrum(0.2), share: 3 }, { reflectance: constantSpectrum(0.6), share: 1 }])[0] // 0.3
 */
export function swirlReflectance(
  streaks: readonly { readonly reflectance: ArrayLike<number>; readonly share: number }[],
): Spectrum {
  const total = totalShare(streaks);
  const mean = new Float64Array(BAND_COUNT);
  for (const { reflectance, share } of streaks) {
    requireBands(reflectance, 'reflectance');
    for (let band = 0; band < BAND_COUNT; band++) mean[band]! += (reflectance[band]! * share) / total;
  }
  return mean;
}

function totalShare(parts: readonly { readonly share: number }[]): number {
  let total = 0;
  for (const { share } of parts) {
    if (!(share > 0 && share < Number.POSITIVE_INFINITY)) {
      throw new RangeError(`Share is ${share}; give a finite number above 0`);
    }
    total += share;
  }
  if (total === 0) throw new RangeError('No cups to share the bait; give at least one');
  return total;
}
