/**
 * A shelf as some theta says it is: what mixing and looking need of it, and how that changes with theta.
 *
 * @packageDocumentation
 */
import { BAND_COUNT, WAVELENGTHS } from '../optics/spectrum.ts';
import { BLACK_BACKING, WHITE_BACKING } from '../tables/backings.ts';
import { CLEAR_SHORTENING, HALF_CLOUDY, USUAL_CROWDING } from '../tables/light-path.ts';
import { BOTTLE_SD, OPTICS_SD } from '../tables/material-priors.ts';
import type { MaterialUnknowns, ShelfUnknowns } from './shelf-unknowns.ts';

/** A material at some theta. */
export interface MaterialState {
  /** Of the product as its label says it: per mm, and per g/ml if it is no plastic. */
  readonly K: Float64Array;
  readonly S: Float64Array;
  /** How many times as strong the maker's own bottle is. */
  readonly strength: number;
}

/** A card: its reflectance, and its slopes with its unknowns, places in theta. */
export interface CardState {
  readonly reflectance: Float64Array;
  readonly slopes: readonly { readonly at: number; readonly slope: Float64Array }[];
}

/** A figure and its slope with its unknown. */
export interface FigureState {
  readonly value: number;
  readonly slope: number;
  readonly at: number;
}

/** See the top of the file. */
export interface ShelfState {
  readonly unknowns: ShelfUnknowns;
  readonly theta: ArrayLike<number>;
  /** In the order of `unknowns.materials`. */
  readonly materials: readonly MaterialState[];
  readonly white: CardState;
  readonly black: CardState;
  readonly crowding: FigureState;
  readonly d: FigureState;
  readonly s0: FigureState;
}

/**
 * The shelf at a theta.
 *
 * Throws: RangeError if there are not as many numbers as unknowns.
 */
export function shelfState(unknowns: ShelfUnknowns, theta: ArrayLike<number>): ShelfState {
  if (theta.length !== unknowns.count)
    throw new RangeError(`theta has ${theta.length} numbers; give ${unknowns.count}, one for each unknown`);
  const at = unknowns.common;
  const [white, yellowing, black, crowding, pathD, pathS0] = [0, 1, 2, 3, 4, 5].map((i) => theta[at + i]!);
  const d = logistic(logit(CLEAR_SHORTENING) + PATH_D_SD * pathD!);
  const s0 = HALF_CLOUDY * Math.exp(OPTICS_SD.pathS0 * pathS0!);
  return {
    unknowns,
    theta,
    materials: unknowns.materials.map((material) => materialState(material, theta)),
    white: whiteCard(white!, yellowing!, at),
    black: blackCard(black!, at + 2),
    crowding: { value: USUAL_CROWDING + OPTICS_SD.crowding * crowding!, slope: OPTICS_SD.crowding, at: at + 3 },
    d: { value: d, slope: PATH_D_SD * d * (1 - d), at: at + 4 },
    s0: { value: s0, slope: OPTICS_SD.pathS0 * s0, at: at + 5 },
  };
}

const logit = (share: number): number => Math.log(share / (1 - share));
const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

// Deviations of a logit that make those of the share, where the share is the usual one.
const PATH_D_SD = OPTICS_SD.pathD / (CLEAR_SHORTENING * (1 - CLEAR_SHORTENING));
const WHITE_SD = OPTICS_SD.white / (WHITE_BACKING * (1 - WHITE_BACKING));
const YELLOWING_SD = OPTICS_SD.whiteYellowing / (WHITE_BACKING * (1 - WHITE_BACKING));

/** How much of a card's yellowing there is in a band: all at 400 nm, 1/e of it 80 nm on. Convention of this book. */
const CARD_YELLOWS = Float64Array.from(WAVELENGTHS, (wavelength) => Math.min(1, Math.exp((400 - wavelength) / 80)));

function materialState(material: MaterialUnknowns, theta: ArrayLike<number>): MaterialState {
  const { at, kModes, sModes, bottle } = material;
  return {
    K: exponentials(material.lnK, kModes, theta, at),
    S: exponentials(material.lnS, sModes, theta, at + kModes.length),
    strength: bottle === undefined ? 1 : Math.exp(BOTTLE_SD * theta[bottle]!),
  };
}

function exponentials(
  ln: Float64Array,
  modes: readonly Float64Array[],
  theta: ArrayLike<number>,
  at: number,
): Float64Array {
  const sum = ln.slice();
  for (const [j, mode] of modes.entries()) {
    const times = theta[at + j]!;
    for (let band = 0; band < BAND_COUNT; band++) sum[band]! += times * mode[band]!;
  }
  for (let band = 0; band < BAND_COUNT; band++) sum[band] = Math.exp(sum[band]!);
  return sum;
}

function whiteCard(level: number, yellowing: number, at: number): CardState {
  const reflectance = new Float64Array(BAND_COUNT);
  const byLevel = new Float64Array(BAND_COUNT);
  const byYellowing = new Float64Array(BAND_COUNT);
  for (let band = 0; band < BAND_COUNT; band++) {
    const yellows = -YELLOWING_SD * CARD_YELLOWS[band]!;
    const R = logistic(logit(WHITE_BACKING) + WHITE_SD * level + yellows * yellowing);
    reflectance[band] = R;
    byLevel[band] = WHITE_SD * R * (1 - R);
    byYellowing[band] = yellows * R * (1 - R);
  }
  return {
    reflectance,
    slopes: [
      { at, slope: byLevel },
      { at: at + 1, slope: byYellowing },
    ],
  };
}

function blackCard(level: number, at: number): CardState {
  // Of a card that is as good as black the reflectance is its odds, and the odds of no card pass 1.
  const R = logistic(logit(BLACK_BACKING) + OPTICS_SD.black * level);
  const slope = new Float64Array(BAND_COUNT).fill(OPTICS_SD.black * R * (1 - R));
  return { reflectance: new Float64Array(BAND_COUNT).fill(R), slopes: [{ at, slope }] };
}
