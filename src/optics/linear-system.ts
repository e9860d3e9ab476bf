/**
 * Solves A x = b by elimination with row exchange. A (row by row, n × n) and b are used up; b becomes x.
 *
 * Returns false, leaving rubbish in both, if A is singular to working precision.
 *
 * @example solveLinear(Float64Array.of(2, 0, 0, 4), Float64Array.of(2, 4)) // true
 */
export function solveLinear(A: Float64Array, b: Float64Array): boolean {
  const n = b.length;
  for (let column = 0; column < n; column++) {
    let pivot = column;
    for (let row = column + 1; row < n; row++) {
      if (Math.abs(A[row * n + column]!) > Math.abs(A[pivot * n + column]!)) pivot = row;
    }
    const divisor = A[pivot * n + column]!;
    if (!(Math.abs(divisor) > 1e-300 && Math.abs(divisor) < Number.POSITIVE_INFINITY)) return false;
    if (pivot !== column) exchange(A, b, n, pivot, column);
    for (let row = column + 1; row < n; row++) {
      const factor = A[row * n + column]! / divisor;
      if (factor === 0) continue;
      for (let k = column + 1; k < n; k++) A[row * n + k]! -= factor * A[column * n + k]!;
      b[row]! -= factor * b[column]!;
    }
  }
  for (let row = n - 1; row >= 0; row--) {
    let rest = b[row]!;
    for (let k = row + 1; k < n; k++) rest -= A[row * n + k]! * b[k]!;
    b[row] = rest / A[row * n + row]!;
  }
  return true;
}

function exchange(A: Float64Array, b: Float64Array, n: number, one: number, other: number): void {
  for (let k = 0; k < n; k++) {
    const held = A[one * n + k]!;
    A[one * n + k] = A[other * n + k]!;
    A[other * n + k] = held;
  }
  const held = b[one]!;
  b[one] = b[other]!;
  b[other] = held;
}
