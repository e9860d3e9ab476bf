/**
 * From what is in a cup to what it looks like: the step between a recipe's grams and the optics of its plastic.
 *
 * @packageDocumentation
 */

import type { Light } from '../tables/lights.ts';
import { type Lab, labOf } from './cielab.ts';
import { deltaE00 } from './delta-e00.ts';
import { type Flake, type SpreadFlake, spreadFlake } from './flake.ts';
import type { OpticalConstants } from './mixture.ts';
import { crowdingFactor, type OpticalModel } from './optical-model.ts';
import { BAND_COUNT, requireBands, type Spectrum } from './spectrum.ts';
import { type Body, coverWithLayers, type Layer, type SharedBody, swirlColumns, swirlReflectance } from './stack.ts';
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

/** A cup that is mixed again and again, with other doses or with a material that may also be otherwise. */
export interface CupMixer {
  /** Its plastics, then what is in them. */
  readonly materials: readonly string[];
  /** Shares of the plastics' volume, then g/ml. */
  readonly doses: ArrayLike<number>;
  /**
   * The optics of the cup with these doses, as `doses` has them; unset: its own. It is written over by the next mix.
   *
   * Throws: RangeError if a dose is negative or not finite.
   */
  mixed(doses?: ArrayLike<number>): Body;
  /** The same cup with another material in the place of one. */
  replaced(material: string, other: OpticalMaterial): CupMixer;
}

/** K and S of a material one after the other: a row of the matrix with which doses are multiplied. */
const ROW = 2 * BAND_COUNT;

/** How a cup is mixed. */
export type Mixing = Pick<OpticalModel, 'crowding'>;

/**
 * A cup, ready to be mixed.
 *
 * Throws: RangeError if a plastic has no K and S, or a flake cannot be.
 */
export function cupMixer(
  { plastics, contents }: CupMix,
  shelf: (material: string) => OpticalMaterial,
  mixing: Mixing,
): CupMixer {
  const materials = [...plastics, ...contents].map(({ material }) => material);
  const doses = [...plastics.map(({ fraction }) => fraction), ...contents.map(({ gramsPerMl }) => gramsPerMl)];
  const rows = new Float64Array(ROW * materials.length);
  const flakes = materials.map((material, place) => {
    const optical = shelf(material);
    if (place < plastics.length && !optical.constants)
      throw new RangeError(`Plastic ${material} has no K and S; give it some`);
    setRow(rows, place, optical);
    return place < plastics.length ? undefined : spreadOne(optical);
  });
  const crowds = materials.map(
    (material, place) => place >= plastics.length && shelf(material).constants !== undefined,
  );
  return mixer({ materials, own: doses, rows, flakes, crowds, mixing });
}

/** What a mixer goes by: all by place. */
interface MixerParts {
  readonly materials: readonly string[];
  readonly own: readonly number[];
  readonly rows: Float64Array;
  readonly flakes: readonly (SpreadFlake | undefined)[];
  /** Whether it counts to the load: all that colours but plastic and flake. */
  readonly crowds: readonly boolean[];
  readonly mixing: Mixing;
}

/** Flake at 1 g/ml: there is as much of it as its dose is. */
function spreadOne({ flake }: OpticalMaterial): SpreadFlake | undefined {
  return flake && spreadFlake({ ...flake, reflectance: Float64Array.from(flake.reflectance) }, 1);
}

function setRow(rows: Float64Array, place: number, { constants }: OpticalMaterial): void {
  if (!constants) return;
  requireBands(constants.absorption, 'absorption');
  requireBands(constants.scattering, 'scattering');
  rows.set(constants.absorption, ROW * place);
  rows.set(constants.scattering, ROW * place + BAND_COUNT);
}

function mixer(parts: MixerParts): CupMixer {
  const { materials, own, rows, flakes, crowds, mixing } = parts;
  const sums = new Float64Array(ROW);
  const [absorption, scattering] = [sums.subarray(0, BAND_COUNT), sums.subarray(BAND_COUNT)];
  return {
    materials,
    doses: own,
    mixed(doses = own) {
      sums.fill(0);
      let load = 0;
      const spread: SpreadFlake[] = [];
      for (let place = 0; place < materials.length; place++) {
        const dose = doses[place]!;
        if (!(dose >= 0 && dose < Number.POSITIVE_INFINITY)) {
          throw new RangeError(`Concentration is ${dose} g/ml; give a finite number, at least 0`);
        }
        const from = ROW * place;
        for (let i = 0; i < ROW; i++) sums[i]! += dose * rows[from + i]!;
        if (crowds[place]) load += dose;
        const flake = flakes[place];
        if (flake && dose > 0) spread.push({ perMm: dose * flake.perMm, reflectance: flake.reflectance });
      }
      const crowded = crowdingFactor(mixing, load);
      if (crowded !== 1) for (let band = 0; band < BAND_COUNT; band++) scattering[band]! *= crowded;
      return { absorption, scattering, flakes: spread };
    },
    replaced(material, other) {
      const place = materials.lastIndexOf(material);
      const changed = rows.slice().fill(0, ROW * place, ROW * (place + 1));
      setRow(changed, place, other);
      return mixer({
        ...parts,
        rows: changed,
        flakes: flakes.with(place, spreadOne(other)),
        crowds: crowds.with(place, crowds[place]! && other.constants !== undefined),
      });
    },
  };
}

/**
 * The optics of a cup: K and S per mm, and its flake.
 *
 * Throws: RangeError if a concentration is negative or not finite, or a plastic has no K and S.
 */
export function cupBody(mix: CupMix, shelf: (material: string) => OpticalMaterial, mixing: Mixing): Body {
  return cupMixer(mix, shelf, mixing).mixed();
}

/** A colour over white and over black. */
export interface TwoViews {
  readonly overWhite: Lab;
  readonly overBlack: Lab;
}

/** CIELAB (D65) of a body at a thickness in mm over both backings. */
export function bodyViews(body: Body, thickness: number, optics: OpticalModel): TwoViews {
  return layersViews([{ ...body, thickness }], optics);
}

/** CIELAB of layers, the near one first, over both backings. */
export function layersViews(layers: readonly Layer[], optics: OpticalModel, light?: Light): TwoViews {
  cover(layers, optics);
  return { overWhite: labOf(OVER_WHITE, light), overBlack: labOf(OVER_BLACK, light) };
}

/** CIELAB of a swirl of cups, seen from where they run together: see `swirlColumns`. Units: mm; width of a streak unset: 2. */
export function swirlViews(
  cups: readonly SharedBody[],
  thickness: number,
  optics: OpticalModel,
  streak?: number,
): TwoViews {
  const seen = swirlColumns(cups, thickness, streak).map(({ layers, share }) => {
    cover(layers, optics);
    return { share, white: OVER_WHITE.slice(), black: OVER_BLACK.slice() };
  });
  const mean = (view: 'white' | 'black'): Lab =>
    labOf(swirlReflectance(seen.map((cup) => ({ reflectance: cup[view], share: cup.share }))));
  return { overWhite: mean('white'), overBlack: mean('black') };
}

// A book looks at hundreds of cups a recipe to say how far they may be off: nothing is made for one that only two colours are wanted of.
const OVER_WHITE = new Float64Array(BAND_COUNT);
const OVER_BLACK = new Float64Array(BAND_COUNT);
const OVER_BOTH = [OVER_WHITE, OVER_BLACK];

/** Writes what is seen of layers over both backings, beside the gloss. */
function cover(layers: readonly Layer[], { backings, path }: OpticalModel): void {
  put(backings.white, OVER_WHITE);
  put(backings.black, OVER_BLACK);
  coverWithLayers(layers, OVER_BOTH, BESIDE_GLOSS, path);
}

function put(backing: number | ArrayLike<number>, into: Spectrum): void {
  if (typeof backing === 'number') into.fill(backing);
  else into.set(backing);
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
  optics: OpticalModel,
): (plasticMl: number) => (grams: Readonly<Record<string, number>>) => number {
  const cup = cupMixer(exact, shelf, optics);
  const views = bodyViews(cup.mixed(), thickness, optics);
  const doses = Array.from(cup.doses);
  return (plasticMl) => (grams) => {
    for (let place = exact.plastics.length; place < doses.length; place++)
      doses[place] = (grams[cup.materials[place]!] ?? 0) / plasticMl;
    return viewsDifference(views, bodyViews(cup.mixed(doses), thickness, optics));
  };
}
