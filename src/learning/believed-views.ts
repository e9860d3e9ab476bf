import type { TwoViews } from '../optics/cup-body.ts';

/** A colour as it is believed to be: normally distributed about a mean. */
export interface BelievedViews extends TwoViews {
  /**
   * 6 × 6, row by row: the three axes over white, then those over black, each view in the local ΔE00 metric of its mean (`localMetric`).
   */
  readonly covariance: Float64Array;
  /** How many looks bear on it. */
  readonly looks: number;
}
