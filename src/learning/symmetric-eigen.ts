/** An axis of a symmetric matrix. */
export interface EigenPair {
  readonly value: number;
  /** Of length 1. */
  readonly vector: Float64Array;
}

// Rotations bring what is off the diagonal down by squares, once it is small: 36 rows take about eight sweeps.
const MOST_SWEEPS = 60;

/**
 * Eigenvalues and eigenvectors of a symmetric matrix, the largest value first.
 *
 * Source: C. G. J. Jacobi's rotations, J. reine angew. Math. 30:51 (1846), cyclic by rows. Right to the last few digits.
 * Shape: n × n, row by row; only read. The sum of each vector is not negative, so that the same matrix gives the same vectors.
 *
 * @example symmetricEigen(Float64Array.of(2, 1, 1, 2), 2).map(({ value }) => value) // [3, 1]
 */
export function symmetricEigen(matrix: ArrayLike<number>, n: number): readonly EigenPair[] {
  const A = Float64Array.from(matrix);
  const V = new Float64Array(n * n);
  for (let i = 0; i < n; i++) V[i * n + i] = 1;
  for (let sweep = 0; sweep < MOST_SWEEPS && offDiagonal(A, n) > 0; sweep++) {
    for (let p = 0; p < n; p++) for (let q = p + 1; q < n; q++) rotate(A, V, n, p, q);
  }
  const pairs = Array.from({ length: n }, (_, j) => ({ value: A[j * n + j]!, vector: column(V, n, j) }));
  return pairs.sort((one, other) => other.value - one.value);
}

/** Sum of squares above the diagonal, nought where it no longer counts beside the diagonal. */
function offDiagonal(A: Float64Array, n: number): number {
  let off = 0;
  let on = 0;
  for (let i = 0; i < n; i++) {
    on += A[i * n + i]! ** 2;
    for (let j = i + 1; j < n; j++) off += A[i * n + j]! ** 2;
  }
  return off > 1e-32 * on ? off : 0;
}

/** Turns rows and columns p and q so that their common element becomes 0. */
function rotate(A: Float64Array, V: Float64Array, n: number, p: number, q: number): void {
  const apq = A[p * n + q]!;
  if (apq === 0) return;
  const theta = (A[q * n + q]! - A[p * n + p]!) / (2 * apq);
  const t = (theta >= 0 ? 1 : -1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
  const c = 1 / Math.sqrt(t * t + 1);
  const s = t * c;
  for (let k = 0; k < n; k++) turn(A, k * n + p, k * n + q, c, s);
  for (let k = 0; k < n; k++) turn(A, p * n + k, q * n + k, c, s);
  for (let k = 0; k < n; k++) turn(V, k * n + p, k * n + q, c, s);
}

function turn(M: Float64Array, one: number, other: number, c: number, s: number): void {
  const x = M[one]!;
  const y = M[other]!;
  M[one] = c * x - s * y;
  M[other] = s * x + c * y;
}

function column(V: Float64Array, n: number, j: number): Float64Array {
  const vector = Float64Array.from({ length: n }, (_, i) => V[i * n + j]!);
  let sum = 0;
  for (const value of vector) sum += value;
  return sum < 0 ? vector.map((value) => -value) : vector;
}
