import { medianOf } from '../median.ts';

/** From so many deviations on what is off counts less: 95 % as good as least squares where nothing is off (P. J. Huber, Robust Statistics, 1981). */
const TURN = 1.345;

/** Of a normal distribution the median of what is off is so many deviations. */
const MEDIAN_DEVIATION = 0.6745;

/**
 * Huber's weights: 1 for what is off by little, falling as 1 / |residual| beyond 1.345 deviations, which are estimated from the median.
 *
 * @param least what is off by less than so much is never too much
 */
export function huberWeights(residuals: readonly number[], least: number): readonly number[] {
  const sizes = residuals.map(Math.abs);
  const bound = TURN * Math.max(least, medianOf(sizes) / MEDIAN_DEVIATION);
  return sizes.map((size) => (size <= bound ? 1 : bound / size));
}
