/**
 * What holds of all plastic that is looked at: the backings, how far light goes in it, and how material in it crowds.
 *
 * Kubelka and Munk's K and S are those of light which goes in all directions. In a clear body it comes straight from the surface and goes
 * near the normal, in a cloudy one it goes obliquely: the longer way meets more of what absorbs, and of what scatters. So before the formulas
 * of `kubelka-munk.ts` both become less by one factor,
 *
 *     K′ = K f,   S′ = S f,   f = 1 − d / (1 + S X / s0),   S X summed over all layers of the bait:
 *
 * 1 − d where nothing scatters, 1 where much does. Form and s0 are a convention of this book (see `tables/light-path.ts`).
 *
 * @packageDocumentation
 */
import { BLACK_BACKING, WHITE_BACKING } from '../tables/backings.ts';
import { CLEAR_SHORTENING, HALF_CLOUDY, USUAL_CROWDING } from '../tables/light-path.ts';

/** Reflectances of the backings, in optical contact with the bait: a number or a spectrum each. */
export interface Backings<Spectrum extends ArrayLike<number> = ArrayLike<number>> {
  readonly white: number | Spectrum;
  readonly black: number | Spectrum;
}

/** How light goes through plastic. */
export interface LightPath {
  /** Part by which K and S count for less in a clear body, 0 up to but not 1. */
  readonly d: number;
  /** S X at which half of that is left, above 0. */
  readonly s0: number;
}

/** What is taken of plastic, backings and light, whatever the material: a plain value, which survives JSON. */
export interface OpticalModel {
  readonly backings: Backings<readonly number[]>;
  readonly path: LightPath;
  /** ml/g: S of a cup is multiplied by e^(−crowding · load), load in g of colouring material per ml. */
  readonly crowding: number;
}

/** Kubelka and Munk's formulas as they stand: for films, which are all cloudy, and wherever K and S are K′ and S′ already. */
export const NO_PATH: LightPath = { d: 0, s0: 1 };

/** What is taken where looks have taught nothing. */
export const USUAL_OPTICS: OpticalModel = {
  backings: { white: WHITE_BACKING, black: BLACK_BACKING },
  path: { d: CLEAR_SHORTENING, s0: HALF_CLOUDY },
  crowding: USUAL_CROWDING,
};

/**
 * K′/K in a bait, which is S′/S. Unchecked: for inner loops.
 *
 * With f the value, f′ its slope: ∂K′ᵢ/∂Kᵢ = ∂S′ᵢ/∂Sᵢ − Sᵢ f′ Xᵢ = f, and ∂K′ᵢ/∂Sⱼ = Kᵢ f′ Xⱼ, for every layer j of the bait.
 * Units: scattered is Σ S X over its layers, >= 0. Returns 1 − d to 1.
 *
 * @example pathFactor({ d: 0.4, s0: 0.5 }, 0.5) // 0.8
 */
export function pathFactor({ d, s0 }: LightPath, scattered: number): number {
  return 1 - d / (1 + scattered / s0);
}

/** The slope of `pathFactor` with Σ S X. Unchecked: for inner loops. */
export function pathFactorSlope({ d, s0 }: LightPath, scattered: number): number {
  const cloudy = 1 + scattered / s0;
  return d / (s0 * cloudy * cloudy);
}

/**
 * Σ S X of a bait of which Σ S′ X is so much: the larger root of x²/s0 + (1 − d − m/s0) x − m = 0. Unchecked.
 *
 * @example scatteredBefore({ d: 0.4, s0: 0.5 }, 0.4) // 0.5
 */
export function scatteredBefore({ d, s0 }: LightPath, met: number): number {
  const half = ((1 - d) * s0 - met) / 2;
  const root = Math.sqrt(half * half + met * s0);
  // Of two forms the one in which nothing cancels.
  return half > 0 ? (met * s0) / (half + root) : root - half;
}

/** g of colouring material per ml beyond which there is no more crowding: more than there is plastic. Convention of this book. */
const FULLY_CROWDED = 1;

/** The load that crowds, g/ml: that of the cup, as far as it is one that can be. */
export function crowdingLoad(load: number): number {
  return Math.min(FULLY_CROWDED, load);
}

/**
 * What S of a cup is multiplied by; its slope with load is −crowding times as much, with the crowding −`crowdingLoad` times.
 *
 * Units: crowding in ml/g, load in g of colouring material (flake is none) per ml.
 *
 * @example crowdingFactor({ crowding: 0 }, 0.1) // 1
 */
export function crowdingFactor({ crowding }: Pick<OpticalModel, 'crowding'>, load: number): number {
  return Math.exp(-crowding * crowdingLoad(load));
}
