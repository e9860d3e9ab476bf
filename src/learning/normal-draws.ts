/**
 * Draws from the normal distribution in six dimensions that are the same every time, and lie more evenly than chance would have them.
 *
 * A colour over white and over black has six axes. The points of Weyl's sequence, whose steps are roots of primes (R. D. Richtmyer 1951,
 * citation from memory), go through the normal quantile; the first axis is cut into equal parts. What is then left of a mean and of
 * correlations is taken out, so that what is linear in a draw has its mean and its deviation exactly.
 *
 * @packageDocumentation
 */
import { normalQuantile } from './normal-quantile.ts';
import { semidefiniteFactor } from './semidefinite-factor.ts';

/** Axes of a draw. */
export const DRAW_AXES = 6;

/**
 * How many there are: a convention of this book. On problems of one to six axes an expected difference is right to about 1 %, a bound of nine
 * in ten, which stands on the ten that are farthest, to 3 %, a probability to 0.02 (root mean squares).
 */
export const DRAW_COUNT = 96;

const STEPS = [2, 3, 5, 7, 11].map(Math.sqrt);

/** Points of the sequence that are passed over. Of the first three thousand starts one of those that give lengths along one, two and three axes best. */
const START = 518;

/** Draw after draw, `DRAW_AXES` numbers each: their mean is 0 and their covariance is the unit. */
export const NORMAL_DRAWS: Float64Array = evened(weylNormals());

function weylNormals(): Float64Array {
  return Float64Array.from({ length: DRAW_COUNT * DRAW_AXES }, (_, place) => {
    const draw = Math.floor(place / DRAW_AXES);
    const axis = place % DRAW_AXES;
    const at = axis === 0 ? (draw + 0.5) / DRAW_COUNT : (0.5 + (START + draw + 1) * STEPS[axis - 1]!) % 1;
    return normalQuantile(at);
  });
}

/** The draws without their mean, and with L⁻¹ applied, where L Lᵀ is their covariance. */
function evened(draws: Float64Array): Float64Array {
  const n = DRAW_AXES;
  const mean = new Float64Array(n);
  const covariance = new Float64Array(n * n);
  for (let place = 0; place < draws.length; place++) mean[place % n]! += draws[place]! / DRAW_COUNT;
  for (let place = 0; place < draws.length; place++) draws[place]! -= mean[place % n]!;
  for (let from = 0; from < draws.length; from += n) {
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) covariance[i * n + j]! += (draws[from + i]! * draws[from + j]!) / DRAW_COUNT;
  }
  const L = semidefiniteFactor(covariance, n);
  for (let from = 0; from < draws.length; from += n) {
    for (let i = 0; i < n; i++) {
      let sum = draws[from + i]!;
      for (let k = 0; k < i; k++) sum -= L[i * n + k]! * draws[from + k]!;
      draws[from + i] = sum / L[i * n + i]!;
    }
  }
  return draws;
}
