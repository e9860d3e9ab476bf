/** Where `rowProducts` leaves its sums: of the first row with both others, of the second with both, and so on. */
export const PRODUCTS = new Float64Array(8);

/**
 * Products of four rows of a matrix with two of another, of the columns from `from` up to but not `to`: what all that is done to matrices of
 * many rows comes down to. Each number that is fetched is used several times.
 *
 * @param four where the first of four rows begins
 * @param two where the first of two rows begins
 * @param n how far rows are apart, in both
 */
export function rowProducts(
  A: Float64Array,
  four: number,
  B: Float64Array,
  two: number,
  n: number,
  from: number,
  to: number,
): void {
  const [second, third, fourth, other] = [four + n, four + 2 * n, four + 3 * n, two + n];
  let a1 = 0;
  let a2 = 0;
  let b1 = 0;
  let b2 = 0;
  let c1 = 0;
  let c2 = 0;
  let d1 = 0;
  let d2 = 0;
  for (let k = from; k < to; k++) {
    const x = B[two + k]!;
    const y = B[other + k]!;
    const a = A[four + k]!;
    a1 += a * x;
    a2 += a * y;
    const b = A[second + k]!;
    b1 += b * x;
    b2 += b * y;
    const c = A[third + k]!;
    c1 += c * x;
    c2 += c * y;
    const d = A[fourth + k]!;
    d1 += d * x;
    d2 += d * y;
  }
  PRODUCTS[0] = a1;
  PRODUCTS[1] = a2;
  PRODUCTS[2] = b1;
  PRODUCTS[3] = b2;
  PRODUCTS[4] = c1;
  PRODUCTS[5] = c2;
  PRODUCTS[6] = d1;
  PRODUCTS[7] = d2;
}

/** Product of two rows. */
export function rowProduct(
  A: Float64Array,
  one: number,
  B: Float64Array,
  other: number,
  from: number,
  to: number,
): number {
  let sum = 0;
  for (let k = from; k < to; k++) sum += A[one + k]! * B[other + k]!;
  return sum;
}

/** Column of the first element of each row of a lower triangle that is not 0: at most the diagonal's. */
export function firstColumns(A: Float64Array, n: number): Int32Array {
  const first = new Int32Array(n);
  for (let row = 0; row < n; row++) {
    let column = 0;
    while (column < row && A[row * n + column] === 0) column++;
    first[row] = column;
  }
  return first;
}
