import type { BlockResiduals } from './block-residuals.ts';
import type { SeenBlock } from './shelf-problem.ts';

/** What the doubt of theta makes of the residuals of a block: J Σ Jᵀ, rows × rows; the covariance Σ is n × n. */
export function saidByTheta(
  { columns }: Pick<SeenBlock, 'columns'>,
  { slopes, residuals }: BlockResiduals,
  covariance: Float64Array,
  n: number,
): Float64Array {
  const rows = residuals.length;
  const count = columns.length;
  const said = new Float64Array(rows * rows);
  const own = partOf(covariance, columns, n);
  const spreadRow = new Float64Array(count);
  for (let i = 0; i < rows; i++) {
    spreadRow.fill(0);
    for (let a = 0; a < count; a++) {
      const slope = slopes[i * count + a]!;
      if (slope === 0) continue;
      const from = a * count;
      for (let b = 0; b < count; b++) spreadRow[b]! += slope * own[from + b]!;
    }
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let b = 0; b < count; b++) sum += spreadRow[b]! * slopes[j * count + b]!;
      said[i * rows + j] = sum;
      said[j * rows + i] = sum;
    }
  }
  return said;
}

/** Rows and columns of a matrix that a block depends on. */
function partOf(matrix: Float64Array, columns: Int32Array, n: number): Float64Array {
  const count = columns.length;
  const part = new Float64Array(count * count);
  for (let a = 0; a < count; a++) {
    const from = columns[a]! * n;
    for (let b = 0; b < count; b++) part[a * count + b] = matrix[from + columns[b]!]!;
  }
  return part;
}
