/**
 * How a part of what was seen agrees with all the rest: each left out by itself, without fitting anew.
 *
 * With C the covariance of a block's views, r their residuals at the fit, J their slopes and Σ the covariance of theta, the inverse of
 * what views and theta together leave is Q = C⁻¹ − C⁻¹ J Σ Jᵀ C⁻¹. For any part G of the views, P = (Q_GG)⁻¹ is how far the rest can say
 * what will be seen there, and P (C⁻¹ r)_G by how much it was otherwise: exactly what a fit without G would give, were colours straight lines
 * in theta. Of a block that the fit knew nothing of, Q is (C + J Σ Jᵀ)⁻¹ instead, and what pulls is Q r.
 *
 * @packageDocumentation
 */
import { chiSquareAbove } from './chi-square.ts';
import type { CurvedBlock } from './curved-block.ts';
import { factorizeSturdy, solveLowerDense } from './dense-cholesky.ts';
import { inverseDense } from './dense-inverse.ts';
import { saidByTheta } from './said-by-theta.ts';
import type { SeenBlock } from './shelf-problem.ts';
import type { ShelfState } from './shelf-state.ts';

const AXES = 3;

// What nothing else tells of is met exactly, and nothing would be left of it: rounding then makes of nought what it likes.
const LEAST_LEFT = 1e-9;

/** How unlike the rest something is. */
export interface Misfit {
  /** Square of what it is off by, in its deviations. */
  readonly chi2: number;
  /** Numbers that were compared. */
  readonly dof: number;
  /** How likely anything that is right is off by as much. */
  readonly p: number;
}

/** A block of which parts can be left out. */
export class LeavingOut {
  private readonly Q: Float64Array;
  /** C⁻¹ r. */
  private readonly pull: Float64Array;
  private readonly rows: number;
  private readonly block: SeenBlock;
  private readonly variances: Float64Array;

  /**
   * @param curved the block with all weights
   * @param state at the fit
   * @param covariance of theta, n × n
   * @param fitted whether the block was among what theta was fitted to
   */
  constructor(curved: CurvedBlock, state: ShelfState, covariance: Float64Array, fitted = true) {
    const { block, factor } = curved;
    const { residuals, slopes } = curved.whitened(state);
    this.block = block;
    this.rows = residuals.length;
    this.variances = block.covariance();
    const views = block.views.length;
    const inverse = inverseLower(factor, views);
    const said = saidByTheta(block, { residuals, slopes }, covariance, state.theta.length);
    const left = fitted ? leftOfOne(said, this.rows) : inverseOfOneAnd(said, this.rows);
    const pull = fitted ? residuals : product(left, residuals);
    this.pull = spread(inverse, pull, views);
    // From whitened rows to those of the views, on both sides.
    const half = spreadColumns(inverse, left, this.rows, views);
    this.Q = spreadColumns(inverse, transposed(half, this.rows), this.rows, views);
  }

  /**
   * How the looks of some items agree with the rest.
   *
   * @param weights of all items of the block, as they were in the covariance
   * @param without the same with what is to be taken back of the tested ones
   */
  misfit(items: readonly number[], weights: ArrayLike<number>, without: ArrayLike<number>): Misfit {
    const views = this.block.views.flatMap(({ look }, view) => (items.includes(look) ? view : []));
    const rows = views.flatMap((view) => [0, 1, 2].map((axis) => AXES * view + axis));
    const dof = rows.length;
    const part = new Float64Array(dof * dof);
    for (let i = 0; i < dof; i++)
      for (let j = 0; j < dof; j++) part[i * dof + j] = this.Q[rows[i]! * this.rows + rows[j]!]!;
    // Where rounding has eaten what is left, nothing else tells of it, and nothing can be told against it.
    for (let i = 0; i < dof; i++) if (!(part[i * dof + i]! > 0)) return { chi2: 0, dof, p: 1 };
    factorizeSturdy(part, dof);
    const P = inverseDense(part, dof);
    const off = new Float64Array(dof);
    for (let i = 0; i < dof; i++) for (let j = 0; j < dof; j++) off[i]! += P[i * dof + j]! * this.pull[rows[j]!]!;
    const before = Float64Array.from({ length: dof }, (_, i) => P[i * dof + i]!);
    this.takeBack(P, views, weights, without);
    for (let i = 0; i < dof; i++) P[i * dof + i] = Math.max(P[i * dof + i]!, LEAST_LEFT * before[i]!);
    factorizeSturdy(P, dof);
    solveLowerDense(P, dof, off);
    let chi2 = 0;
    for (const each of off) chi2 += each * each;
    return { chi2, dof, p: chiSquareAbove(chi2, dof) };
  }

  /** Takes from the covariance of what is off what the weight of the tested group itself has put on it. */
  private takeBack(
    P: Float64Array,
    views: readonly number[],
    weights: ArrayLike<number>,
    without: ArrayLike<number>,
  ): void {
    const all = this.block.views;
    const dof = AXES * views.length;
    for (const [i, one] of views.entries()) {
      const { look } = all[one]!;
      const added = 1 / weights[look]! - 1 / without[look]!;
      for (const [j, other] of views.entries()) {
        if (all[other]!.look !== look) continue;
        const variance = added * this.variances[one * all.length + other]!;
        for (let axis = 0; axis < AXES; axis++) P[(AXES * i + axis) * dof + AXES * j + axis]! -= variance;
      }
    }
  }
}

/** 1 − A. */
function leftOfOne(A: Float64Array, n: number): Float64Array {
  return A.map((value, i) => (i % (n + 1) === 0 ? Math.max(LEAST_LEFT, 1 - value) : -value));
}

/** (1 + A)⁻¹. */
function inverseOfOneAnd(A: Float64Array, n: number): Float64Array {
  const sum = A.map((value, i) => (i % (n + 1) === 0 ? 1 : 0) + value);
  factorizeSturdy(sum, n);
  return inverseDense(sum, n);
}

function product(A: Float64Array, x: Float64Array): Float64Array {
  const n = x.length;
  return x.map((_, i) => {
    let sum = 0;
    for (let j = 0; j < n; j++) sum += A[i * n + j]! * x[j]!;
    return sum;
  });
}

/** The inverse of a lower triangle. */
function inverseLower(L: Float64Array, n: number): Float64Array {
  const inverse = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    const column = new Float64Array(n);
    column[j] = 1;
    solveLowerDense(L, n, column);
    for (let i = j; i < n; i++) inverse[i * n + j] = column[i]!;
  }
  return inverse;
}

/** L⁻ᵀ of each axis times a vector of rows. */
function spread(inverse: Float64Array, vector: Float64Array, views: number): Float64Array {
  const result = new Float64Array(vector.length);
  for (let i = 0; i < views; i++)
    for (let j = i; j < views; j++)
      for (let axis = 0; axis < AXES; axis++)
        result[AXES * i + axis]! += inverse[j * views + i]! * vector[AXES * j + axis]!;
  return result;
}

/** The same of each column of a matrix. */
function spreadColumns(inverse: Float64Array, matrix: Float64Array, rows: number, views: number): Float64Array {
  const result = new Float64Array(rows * rows);
  for (let i = 0; i < views; i++)
    for (let j = i; j < views; j++) {
      const times = inverse[j * views + i]!;
      if (times === 0) continue;
      for (let axis = 0; axis < AXES; axis++) {
        const to = (AXES * i + axis) * rows;
        const from = (AXES * j + axis) * rows;
        for (let column = 0; column < rows; column++) result[to + column]! += times * matrix[from + column]!;
      }
    }
  return result;
}

function transposed(matrix: Float64Array, n: number): Float64Array {
  const result = new Float64Array(n * n);
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) result[j * n + i] = matrix[i * n + j]!;
  return result;
}
