import { blockResiduals } from './block-residuals.ts';
import { CompositionLooker } from './composition-views.ts';
import { factorizeSturdy, solveDense } from './dense-cholesky.ts';
import type { LabelBlock, ShelfProblem } from './shelf-problem.ts';
import { type ShelfState, shelfState } from './shelf-state.ts';
import { blockFactor, whiten } from './whitened-block.ts';

// Nothing has to be met: it is where the fit begins.
const STEPS = 8;
const LONGEST_STEP = 1.5;

/** A theta to begin with: of each material by itself nearly what its labels make of it, the rest as believed before any look. */
export function startFromLabels({ unknowns, labels }: ShelfProblem): Float64Array {
  const theta = new Float64Array(unknowns.count);
  const looker = new CompositionLooker(unknowns);
  const factors = labels.map((block) => blockFactor(block));
  const byMaterial = new Map<string, number[]>();
  for (const [i, { material }] of labels.entries()) byMaterial.set(material, [...(byMaterial.get(material) ?? []), i]);
  for (let step = 0; step < STEPS; step++) {
    const state = shelfState(unknowns, theta);
    for (const [material, places] of byMaterial) {
      const { at, kModes, sModes } = unknowns.materials[unknowns.placeOf.get(material)!]!;
      const equations = new OwnEquations(theta, at, kModes.length + sModes.length);
      for (const i of places) equations.add(labels[i]!, factors[i]!, looker, state);
      equations.move(theta);
    }
  }
  return theta;
}

/** Normal equations of one material's own unknowns. */
class OwnEquations {
  private readonly at: number;
  private readonly count: number;
  private readonly curvature: Float64Array;
  private readonly downhill: Float64Array;

  constructor(theta: Float64Array, at: number, count: number) {
    this.at = at;
    this.count = count;
    this.downhill = theta.slice(at, at + count).map((value) => -value);
    this.curvature = new Float64Array(count * count);
    for (let i = 0; i < count; i++) this.curvature[i * count + i] = 1;
  }

  add(block: LabelBlock, factor: Float64Array, looker: CompositionLooker, state: ShelfState): void {
    const { at, count } = this;
    const found = blockResiduals(block, looker, state);
    whiten(found, factor);
    const from = block.columns.indexOf(at);
    const columns = block.columns.length;
    for (const [row, residual] of found.residuals.entries()) {
      const slopes = found.slopes.subarray(row * columns + from, row * columns + from + count);
      for (let i = 0; i < count; i++) {
        this.downhill[i]! += slopes[i]! * residual;
        for (let j = 0; j <= i; j++) this.curvature[i * count + j]! += slopes[i]! * slopes[j]!;
      }
    }
  }

  /** Takes a step, no longer than the longest. */
  move(theta: Float64Array): void {
    factorizeSturdy(this.curvature, this.count);
    solveDense(this.curvature, this.count, this.downhill);
    const longest = Math.max(...this.downhill.map(Math.abs));
    const scale = Math.min(1, LONGEST_STEP / longest);
    for (let i = 0; i < this.count; i++) theta[this.at + i]! += scale * this.downhill[i]!;
  }
}
