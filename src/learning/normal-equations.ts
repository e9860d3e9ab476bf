/**
 * Half of what theta costs (its own square and those of all residuals), its gradient, and its curvature as Gauss and Newton take it.
 *
 * @packageDocumentation
 */
import { costGradient } from './cost-gradient.ts';
import { type CurvedBlock, CurvedBlocks } from './curved-block.ts';
import type { ShelfProblem } from './shelf-problem.ts';
import { type ShelfState, shelfState } from './shelf-state.ts';

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
  private readonly blocks: readonly CurvedBlock[];
  private readonly straight: StraightLooks | undefined;

  /**
   * @param straight looks besides those of the problem
   * @param curved of this very problem
   */
  constructor(
    problem: ShelfProblem,
    weights?: FitWeights,
    straight?: StraightLooks,
    curved: CurvedBlocks = new CurvedBlocks(problem),
  ) {
    this.straight = straight;
    this.problem = problem;
    this.blocks = [
      ...problem.cups.map((block) =>
        curved.of(
          block,
          block.places.map((place) => weights?.looks[place] ?? 1),
        ),
      ),
      ...problem.labels.map((block, i) => curved.of(block, [weights?.labels[i] ?? 1])),
    ];
  }

  /** At a theta. */
  at(theta: Float64Array, withCurvature: boolean): NormalEquations {
    const n = theta.length;
    const state = shelfState(this.problem.unknowns, theta);
    const gradient = theta.slice();
    const curvature = withCurvature ? new Float64Array(n * n) : undefined;
    let cost = 0;
    for (const value of theta) cost += (value * value) / 2;
    cost += curvature
      ? this.addCurved(state, gradient, curvature)
      : costGradient(this.blocks, this.problem.backward, state, gradient);
    if (this.straight) cost += addStraight(this.straight, theta, gradient, curvature);
    return { cost, gradient, ...(curvature ? { curvature } : {}) };
  }

  private addCurved(state: ShelfState, gradient: Float64Array, curvature: Float64Array): number {
    const n = gradient.length;
    let cost = 0;
    for (let i = 0; i < n; i++) curvature[i * n + i]! += 1;
    for (const block of this.blocks) cost += block.add(state, gradient, curvature);
    return cost;
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
