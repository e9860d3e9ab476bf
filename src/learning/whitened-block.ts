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

/** Writes what `whiten` makes of residuals and slopes; what was found is left as it is. */
export function whitenInto(found: BlockResiduals, L: Float64Array, into: BlockResiduals): void {
  into.residuals.set(found.residuals);
  into.slopes.set(found.slopes);
  whiten(into, L);
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

/** Makes of residuals r, in place, C⁻¹ r of each axis by itself, and returns rᵀ C⁻¹ r. Shape: C = L Lᵀ, views × views. */
export function weighed(residuals: Float64Array, L: Float64Array): number {
  const views = residuals.length / AXES;
  let square = 0;
  for (let axis = 0; axis < AXES; axis++) {
    for (let i = 0; i < views; i++) {
      let sum = residuals[AXES * i + axis]!;
      for (let j = 0; j < i; j++) sum -= L[i * views + j]! * residuals[AXES * j + axis]!;
      sum /= L[i * views + i]!;
      residuals[AXES * i + axis] = sum;
      square += sum * sum;
    }
    for (let i = views - 1; i >= 0; i--) {
      const value = residuals[AXES * i + axis]! / L[i * views + i]!;
      residuals[AXES * i + axis] = value;
      for (let j = 0; j < i; j++) residuals[AXES * j + axis]! -= L[i * views + j]! * value;
    }
  }
  return square;
}
