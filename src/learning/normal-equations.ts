/**
 * Half of what theta costs (its own square and those of all residuals), its gradient, and its curvature as Gauss and Newton take it.
 *
 * @packageDocumentation
 */
import { type BlockResiduals, blockResiduals } from './block-residuals.ts';
import type { SeenBlock, ShelfProblem } from './shelf-problem.ts';
import { shelfState } from './shelf-state.ts';
import { blockFactor, whiten } from './whitened-block.ts';

/** How far each look and label is believed: 1 as noted. Unset: all of them. */
export interface FitWeights {
  /** In the order of the sorted looks. */
  readonly looks: ArrayLike<number>;
  /** In the order of `ShelfProblem.labels`. */
  readonly labels: ArrayLike<number>;
}

/** See the top of the file. */
export interface NormalEquations {
  readonly cost: number;
  readonly gradient: Float64Array;
  /** n × n, row by row: the lower triangle. Where it was asked for. */
  readonly curvature?: Float64Array;
}

/** What is seen of many looks as if their colours were straight lines in theta, from a place where they were found. */
export interface StraightLooks {
  readonly theta: Float64Array;
  /** Of their half squares, without theta's own; the curvature's lower triangle. */
  readonly gradient: Float64Array;
  readonly curvature: Float64Array;
}

/** What the fit asks again and again, with the weights as they are. */
export class ShelfEquations {
  readonly problem: ShelfProblem;
  private readonly blocks: readonly { readonly block: SeenBlock; readonly factor: Float64Array }[];
  private readonly straight: StraightLooks | undefined;

  /** @param straight looks besides those of the problem */
  constructor(problem: ShelfProblem, weights?: FitWeights, straight?: StraightLooks) {
    this.straight = straight;
    this.problem = problem;
    this.blocks = [
      ...problem.cups.map((block) => ({
        block,
        factor: blockFactor(block, weights && block.places.map((place) => weights.looks[place]!)),
      })),
      ...problem.labels.map((block, i) => ({ block, factor: blockFactor(block, weights && [weights.labels[i]!]) })),
    ];
  }

  /** At a theta. */
  at(theta: Float64Array, withCurvature: boolean): NormalEquations {
    const n = theta.length;
    const state = shelfState(this.problem.unknowns, theta);
    const gradient = theta.slice();
    const curvature = withCurvature ? new Float64Array(n * n) : undefined;
    let cost = 0;
    for (let i = 0; i < n; i++) {
      cost += theta[i]! * theta[i]!;
      if (curvature) curvature[i * n + i] = 1;
    }
    for (const { block, factor } of this.blocks) {
      const found = blockResiduals(block, this.problem.looker, state);
      whiten(found, factor);
      for (const residual of found.residuals) cost += residual * residual;
      addGradient(block, found, gradient);
      if (curvature) addCurvature(block, found, curvature, n);
    }
    cost /= 2;
    if (this.straight) cost += addStraight(this.straight, theta, gradient, curvature);
    return { cost, gradient, ...(curvature ? { curvature } : {}) };
  }

  /** The looks of the problem (without its labels' share, if it has none) as straight lines from a theta on. */
  straightFrom(theta: Float64Array): StraightLooks {
    const n = theta.length;
    const { gradient, curvature } = this.at(theta, true);
    for (let i = 0; i < n; i++) {
      gradient[i]! -= theta[i]!;
      curvature![i * n + i]! -= 1;
    }
    return { theta: theta.slice(), gradient, curvature: curvature! };
  }
}

/** Adds the gradient and curvature of straight looks, and returns what they cost more than where they were found. */
function addStraight(
  straight: StraightLooks,
  theta: Float64Array,
  gradient: Float64Array,
  curvature?: Float64Array,
): number {
  const n = theta.length;
  const moved = theta.map((value, i) => value - straight.theta[i]!);
  const change = straight.gradient.slice();
  let cost = 0;
  for (let i = 0; i < n; i++) {
    const row = i * n;
    for (let j = 0; j < i; j++) {
      const curve = straight.curvature[row + j]!;
      change[i]! += curve * moved[j]!;
      change[j]! += curve * moved[i]!;
    }
    change[i]! += straight.curvature[row + i]! * moved[i]!;
  }
  for (let i = 0; i < n; i++) {
    cost += (moved[i]! * (change[i]! + straight.gradient[i]!)) / 2;
    gradient[i]! += change[i]!;
  }
  if (curvature) for (let i = 0; i < n * n; i++) curvature[i]! += straight.curvature[i]!;
  return cost;
}

function addGradient({ columns }: SeenBlock, { residuals, slopes }: BlockResiduals, gradient: Float64Array): void {
  const count = columns.length;
  for (let row = 0; row < residuals.length; row++) {
    const residual = residuals[row]!;
    for (let i = 0; i < count; i++) gradient[columns[i]!]! -= slopes[row * count + i]! * residual;
  }
}

/** Adds JᵀJ of a block to the lower triangle. */
function addCurvature(
  { columns }: SeenBlock,
  { residuals, slopes }: BlockResiduals,
  curvature: Float64Array,
  n: number,
): void {
  const count = columns.length;
  const square = new Float64Array(count * count);
  for (let row = 0; row < residuals.length; row++) {
    const from = row * count;
    for (let i = 0; i < count; i++) {
      const slope = slopes[from + i]!;
      if (slope === 0) continue;
      const at = i * count;
      for (let j = 0; j <= i; j++) square[at + j]! += slope * slopes[from + j]!;
    }
  }
  for (let i = 0; i < count; i++) {
    const at = columns[i]! * n;
    for (let j = 0; j <= i; j++) curvature[at + columns[j]!]! += square[i * count + j]!;
  }
}
