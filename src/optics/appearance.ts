/**
 * What a bait looks like: over white and over black, at its thickness, under a light.
 */

import type { Light } from '../tables/lights.ts';
import { type Lab, labFromTristimulus } from './cielab.ts';
import { hexFromTristimulus } from './display.ts';
import { flakeCoverage } from './flake.ts';
import { contrastRatio, type Viewing } from './opacity.ts';
import type { Spectrum } from './spectrum.ts';
import { type Body, type Layer, type SharedBody, stackReflectances, swirlColumns, swirlReflectance } from './stack.ts';
import { BESIDE_GLOSS } from './surface.ts';
import { type Tristimulus, tristimulus, whitePoint } from './tristimulus.ts';

/** A colour as it is computed, with the spectrum that it comes from. */
export interface ComputedColour {
  /** Reflectance outside the plastic. */
  readonly spectrum: Spectrum;
  readonly tristimulus: Tristimulus;
  /** Relative to the white of the light. */
  readonly lab: Lab;
  /** For the screen, adapted to its white. */
  readonly hex: string;
  /** Whether the screen can't show it, and a nearby colour stands for it. */
  readonly mapped: boolean;
}

/** A bait over the two backings. */
export interface ComputedAppearance {
  readonly overWhite: ComputedColour;
  readonly overBlack: ComputedColour;
  /** Y over black by Y over white: 0 is clear, 1 hides everything. */
  readonly contrastRatio: number;
  /** Share of the face that has (opaque) flake in view, 0..1. */
  readonly flakeCoverage: number;
  /** The same bait without its flake, where it has any. */
  readonly body?: { readonly overWhite: ComputedColour; readonly overBlack: ComputedColour };
}

/** How a bait is looked at. */
export interface AppearanceOptions extends Viewing {
  /** mm, of the whole bait. */
  readonly thickness: number;
}

/**
 * What a body, or layers of bodies, looks like.
 *
 * Shape: one body, or layers with their thicknesses, the near one first; for layers the
 * option `thickness` is not read.
 * Units: K and S per mm, thickness in mm. Unset: D65, beside the gloss.
 * Throws: RangeError if a coefficient, a thickness or a backing is out of range.
 *
 * @example appearance(mixtureConstants(clear, []), { thickness: 8, optics: USUAL_OPTICS }).overWhite.hex // '#dededa'
 */
export function appearance(body: Body, options: AppearanceOptions): ComputedAppearance;
export function appearance(layers: readonly Layer[], options: Viewing): ComputedAppearance;
export function appearance(
  bait: Body | readonly Layer[],
  options: Viewing & { readonly thickness?: number },
): ComputedAppearance {
  const layers = isLayers(bait) ? bait : [{ ...bait, thickness: options.thickness ?? Number.NaN }];
  const views = overBoth(layers, options);
  const flakes = layers.flatMap((layer) =>
    (layer.flakes ?? []).map(({ perMm }) => ({ perMm: perMm * layer.thickness })),
  );
  const coverage = flakeCoverage(flakes, 1);
  if (flakes.length === 0) return { ...views, flakeCoverage: coverage };
  const plain = layers.map(({ absorption, scattering, thickness }) => ({ absorption, scattering, thickness }));
  const { overWhite, overBlack } = overBoth(plain, options);
  return { ...views, flakeCoverage: coverage, body: { overWhite, overBlack } };
}

/** A swirl: as seen from where the streaks run together, and each cup by itself. */
export interface SwirlAppearance {
  readonly overWhite: ComputedColour;
  readonly overBlack: ComputedColour;
  readonly contrastRatio: number;
  /** One for each cup, in their order: the extremes between which the bait varies. */
  readonly extremes: readonly ComputedAppearance[];
}

/**
 * What a swirl of cups looks like.
 *
 * Units: width of a streak in mm; unset: 2.
 * Throws: as `appearance`; RangeError if a share is not above 0.
 */
export function swirlAppearance(
  cups: readonly SharedBody[],
  { streak, ...options }: AppearanceOptions & { readonly streak?: number },
): SwirlAppearance {
  const columns = swirlColumns(cups, options.thickness, streak).map(({ layers, share }) => ({
    seen: overBoth(layers, options),
    share,
  }));
  const extremes = cups.map((cup) => appearance(cup, options));
  const mean = (view: 'overWhite' | 'overBlack'): ComputedColour =>
    colourOf(
      swirlReflectance(columns.map(({ seen, share }) => ({ reflectance: seen[view].spectrum, share }))),
      options.light,
    );
  const overWhite = mean('overWhite');
  const overBlack = mean('overBlack');
  const ratio = contrastRatio(overBlack.spectrum, overWhite.spectrum, options.light);
  return { overWhite, overBlack, contrastRatio: ratio, extremes };
}

/**
 * A reflectance as seen under a light.
 *
 * Throws: RangeError if it has not 36 bands, or there is no such light.
 */
export function colourOf(spectrum: Spectrum, light: Light = 'D65'): ComputedColour {
  const XYZ = tristimulus(spectrum, light);
  return {
    spectrum,
    tristimulus: XYZ,
    lab: labFromTristimulus(XYZ, whitePoint(light)),
    ...hexFromTristimulus(XYZ, light),
  };
}

function overBoth(
  layers: readonly Layer[],
  { light = 'D65', surface = BESIDE_GLOSS, optics: { backings, path } }: Viewing,
): { overWhite: ComputedColour; overBlack: ComputedColour; contrastRatio: number } {
  const [white, black] = stackReflectances(layers, [backings.white, backings.black], surface, path);
  const overWhite = colourOf(white!, light);
  const overBlack = colourOf(black!, light);
  return { overWhite, overBlack, contrastRatio: contrastRatio(overBlack.spectrum, overWhite.spectrum, light) };
}

function isLayers(bait: Body | readonly Layer[]): bait is readonly Layer[] {
  return Array.isArray(bait);
}
