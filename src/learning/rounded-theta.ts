/** Part of a standard deviation that theta is rounded to: no colour moves by more than a hundredth of what can be seen. */
const STEP = 1e-4;

/** Theta as it is kept. */
export function roundedTheta(theta: Float64Array): Float64Array {
  // + 0 makes of −0 what JSON makes of it.
  return theta.map((value) => Number((Math.round(value / STEP) * STEP).toFixed(4)) + 0);
}
