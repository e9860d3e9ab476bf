/**
 * What is believed of the parts of a film before it is seen: how much room a gram of each takes, and how much really went in.
 */
import type { FitOptions } from './fit-options.ts';

/** A Gaussian of ln factor. */
export interface FactorPrior {
  readonly centre: number;
  readonly spread: number;
}

/** Standard deviations of the parts of one film, in its order. */
export interface PartSpreads {
  /** Of ln factor of each part's material. */
  readonly factors: readonly number[];
  /** Of ln amount. */
  readonly weighing: readonly number[];
}

/**
 * What is believed of the factor of a material.
 *
 * A gram of a dense paint takes less room: ln factor is about −0.7 ln(density / 2.2 g/ml), within 0.2 (standard deviation). The
 * power is less than 1 since what counts is the room that the pigment takes to light, and the oil around it takes the rest. A
 * material that was only ever measured alone keeps all of that doubt, so it is never less than 0.2. Where no density is known, the centre is 0
 * (factor 1) and the spread twice that. Found by a study on the films that `FIT_DEFAULTS` name; usual is the geometric mean of
 * `PAINT_DENSITY`.
 */
export function factorPrior(material: string, options: FitOptions): FactorPrior {
  const { amounts, densities, byDensity, factorSpread } = options;
  if (amounts === 'concentrations') return { centre: 0, spread: 0 };
  const density = densities.get(material);
  if (density === undefined) return { centre: 0, spread: factorSpread };
  return { centre: -byDensity.power * Math.log(density / byDensity.usual), spread: byDensity.spread };
}

/**
 * Standard deviations of ln amount of the parts of a film: a tenth of a small part, and next to nothing of the part that makes up
 * nearly all of it, which is 0.1 × (1 − share). Common practice of weighing paint by the spatula, no source. Doses per volume of
 * plastic (`concentrations`) are taken as they are written.
 */
export function weighingSpreads(amounts: readonly number[], options: FitOptions): readonly number[] {
  if (options.amounts === 'concentrations') return amounts.map(() => 0);
  return amountShares(amounts, options).map((share) => options.weighing * (1 - share));
}

/** Amounts as shares of their sum; concentrations as they are. */
export function amountShares(amounts: readonly number[], options: FitOptions): readonly number[] {
  const whole = options.amounts === 'fractions' ? amounts.reduce((sum, amount) => sum + amount, 0) : 1;
  return amounts.map((amount) => amount / whole);
}
