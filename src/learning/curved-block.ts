/**
 * Blocks as they count in a fit: whitened, and what they add to its gradient and its curvature.
 *
 * @packageDocumentation
 */
import type { BlockResiduals } from './block-residuals.ts';
import { RememberedResiduals } from './remembered-residuals.ts';
import type { SeenBlock, ShelfProblem } from './shelf-problem.ts';
import type { ShelfState } from './shelf-state.ts';
import { blockFactor, whitenInto } from './whitened-block.ts';

const AXES = 3;

/** A block with its items believed so far. What was worked out at a theta is kept as long as that is the same array. */
export class CurvedBlock {
  readonly block: SeenBlock;
  readonly weights: readonly number[];
  /** Cholesky's factor of what its views have in common. */
  readonly factor: Float64Array;
  private readonly remembered: RememberedResiduals;
  private theta: ArrayLike<number> | undefined;
  private readonly found: BlockResiduals;
  private readonly square: Float64Array;

  constructor(block: SeenBlock, weights: readonly number[], remembered: RememberedResiduals) {
    this.block = block;
    this.weights = weights;
    this.factor = blockFactor(block, weights);
    this.remembered = remembered;
    const rows = AXES * block.views.length;
    const count = block.columns.length;
    this.found = { residuals: new Float64Array(rows), slopes: new Float64Array(rows * count) };
    this.square = new Float64Array(count * count);
  }

  /** Residuals and slopes, independent and of variance 1. Not to be written over, nor kept. */
  whitened(state: ShelfState): BlockResiduals {
    if (this.theta === state.theta) return this.found;
    whitenInto(this.remembered.of(this.block, state), this.factor, this.found);
    this.theta = state.theta;
    writeSquare(this.found, this.block.columns.length, this.square);
    return this.found;
  }

  /** Adds to gradient and curvature (n × n, the lower triangle) of half the squares of the residuals, and returns these. */
  add(state: ShelfState, gradient: Float64Array, curvature: Float64Array): number {
    const { residuals, slopes } = this.whitened(state);
    const { columns } = this.block;
    const n = gradient.length;
    const count = columns.length;
    let cost = 0;
    for (let row = 0; row < residuals.length; row++) {
      const residual = residuals[row]!;
      cost += (residual * residual) / 2;
      for (let i = 0; i < count; i++) gradient[columns[i]!]! -= slopes[row * count + i]! * residual;
    }
    for (let i = 0; i < count; i++) {
      const at = columns[i]! * n;
      for (let j = 0; j <= i; j++) curvature[at + columns[j]!]! += this.square[i * count + j]!;
    }
    return cost;
  }
}

/** The lower triangle of JᵀJ. */
function writeSquare({ slopes, residuals }: BlockResiduals, count: number, square: Float64Array): void {
  square.fill(0);
  for (let row = 0; row < residuals.length; row += AXES) {
    const first = row * count;
    const second = first + count;
    const third = second + count;
    for (let i = 0; i < count; i++) {
      const one = slopes[first + i]!;
      const two = slopes[second + i]!;
      const three = slopes[third + i]!;
      const at = i * count;
      for (let j = 0; j <= i; j++)
        square[at + j]! += one * slopes[first + j]! + two * slopes[second + j]! + three * slopes[third + j]!;
    }
  }
}

/** The blocks of one problem, for fits and tests of it: what these have in common is worked out once. */
export class CurvedBlocks {
  private readonly remembered: RememberedResiduals;
  private readonly known = new Map<SeenBlock, CurvedBlock>();

  constructor({ looker }: Pick<ShelfProblem, 'looker'>) {
    this.remembered = new RememberedResiduals(looker);
  }

  /** @param weights of the block's items */
  of(block: SeenBlock, weights: readonly number[]): CurvedBlock {
    const known = this.known.get(block);
    if (known?.weights.every((weight, i) => weight === weights[i])) return known;
    const made = new CurvedBlock(block, weights, this.remembered);
    this.known.set(block, made);
    return made;
  }
}
