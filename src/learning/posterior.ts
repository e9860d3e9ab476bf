/**
 * What is believed of all unknowns together once a shelf is learned: normal about theta.
 *
 * @packageDocumentation
 */
import { type BlockResiduals, blockResiduals } from './block-residuals.ts';
import { CompositionLooker } from './composition-views.ts';
import { factorizeSturdy } from './dense-cholesky.ts';
import { inverseDense } from './dense-inverse.ts';
import type { LearnedShelf } from './learned-shelf.ts';
import { withModelMetrics } from './model-metrics.ts';
import { type FitWeights, ShelfEquations } from './normal-equations.ts';
import { type CupBlock, type ShelfProblem, shelfProblem } from './shelf-problem.ts';
import { type ShelfState, shelfState } from './shelf-state.ts';

/** See the top of the file. */
export class Posterior {
  readonly problem: ShelfProblem;
  readonly state: ShelfState;
  readonly looker: CompositionLooker;
  /** How far each look and label is believed, by its place. */
  readonly weights: FitWeights;
  /** Cholesky's factor of the inverse covariance of theta, n × n row by row, the lower triangle. */
  readonly factor: Float64Array;
  private inverse: Float64Array | undefined;

  constructor(shelf: LearnedShelf) {
    const theta = Float64Array.from(shelf.theta);
    this.problem = withModelMetrics(shelfProblem(shelf.data), theta);
    this.state = shelfState(this.problem.unknowns, theta);
    this.looker = new CompositionLooker(this.problem.unknowns);
    this.weights = {
      looks: shelf.weights.looks,
      labels: this.problem.labels.map(({ material, index }) => shelf.weights.labels[material]?.[index] ?? 1),
    };
    this.factor = new ShelfEquations(this.problem, this.weights).at(theta, true).curvature!;
    factorizeSturdy(this.factor, theta.length);
  }

  /** Covariance of theta, n × n. Made when it is first asked for. */
  get covariance(): Float64Array {
    this.inverse ??= inverseDense(this.factor, this.state.theta.length);
    return this.inverse;
  }

  /** Cholesky's factor of the inverse covariance that theta has by labels alone, at the same theta. Made anew each time. */
  factorOfLabels(): Float64Array {
    const theta = this.state.theta;
    const factor = new ShelfEquations({ ...this.problem, cups: [] }, this.weights).at(Float64Array.from(theta), true)
      .curvature!;
    factorizeSturdy(factor, theta.length);
    return factor;
  }

  /** What the looks of a cup are off by at theta, in the metric of the colours that it gives them, and how that goes with theta: whatever they are weighted. */
  residuals(cup: CupBlock): BlockResiduals {
    return blockResiduals(cup, this.problem.looker, this.state);
  }
}
