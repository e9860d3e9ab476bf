/**
 * What is believed of compositions that were not seen, or seen with errors: the model at the most probable theta, and a share of what the
 * nearest looks are off by.
 *
 * This is universal kriging (G. Matheron 1969, citation from memory): a trend with unknown coefficients, here the model with theta, which
 * looks have already narrowed, and about it a Gaussian field over compositions. With C the covariance of the looks' errors, k theirs with
 * what is asked, W = kᵀ C⁻¹, r the looks' residuals, J their slopes and J* those of what is asked:
 *
 *     offset = W r,   covariance = K** − W k + (J* − W J) H⁻¹ (J* − W J)ᵀ.
 *
 * Axes of a view have no errors in common, so C is found once for all three.
 *
 * @packageDocumentation
 */
import { factorizeDense, solveDense } from './dense-cholesky.ts';
import { BOTH_AXES, type LinearLook, type Placed, type ThetaSlopes, VIEW_AXES } from './linear-views.ts';
import { type SeenSide, seenCovariance, seenSides } from './seen-sides.ts';
import { Sensitivity, type ThetaDoubt } from './sensitivity.ts';
import type { SharedVariance } from './shared-memo.ts';

/** Compositions predicted together from looks: six axes each, one composition after the other. */
export class JointKriging {
  /** To be added to what theta says, ΔE00 along each axis. */
  readonly offset: Float64Array;
  private readonly looks: readonly LinearLook[];
  private readonly asked: readonly Placed[];
  private readonly shared: SharedVariance;
  private readonly views: readonly SeenSide[];
  /** k and W: a row for each view that is asked about, a column for each that was seen. */
  private readonly towards: Float64Array;
  private readonly weights: Float64Array;

  constructor(looks: readonly LinearLook[], asked: readonly Placed[], shared: SharedVariance) {
    this.looks = looks;
    this.asked = asked;
    this.shared = shared;
    this.views = seenSides(looks);
    const n = this.views.length;
    const known = seenCovariance(looks, this.views, shared);
    factorizeDense(known, n);
    const sides = 2 * asked.length;
    this.towards = new Float64Array(sides * n);
    this.weights = new Float64Array(sides * n);
    this.offset = new Float64Array(sides * VIEW_AXES);
    for (let side = 0; side < sides; side++) {
      const row = this.towards.subarray(side * n, (side + 1) * n);
      for (let e = 0; e < n; e++) {
        const { look, side: from } = this.views[e]!;
        if (from === (side & 1)) row[e] = shared(looks[look]!, asked[side >> 1]!);
      }
      const weights = this.weights.subarray(side * n, (side + 1) * n);
      weights.set(row);
      solveDense(known, n, weights);
      for (let e = 0; e < n; e++) {
        const { look, side: from } = this.views[e]!;
        for (let axis = 0; axis < VIEW_AXES; axis++)
          this.offset[side * VIEW_AXES + axis]! += weights[e]! * looks[look]!.residual[from * VIEW_AXES + axis]!;
      }
    }
  }

  /**
   * Covariance of all axes, row by row.
   *
   * @param slopes of the compositions that were asked about, in their order
   */
  covariance(slopes: readonly ThetaSlopes[], doubt: ThetaDoubt): Float64Array {
    const n = this.views.length;
    const room = [...this.looks, ...slopes].reduce((sum, { columns }) => sum + columns.length, 0);
    const rows = slopes.length * BOTH_AXES;
    const left = new Sensitivity(rows, doubt.count, room);
    for (let side = 0; side < 2 * slopes.length; side++) {
      const row = side * VIEW_AXES;
      left.add(slopes[side >> 1]!, side & 1, 1, row);
      for (let e = 0; e < n; e++) {
        const weight = this.weights[side * n + e]!;
        const { look, side: from } = this.views[e]!;
        if (weight !== 0) left.add(this.looks[look]!, from, -weight, row);
      }
    }
    const covariance = left.covariance(doubt);
    this.addRest(covariance, rows);
    return covariance;
  }

  /** Adds what of the field the looks leave open, K** − W k, alike on each axis. */
  private addRest(covariance: Float64Array, rows: number): void {
    const n = this.views.length;
    const sides = 2 * this.asked.length;
    for (let one = 0; one < sides; one++) {
      for (let other = 0; other <= one; other++) {
        const sameView = (one & 1) === (other & 1);
        let rest = sameView ? this.shared(this.asked[one >> 1]!, this.asked[other >> 1]!) : 0;
        for (let e = 0; e < n; e++) rest -= this.weights[one * n + e]! * this.towards[other * n + e]!;
        if (one === other) rest = Math.max(0, rest);
        for (let axis = 0; axis < VIEW_AXES; axis++) {
          const [i, j] = [one * VIEW_AXES + axis, other * VIEW_AXES + axis];
          covariance[i * rows + j]! += rest;
          if (i !== j) covariance[j * rows + i]! += rest;
        }
      }
    }
  }
}
