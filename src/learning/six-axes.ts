/**
 * Small matrices of the six axes of two views: three over white, three over black. All row by row.
 *
 * @packageDocumentation
 */
import type { ColourSlopes } from './colour-slopes.ts';

/** Of both views. */
export const AXES = 6;

/** J C Jᵀ, 6 × 6. */
export function sandwich({ columns, slopes }: ColourSlopes, C: Float64Array, n: number): Float64Array {
  const count = columns.length;
  const half = new Float64Array(AXES * count);
  for (let c = 0; c < count; c++) {
    const from = columns[c]! * n;
    for (let d = 0; d < count; d++) {
      const value = C[from + columns[d]!]!;
      for (let axis = 0; axis < AXES; axis++) half[axis * count + c]! += value * slopes[axis * count + d]!;
    }
  }
  const whole = new Float64Array(AXES * AXES);
  for (let axis = 0; axis < AXES; axis++)
    for (let other = 0; other <= axis; other++) {
      let sum = 0;
      for (let c = 0; c < count; c++) sum += slopes[axis * count + c]! * half[other * count + c]!;
      whole[axis * AXES + other] = sum;
      whole[other * AXES + axis] = sum;
    }
  return whole;
}

/** L⁻¹ M, 6 × 6. */
export function solveLower(L: Float64Array, M: Float64Array): Float64Array {
  const X = M.slice();
  for (let row = 0; row < AXES; row++)
    for (let column = 0; column < AXES; column++) {
      let sum = X[row * AXES + column]!;
      for (let k = 0; k < row; k++) sum -= L[row * AXES + k]! * X[k * AXES + column]!;
      X[row * AXES + column] = sum / L[row * (AXES + 1)]!;
    }
  return X;
}

/** Mᵀ, 6 × 6. */
export function transposed(M: Float64Array): Float64Array {
  return M.map((_, at) => M[(at % AXES) * AXES + Math.floor(at / AXES)]!);
}

/** C X with C n × n and X n × 6. */
export function product(C: Float64Array, X: Float64Array, n: number): Float64Array {
  const found = new Float64Array(n * AXES);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      const value = C[i * n + j]!;
      for (let k = 0; k < AXES; k++) found[i * AXES + k]! += value * X[j * AXES + k]!;
    }
  return found;
}

/** Xᵀ X of rows of six. */
export function gram(rows: readonly Float64Array[]): Float64Array {
  const found = new Float64Array(AXES * AXES);
  for (const row of rows)
    for (let i = 0; i < AXES; i++) for (let j = 0; j < AXES; j++) found[i * AXES + j]! += row[i]! * row[j]!;
  return found;
}
