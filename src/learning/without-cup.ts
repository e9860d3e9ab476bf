/**
 * What would be believed if a cup had never been looked at: the fit of all other looks, linear about the theta of all.
 *
 * With J, C and r the slopes, covariance and residuals of the cup's looks, D = C − J H⁻¹ Jᵀ:
 *
 *     theta becomes theta − H⁻¹ Jᵀ D⁻¹ r,   H⁻¹ becomes H⁻¹ + H⁻¹ Jᵀ D⁻¹ J H⁻¹
 *
 * (the matrix inversion lemma; both are exact where the model is linear and other cups have nothing in common with it).
 *
 * @packageDocumentation
 */
import type { BeliefParts } from './belief-parts.ts';
import { factorizeDense, solveDense } from './dense-cholesky.ts';
import { type LinearLook, VIEW_AXES } from './linear-views.ts';
import { once } from './once.ts';
import { type SeenSide, seenCovariance, seenSides } from './seen-sides.ts';
import type { ThetaDoubt } from './sensitivity.ts';
import type { SharedVariance } from './shared-memo.ts';
import { shelfState } from './shelf-state.ts';

/** The parts without a cup's looks. A cup without looks leaves them as they are. */
export function withoutCup(parts: BeliefParts, cup: string, shared: SharedVariance): BeliefParts {
  const left = parts.looks.filter(({ errors }) => errors.cup !== cup);
  if (left.length === parts.looks.length) return parts;
  const doubt = parts.doubt();
  const gone = new Gone(
    parts.looks.filter(({ errors }) => errors.cup === cup),
    doubt,
    shared,
  );
  const step = gone.step();
  const theta = Float64Array.from(parts.state.theta, (value, i) => value - step[i]!);
  return {
    state: shelfState(parts.state.unknowns, theta),
    looker: parts.looker,
    looks: left.map((look) => ({ ...look, residual: residualAfter(look, step) })),
    doubt: once(() => gone.doubt()),
    labels: parts.labels,
  };
}

/** What a look is off by when theta has gone back by a step. */
function residualAfter({ residual, slopes, columns }: LinearLook, step: Float64Array): Float64Array {
  const count = columns.length;
  return residual.map((value, row) => {
    let sum = value;
    for (let c = 0; c < count; c++) sum += slopes[row * count + c]! * step[columns[c]!]!;
    return sum;
  });
}

/** Looks that are taken away. */
class Gone {
  private readonly looks: readonly LinearLook[];
  private readonly before: ThetaDoubt;
  private readonly sides: readonly SeenSide[];
  private readonly rows: number;
  /** H⁻¹ Jᵀ, a row of as many numbers as unknowns for each axis of each view. */
  private readonly spread: Float64Array;
  /** Cholesky's factor of D. */
  private readonly factor: Float64Array;

  constructor(looks: readonly LinearLook[], doubt: ThetaDoubt, shared: SharedVariance) {
    this.looks = looks;
    this.before = doubt;
    this.sides = seenSides(looks);
    this.rows = this.sides.length * VIEW_AXES;
    this.spread = this.spreadOf();
    this.factor = this.leftOpen(shared);
    factorizeDense(this.factor, this.rows);
  }

  /** H⁻¹ Jᵀ D⁻¹ r. */
  step(): Float64Array {
    const r = Float64Array.from({ length: this.rows }, (_, row) => this.lookOf(row).residual[this.axisOf(row)]!);
    solveDense(this.factor, this.rows, r);
    const { count } = this.before;
    const step = new Float64Array(count);
    for (let row = 0; row < this.rows; row++)
      for (let i = 0; i < count; i++) step[i]! += this.spread[row * count + i]! * r[row]!;
    return step;
  }

  doubt(): ThetaDoubt {
    const { count } = this.before;
    const inverse = this.before.inverse.slice();
    const solved = new Float64Array(this.rows);
    for (let i = 0; i < count; i++) {
      for (let row = 0; row < this.rows; row++) solved[row] = this.spread[row * count + i]!;
      solveDense(this.factor, this.rows, solved);
      for (let row = 0; row < this.rows; row++) {
        const times = solved[row]!;
        if (times === 0) continue;
        for (let j = 0; j < count; j++) inverse[i * count + j]! += times * this.spread[row * count + j]!;
      }
    }
    return { inverse, count };
  }

  private lookOf(row: number): LinearLook {
    return this.looks[this.sides[Math.floor(row / VIEW_AXES)]!.look]!;
  }

  /** Of the six axes of its look. */
  private axisOf(row: number): number {
    return this.sides[Math.floor(row / VIEW_AXES)]!.side * VIEW_AXES + (row % VIEW_AXES);
  }

  private spreadOf(): Float64Array {
    const { inverse, count } = this.before;
    const spread = new Float64Array(this.rows * count);
    for (let row = 0; row < this.rows; row++) {
      const { columns, slopes } = this.lookOf(row);
      const from = this.axisOf(row) * columns.length;
      for (const [c, column] of columns.entries()) {
        const slope = slopes[from + c]!;
        for (let i = 0; i < count; i++) spread[row * count + i]! += slope * inverse[column * count + i]!;
      }
    }
    return spread;
  }

  /** D. */
  private leftOpen(shared: SharedVariance): Float64Array {
    const { count } = this.before;
    const n = this.sides.length;
    const C = seenCovariance(this.looks, this.sides, shared);
    const D = new Float64Array(this.rows * this.rows);
    for (let row = 0; row < this.rows; row++) {
      const { columns, slopes } = this.lookOf(row);
      const from = this.axisOf(row) * columns.length;
      for (let other = 0; other <= row; other++) {
        let sum =
          row % VIEW_AXES === other % VIEW_AXES
            ? C[Math.floor(row / VIEW_AXES) * n + Math.floor(other / VIEW_AXES)]!
            : 0;
        for (const [c, column] of columns.entries()) sum -= slopes[from + c]! * this.spread[other * count + column]!;
        D[row * this.rows + other] = sum;
      }
    }
    return D;
  }
}
