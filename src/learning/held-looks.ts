import { type BlockResiduals, blockResiduals } from './block-residuals.ts';
import type { CompositionLooker } from './composition-views.ts';
import { factorizeDense, solveLowerDense } from './dense-cholesky.ts';
import { saidByTheta } from './said-by-theta.ts';
import type { ThetaDoubt } from './sensitivity.ts';
import type { CupBlock } from './shelf-problem.ts';
import type { ShelfState } from './shelf-state.ts';

const AXES = 3;

/** What all other cups and the labels say, so that the looks of one can be held against it. */
export interface HeldAgainst {
  readonly state: ShelfState;
  readonly looker: CompositionLooker;
  readonly doubt: ThetaDoubt;
}

/** The looks at one cup as they are logged, or as they may have been, held against all that is known without them. */
export class HeldLooks {
  readonly block: CupBlock;
  /** Seen less what is believed, view by view, three axes each, ΔE00. */
  readonly residuals: Float64Array;
  /** What that may be by all that is unknown, rows × rows, the lower triangle. */
  private readonly covariance: Float64Array;

  constructor(block: CupBlock, { state, looker, doubt }: HeldAgainst) {
    const found = blockResiduals(block, looker, state);
    this.block = block;
    this.residuals = found.residuals;
    this.covariance = covarianceOf(block, found, doubt);
  }

  /**
   * ln of the Gaussian density of what was seen.
   *
   * @param added a variance, ΔE00², that two looks (places in the block) have in common along each axis besides
   */
  logDensity(added?: (one: number, other: number) => number): number {
    const n = this.residuals.length;
    const L = added ? this.withMore(added) : this.covariance.slice();
    factorizeDense(L, n);
    const z = this.residuals.slice();
    solveLowerDense(L, n, z);
    let sum = -(n / 2) * Math.log(2 * Math.PI);
    for (let i = 0; i < n; i++) sum -= (z[i]! * z[i]!) / 2 + Math.log(L[i * n + i]!);
    return sum;
  }

  private withMore(added: (one: number, other: number) => number): Float64Array {
    const C = this.covariance.slice();
    const n = this.residuals.length;
    const { views } = this.block;
    for (const [i, one] of views.entries())
      for (const [j, other] of views.slice(0, i + 1).entries()) {
        if (one.over !== other.over) continue;
        const more = added(one.look, other.look);
        for (let axis = 0; axis < AXES; axis++) C[(AXES * i + axis) * n + AXES * j + axis]! += more;
      }
    return C;
  }
}

/** What the looks have in common, and what the doubt of theta makes of them: C + J Σ Jᵀ. */
function covarianceOf(block: CupBlock, residuals: BlockResiduals, { inverse, count }: ThetaDoubt): Float64Array {
  const { length: views } = block.views;
  const rows = AXES * views;
  const shared = block.covariance();
  const covariance = saidByTheta(block, residuals, inverse, count);
  for (let one = 0; one < views; one++)
    for (let other = 0; other <= one; other++)
      for (let axis = 0; axis < AXES; axis++)
        covariance[(AXES * one + axis) * rows + AXES * other + axis]! += shared[one * views + other]!;
  return covariance;
}
