import type { BlockResiduals } from './block-residuals.ts';
import { factorizeDense } from './dense-cholesky.ts';
import type { SeenBlock } from './shelf-problem.ts';

const AXES = 3;

/** Cholesky's factor of what the views of a block have in common, with items of these weights. Shape: views × views. */
export function blockFactor(block: SeenBlock, weights?: ArrayLike<number>): Float64Array {
  const covariance = block.covariance(weights);
  factorizeDense(covariance, block.views.length);
  return covariance;
}

/** Makes residuals and slopes independent and of variance 1, in place: L⁻¹ of each axis by itself. Shape: L views × views. */
export function whiten({ residuals, slopes }: BlockResiduals, L: Float64Array): void {
  const rows = residuals.length;
  const views = rows / AXES;
  const count = slopes.length / rows;
  for (let i = 0; i < views; i++) {
    const scale = 1 / L[i * views + i]!;
    for (let axis = 0; axis < AXES; axis++) {
      const row = AXES * i + axis;
      for (let j = 0; j < i; j++) {
        const times = L[i * views + j]!;
        if (times === 0) continue;
        const other = AXES * j + axis;
        residuals[row]! -= times * residuals[other]!;
        for (let column = 0; column < count; column++)
          slopes[row * count + column]! -= times * slopes[other * count + column]!;
      }
      residuals[row]! *= scale;
      for (let column = 0; column < count; column++) slopes[row * count + column]! *= scale;
    }
  }
}
