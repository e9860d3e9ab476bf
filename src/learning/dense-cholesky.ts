/**
 * Cholesky's factor of a symmetric matrix of many rows: A = L Lᵀ, row by row, the lower triangle.
 *
 * @packageDocumentation
 */

/**
 * Turns the lower triangle of A into L, in place; what is above the diagonal is left as it is.
 *
 * Throws: RangeError if A is not positive definite.
 */
export function factorizeDense(A: Float64Array, n: number): void {
  factorize(A, n, 0);
}

// What is left of a diagonal element after rounding of sums as large as itself.
const ROUNDING = 1e-13;

/**
 * The same of a matrix that is positive definite but for rounding: what rounding may have made of a diagonal element counts as all of it, so
 * that what cannot be told is not moved.
 *
 * Throws: RangeError if an element of the diagonal is not above 0 and finite.
 */
export function factorizeSturdy(A: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    const diagonal = A[i * n + i]!;
    if (!(diagonal > 0 && diagonal < Number.POSITIVE_INFINITY))
      throw new RangeError(`Row ${i + 1} has ${diagonal} on the diagonal; give numbers above 0`);
  }
  factorize(A, n, ROUNDING);
}

function factorize(A: Float64Array, n: number, rounding: number): void {
  for (let i = 0; i < n; i += 2) {
    // Two rows at a time, against two others: each number that is fetched is used twice.
    const one = i * n;
    const two = i + 1 < n ? one + n : one;
    for (let j = 0; j < i; j += 2) pairs(A, one, two, j * n, j, n);
    settleDiagonal(A, i, n, rounding);
  }
}

/** Elements (one, j), (one, j + 1), (two, j), (two, j + 1) of L, j + 1 above the diagonal. */
function pairs(A: Float64Array, one: number, two: number, other: number, j: number, n: number): void {
  let s11 = A[one + j]!;
  let s12 = A[one + j + 1]!;
  let s21 = A[two + j]!;
  let s22 = A[two + j + 1]!;
  const next = other + n;
  for (let k = 0; k < j; k++) {
    const a = A[one + k]!;
    const b = A[two + k]!;
    const c = A[other + k]!;
    const d = A[next + k]!;
    s11 -= a * c;
    s12 -= a * d;
    s21 -= b * c;
    s22 -= b * d;
  }
  const first = 1 / A[other + j]!;
  const below = A[next + j]!;
  const second = 1 / A[next + j + 1]!;
  s11 *= first;
  s21 *= first;
  A[one + j] = s11;
  A[two + j] = s21;
  A[one + j + 1] = (s12 - below * s11) * second;
  A[two + j + 1] = (s22 - below * s21) * second;
}

/** The last elements of rows i and i + 1. */
function settleDiagonal(A: Float64Array, i: number, n: number, rounding: number): void {
  for (let row = i; row < Math.min(i + 2, n); row++) {
    const at = row * n;
    for (let j = i; j <= row; j++) {
      const other = j * n;
      let sum = A[at + j]!;
      for (let k = 0; k < j; k++) sum -= A[at + k]! * A[other + k]!;
      if (j < row) A[at + j] = sum / A[other + j]!;
      else if (sum > rounding * A[at + j]!) A[at + j] = Math.sqrt(sum);
      else if (rounding > 0) A[at + j] = Math.sqrt(A[at + j]!);
      else throw new RangeError(`Row ${row + 1} leaves ${sum} on the diagonal; give a positive definite matrix`);
    }
  }
}

/** Solves L y = b, in place. */
export function solveLowerDense(L: Float64Array, n: number, b: Float64Array): void {
  for (let i = 0; i < n; i++) {
    let sum = b[i]!;
    for (let k = 0; k < i; k++) sum -= L[i * n + k]! * b[k]!;
    b[i] = sum / L[i * n + i]!;
  }
}

/** Solves L Lᵀ x = b, in place. */
export function solveDense(L: Float64Array, n: number, b: Float64Array): void {
  solveLowerDense(L, n, b);
  for (let i = n - 1; i >= 0; i--) {
    const x = b[i]! / L[i * n + i]!;
    b[i] = x;
    for (let k = 0; k < i; k++) b[k]! -= L[i * n + k]! * x;
  }
}

/** The inverse of L Lᵀ, whole. */
export function inverseDense(L: Float64Array, n: number): Float64Array {
  // Columns of the inverse of L stand as rows here: row j holds L⁻¹ e_j, from j on.
  const M = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    const diagonal = 1 / L[i * n + i]!;
    let j = 0;
    for (; j + 3 < i; j += 4) invertFour(L, M, i, j, n, diagonal);
    for (; j < i; j++) {
      let sum = 0;
      for (let k = j; k < i; k++) sum += L[i * n + k]! * M[j * n + k]!;
      M[j * n + i] = -sum * diagonal;
    }
    M[i * n + i] = diagonal;
  }
  const inverse = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    let j = 0;
    for (; j + 3 <= i; j += 4) squareFour(M, inverse, i, j, n);
    for (; j <= i; j++) {
      let sum = 0;
      for (let k = i; k < n; k++) sum += M[i * n + k]! * M[j * n + k]!;
      inverse[i * n + j] = sum;
    }
    for (j = 0; j < i; j++) inverse[j * n + i] = inverse[i * n + j]!;
  }
  return inverse;
}

/** Element i of rows j to j + 3 of the inverse of L: row j begins at j, so each is 0 before. */
function invertFour(L: Float64Array, M: Float64Array, i: number, j: number, n: number, diagonal: number): void {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  const row = i * n;
  const at = j * n;
  for (let k = j; k < i; k++) {
    const l = L[row + k]!;
    s0 += l * M[at + k]!;
    s1 += l * M[at + n + k]!;
    s2 += l * M[at + 2 * n + k]!;
    s3 += l * M[at + 3 * n + k]!;
  }
  M[at + i] = -s0 * diagonal;
  M[at + n + i] = -s1 * diagonal;
  M[at + 2 * n + i] = -s2 * diagonal;
  M[at + 3 * n + i] = -s3 * diagonal;
}

/** Elements (i, j) to (i, j + 3) of M Mᵀ, M upper. */
function squareFour(M: Float64Array, inverse: Float64Array, i: number, j: number, n: number): void {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  const row = i * n;
  const at = j * n;
  for (let k = i; k < n; k++) {
    const m = M[row + k]!;
    s0 += m * M[at + k]!;
    s1 += m * M[at + n + k]!;
    s2 += m * M[at + 2 * n + k]!;
    s3 += m * M[at + 3 * n + k]!;
  }
  inverse[row + j] = s0;
  inverse[row + j + 1] = s1;
  inverse[row + j + 2] = s2;
  inverse[row + j + 3] = s3;
}
