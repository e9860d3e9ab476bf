/** A square matrix, row by row. */
export type Matrix = Float64Array;

/** The matrix that changes nothing. */
export function identity(n: number): Matrix {
  const E = new Float64Array(n * n);
  for (let i = 0; i < n; i++) E[i * n + i] = 1;
  return E;
}

/** A B. */
export function product(A: Matrix, B: Matrix, n: number): Matrix {
  const C = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < n; k++) {
      const a = A[i * n + k]!;
      for (let j = 0; j < n; j++) C[i * n + j]! += a * B[k * n + j]!;
    }
  }
  return C;
}

/** A x. */
export function applied(A: Matrix, x: Float64Array, n: number): Float64Array {
  const y = new Float64Array(n);
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) y[i]! += A[i * n + j]! * x[j]!;
  return y;
}

/** p A + q B. */
export function combined(p: number, A: Matrix, q: number, B: Matrix): Matrix {
  return A.map((a, at) => p * a + q * B[at]!);
}

/** A⁻¹, by Gauss and Jordan with the largest pivot of each column. */
export function inverse(A: Matrix, n: number): Matrix {
  const left = A.slice();
  const right = identity(n);
  for (let column = 0; column < n; column++) {
    let pivot = column;
    for (let i = column + 1; i < n; i++)
      if (Math.abs(left[i * n + column]!) > Math.abs(left[pivot * n + column]!)) pivot = i;
    swapRows(left, column, pivot, n);
    swapRows(right, column, pivot, n);
    const scale = 1 / left[column * n + column]!;
    for (let j = 0; j < n; j++) {
      left[column * n + j]! *= scale;
      right[column * n + j]! *= scale;
    }
    for (let i = 0; i < n; i++) {
      const factor = left[i * n + column]!;
      if (i === column || factor === 0) continue;
      for (let j = 0; j < n; j++) {
        left[i * n + j]! -= factor * left[column * n + j]!;
        right[i * n + j]! -= factor * right[column * n + j]!;
      }
    }
  }
  return right;
}

function swapRows(A: Matrix, one: number, other: number, n: number): void {
  if (one === other) return;
  for (let j = 0; j < n; j++) {
    const kept = A[one * n + j]!;
    A[one * n + j] = A[other * n + j]!;
    A[other * n + j] = kept;
  }
}
