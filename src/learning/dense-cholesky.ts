/**
 * Cholesky's factor of a symmetric matrix of many rows: A = L Lᵀ, row by row, the lower triangle.
 *
 * @packageDocumentation
 */
import { firstColumns, PRODUCTS, rowProduct, rowProducts } from './row-products.ts';

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

const AT_ONCE = 4;

// In front of a row's first element of A that is not 0 there is none of L either: what is 0 is not added up.
function factorize(A: Float64Array, n: number, rounding: number): void {
  const first = firstColumns(A, n);
  for (let i = 0; i < n; i += AT_ONCE) {
    if (i + AT_ONCE <= n) {
      const from = Math.min(first[i]!, first[i + 1]!, first[i + 2]!, first[i + 3]!);
      for (let j = from - (from % 2); j < i; j += 2) settleFour(A, i * n, j, n, Math.min(first[j]!, first[j + 1]!, j));
    } else
      for (let row = i; row < n; row++)
        for (let j = first[row]!; j < i; j++)
          A[row * n + j] = (A[row * n + j]! - rowProduct(A, row * n, A, j * n, first[j]!, j)) / A[j * n + j]!;
    settleDiagonal(A, i, n, rounding);
  }
}

/**
 * Elements j and j + 1 of L in the four rows from `at` on.
 *
 * @param from rows j and j + 1 are 0 in front of this column
 */
function settleFour(A: Float64Array, at: number, j: number, n: number, from: number): void {
  const other = j * n;
  const next = other + n;
  rowProducts(A, at, A, other, n, from, j);
  const below = A[next + j]!;
  const over = 1 / A[other + j]!;
  const overNext = 1 / A[next + j + 1]!;
  for (let row = 0; row < AT_ONCE; row++) {
    const element = at + row * n + j;
    const value = (A[element]! - PRODUCTS[2 * row]!) * over;
    A[element] = value;
    A[element + 1] = (A[element + 1]! - PRODUCTS[2 * row + 1]! - below * value) * overNext;
  }
}

/** The last elements of rows i to i + 3. */
function settleDiagonal(A: Float64Array, i: number, n: number, rounding: number): void {
  for (let row = i; row < Math.min(i + AT_ONCE, n); row++) {
    const at = row * n;
    for (let j = i; j <= row; j++) {
      const sum = A[at + j]! - rowProduct(A, at, A, j * n, 0, j);
      if (j < row) A[at + j] = sum / A[j * n + j]!;
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
