import { BAND_COUNT } from '../optics/spectrum.ts';
import { BOTTLE_SD } from '../tables/material-priors.ts';
import { required } from '../values/required.ts';
import type { Posterior } from './posterior.ts';

/** A spectrum that is not known for certain: where it most likely is, and between what it is nine times in ten, band by band. */
export interface SpectrumBand {
  readonly middle: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
}

// Of a normal number nine in ten are no farther than this from the middle, in standard deviations.
const NINE_IN_TEN = 1.6449;

/**
 * What is believed of the absorption of a material in the maker’s own bottle, per mm and g/ml; of a plastic per mm.
 *
 * ln K is a sum of unknowns times curves, so that it is normal where they are: vᵀ Σ v is its variance, v being the curves in a band.
 * Throws: RangeError if the shelf does not have the material.
 */
export function absorptionBand({ state, covariance }: Posterior, id: string): SpectrumBand {
  const { unknowns, theta, materials } = state;
  const place = required(unknowns.placeOf, id);
  const { at, kModes, bottle } = unknowns.materials[place]!;
  const { K, strength } = materials[place]!;
  const columns = [...kModes.keys()].map((mode) => at + mode);
  if (bottle !== undefined) columns.push(bottle);
  const n = theta.length;
  const sd = Array.from({ length: BAND_COUNT }, (_, band) => {
    const v = columns.map((_column, i) => (i < kModes.length ? kModes[i]![band]! : BOTTLE_SD));
    let variance = 0;
    for (const [i, one] of columns.entries())
      for (const [j, other] of columns.entries()) variance += v[i]! * covariance[one * n + other]! * v[j]!;
    return Math.sqrt(variance);
  });
  const middle = Array.from(K, (value) => strength * value);
  return {
    middle,
    low: middle.map((value, band) => value * Math.exp(-NINE_IN_TEN * sd[band]!)),
    high: middle.map((value, band) => value * Math.exp(NINE_IN_TEN * sd[band]!)),
  };
}
