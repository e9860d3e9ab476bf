/**
 * From what is in a cup to what it looks like: the step between a recipe's grams and the optics of its plastic.
 *
 * @packageDocumentation
 */

import type { Light } from '../tables/lights.ts';
import { type Lab, labOf } from './cielab.ts';
import { deltaE00 } from './delta-e00.ts';
import { type Flake, spreadFlake } from './flake.ts';
import { mixtureConstants, type OpticalConstants } from './mixture.ts';
import { BOOK_BACKINGS } from './opacity.ts';
import { BAND_COUNT } from './spectrum.ts';
import { type Body, type Layer, stackReflectances } from './stack.ts';
import { BESIDE_GLOSS } from './surface.ts';

/** What the optics knows of a material: K and S, or a flake, or neither where it does not colour. */
export interface OpticalMaterial {
  /** Of a plastic per mm; of anything else per mm per g/ml. */
  readonly constants?: OpticalConstants;
  readonly flake?: Flake;
}

/** What is in a cup: shares of the plastic's volume, and grams of material per millilitre of plastic. */
export interface CupMix {
  readonly plastics: readonly { readonly material: string; readonly fraction: number }[];
  readonly contents: readonly { readonly material: string; readonly gramsPerMl: number }[];
}

/**
 * The optics of a cup: K and S per mm, and its flake.
 *
 * Throws: RangeError if a concentration is negative or not finite, or a plastic has no K and S.
 */
export function cupBody(mix: CupMix, shelf: (material: string) => OpticalMaterial): Body {
  const plastic = { absorption: new Float64Array(BAND_COUNT), scattering: new Float64Array(BAND_COUNT) };
  for (const { material, fraction } of mix.plastics) {
    const { constants } = shelf(material);
    if (!constants) throw new RangeError(`Plastic ${material} has no K and S; give it some`);
    for (let band = 0; band < BAND_COUNT; band++) {
      plastic.absorption[band]! += fraction * constants.absorption[band]!;
      plastic.scattering[band]! += fraction * constants.scattering[band]!;
    }
  }
  const parts = mix.contents.flatMap(({ material, gramsPerMl }) => {
    const { constants } = shelf(material);
    return constants ? [{ constants, concentration: gramsPerMl }] : [];
  });
  const flakes = mix.contents.flatMap(({ material, gramsPerMl }) => {
    const { flake } = shelf(material);
    return flake && gramsPerMl > 0 ? [spreadFlake(flake, gramsPerMl)] : [];
  });
  return { ...mixtureConstants(plastic, parts), flakes };
}

/** A colour over white and over black. */
export interface TwoViews {
  readonly overWhite: Lab;
  readonly overBlack: Lab;
}

/** CIELAB (D65) of a body at a thickness in mm over the book's backings. */
export function bodyViews(body: Body, thickness: number): TwoViews {
  return layersViews([{ ...body, thickness }]);
}

/** CIELAB of layers, the near one first, over the book's backings. */
export function layersViews(layers: readonly Layer[], light?: Light): TwoViews {
  const [white, black] = stackReflectances(layers, [BOOK_BACKINGS.white, BOOK_BACKINGS.black], BESIDE_GLOSS);
  return { overWhite: labOf(white!, light), overBlack: labOf(black!, light) };
}

/** The larger of the two colour differences, ΔE00, over white and over black: a translucent colour is both. */
export function viewsDifference(one: TwoViews, other: TwoViews): number {
  return Math.max(deltaE00(one.overWhite, other.overWhite), deltaE00(one.overBlack, other.overBlack));
}

/**
 * Colour difference of cups measured out in grams from the exact cup.
 *
 * Returns a function of the cup's plastic in ml, which returns a function of grams by material: ΔE00 as `viewsDifference`.
 * Units: thickness in mm.
 */
export function measuringError(
  exact: CupMix,
  shelf: (material: string) => OpticalMaterial,
  thickness: number,
): (plasticMl: number) => (grams: Readonly<Record<string, number>>) => number {
  const views = bodyViews(cupBody(exact, shelf), thickness);
  return (plasticMl) => (grams) => {
    const contents = Object.entries(grams).map(([material, mass]) => ({ material, gramsPerMl: mass / plasticMl }));
    return viewsDifference(views, bodyViews(cupBody({ plastics: exact.plastics, contents }, shelf), thickness));
  };
}
