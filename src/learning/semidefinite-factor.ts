/** A pivot below this part of its diagonal element is rounding. */
const ROUNDING = 1e-12;

/**
 * Cholesky's factor of a covariance that may leave some ways unmoved: L with L Lᵀ = C, and a column of noughts for each such way.
 *
 * Shape: C is n × n, row by row, symmetric; of L the upper triangle is nought.
 *
 * @example semidefiniteFactor(Float64Array.of(4, 2, 2, 1), 2) // [2, 0, 1, 0]
 */
export function semidefiniteFactor(C: ArrayLike<number>, n: number): Float64Array {
  const L = new Float64Array(n * n);
  for (let column = 0; column < n; column++) {
    const diagonal = C[column * n + column]!;
    let pivot = diagonal;
    for (let k = 0; k < column; k++) pivot -= L[column * n + k]! ** 2;
    if (!(pivot > ROUNDING * diagonal)) continue;
    const root = Math.sqrt(pivot);
    L[column * n + column] = root;
    for (let row = column + 1; row < n; row++) {
      let sum = C[row * n + column]!;
      for (let k = 0; k < column; k++) sum -= L[row * n + k]! * L[column * n + k]!;
      L[row * n + column] = sum / root;
    }
  }
  return L;
}
