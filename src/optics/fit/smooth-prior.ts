/**
 * What is believed about ln K or ln S of a material before it was measured: a smooth curve over wavelength at about a
 * known height.
 *
 * A Gaussian whose precision (inverse covariance) is a sum of three: curvature, slope, and height of the curve. It has only
 * two diagonals beside the main one, so that its Cholesky factor costs next to nothing.
 *
 * Source of the idea: smoothing by penalized differences, E. T. Whittaker, Proc. Edinburgh Math. Soc. 41:63 (1922).
 */

/** How far ln K or ln S may go from a smooth curve, as standard deviations. Infinity: no belief. */
export interface Smoothness {
  /** Of the second difference over 10 nm. */
  readonly curvature: number;
  /** Of the first difference over 10 nm. */
  readonly slope: number;
  /** Centre and spread of the curve's mean square height. */
  readonly centre: number;
  readonly spread: number;
}

/** The prior of one curve; see the top of the file. */
export interface SmoothPrior {
  readonly centre: number;
  /** Diagonals of the precision: main, first and second beside it. */
  readonly precision: readonly [Float64Array, Float64Array, Float64Array];
  /** The same of its lower Cholesky factor. */
  readonly factor: readonly [Float64Array, Float64Array, Float64Array];
}

/**
 * Makes the prior for a grid.
 *
 * Units: step in nm. Differences of a smooth curve shrink with the step; the precisions are scaled so that a finer grid
 * believes the same of the curve.
 */
export function smoothPrior(bands: number, step: number, smoothness: Smoothness): SmoothPrior {
  const main = new Float64Array(bands).fill(1 / (bands * smoothness.spread ** 2));
  const first = new Float64Array(bands);
  const second = new Float64Array(bands);
  const slope = 10 / step / smoothness.slope ** 2;
  for (let i = 0; i + 1 < bands; i++) {
    main[i]! += slope;
    main[i + 1]! += slope;
    first[i + 1]! -= slope;
  }
  const curvature = (10 / step) ** 3 / smoothness.curvature ** 2;
  for (let i = 0; i + 2 < bands; i++) {
    main[i]! += curvature;
    main[i + 1]! += 4 * curvature;
    main[i + 2]! += curvature;
    first[i + 1]! -= 2 * curvature;
    first[i + 2]! -= 2 * curvature;
    second[i + 2]! += curvature;
  }
  return { centre: smoothness.centre, precision: [main, first, second], factor: bandedCholesky(main, first, second) };
}

/**
 * The curve that independent standard normal numbers stand for: centre + L⁻ᵀ z.
 *
 * Shape: reads `z` and writes `out` from `offset` on, one number a band.
 */
export function curveFromStandard(prior: SmoothPrior, z: Float64Array, out: Float64Array, offset: number): void {
  const [main, first, second] = prior.factor;
  const bands = main.length;
  for (let i = bands - 1; i >= 0; i--) {
    let value = z[offset + i]!;
    if (i + 1 < bands) value -= first[i + 1]! * out[offset + i + 1]!;
    if (i + 2 < bands) value -= second[i + 2]! * out[offset + i + 2]!;
    out[offset + i] = value / main[i]!;
  }
  for (let i = 0; i < bands; i++) out[offset + i]! += prior.centre;
}

/** A gradient by the curve turned, in place, into one by the standard numbers: L⁻¹ g. */
export function gradientToStandard(prior: SmoothPrior, gradient: Float64Array, offset: number): void {
  const [main, first, second] = prior.factor;
  for (let i = 0; i < main.length; i++) {
    let value = gradient[offset + i]!;
    if (i > 0) value -= first[i]! * gradient[offset + i - 1]!;
    if (i > 1) value -= second[i]! * gradient[offset + i - 2]!;
    gradient[offset + i] = value / main[i]!;
  }
}

/** The standard numbers of a curve: Lᵀ (curve − centre), the inverse of `curveFromStandard`. */
export function standardFromCurve(prior: SmoothPrior, curve: Float64Array, out: Float64Array, offset: number): void {
  const [main, first, second] = prior.factor;
  const bands = main.length;
  const above = (i: number): number => curve[offset + i]! - prior.centre;
  for (let i = 0; i < bands; i++) {
    let value = main[i]! * above(i);
    if (i + 1 < bands) value += first[i + 1]! * above(i + 1);
    if (i + 2 < bands) value += second[i + 2]! * above(i + 2);
    out[offset + i] = value;
  }
}

function bandedCholesky(main: Float64Array, first: Float64Array, second: Float64Array): SmoothPrior['factor'] {
  const bands = main.length;
  const d = new Float64Array(bands);
  const one = new Float64Array(bands);
  const two = new Float64Array(bands);
  for (let i = 0; i < bands; i++) {
    if (i > 1) two[i] = second[i]! / d[i - 2]!;
    if (i > 0) one[i] = (first[i]! - two[i]! * (i > 1 ? one[i - 1]! : 0)) / d[i - 1]!;
    d[i] = Math.sqrt(main[i]! - one[i]! ** 2 - two[i]! ** 2);
  }
  return [d, one, two];
}
