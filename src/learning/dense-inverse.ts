import { firstColumns, PRODUCTS, rowProduct, rowProducts } from './row-products.ts';

const AT_ONCE = 4;

/**
 * The inverse of L Lᵀ.
 *
 * Shape: L is lower, n × n, row by row; the inverse is whole.
 * @param wanted n × n, not 0 where an element of the lower triangle is wanted, others may be left 0; unset: all are
 */
export function inverseDense(L: Float64Array, n: number, wanted?: Uint8Array): Float64Array {
  const M = inverseOfLower(L, n);
  const inverse = new Float64Array(n * n);
  for (let i = 0; i < n; i += 2) {
    let j = 0;
    if (i + 1 < n)
      for (; j + AT_ONCE <= i; j += AT_ONCE) if (!wanted || isWanted(wanted, i, j, n)) squareEight(M, inverse, i, j, n);
    for (let row = i; row < Math.min(i + 2, n); row++)
      for (let column = j; column <= row; column++)
        inverse[row * n + column] = rowProduct(M, row * n, M, column * n, row, n);
  }
  for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) inverse[j * n + i] = inverse[i * n + j]!;
  return inverse;
}

/** Columns of the inverse of L, as rows: row j holds L⁻¹ e_j, which begins at j. */
function inverseOfLower(L: Float64Array, n: number): Float64Array {
  const M = new Float64Array(n * n);
  const first = firstColumns(L, n);
  for (let i = 0; i < n; i += 2) {
    let j = 0;
    if (i + 1 < n) {
      const from = Math.min(first[i]!, first[i + 1]!, i);
      for (; j + AT_ONCE <= i; j += AT_ONCE) invertEight(L, M, i, j, n, from);
    }
    for (let row = i; row < Math.min(i + 2, n); row++) {
      for (let column = j; column < row; column++)
        M[column * n + row] = -rowProduct(L, row * n, M, column * n, column, row) / L[row * n + row]!;
      M[row * n + row] = 1 / L[row * n + row]!;
    }
  }
  return M;
}

/**
 * Elements i and i + 1 of rows j to j + 3 of the inverse of L.
 *
 * @param from rows i and i + 1 of L are 0 in front of this column
 */
function invertEight(L: Float64Array, M: Float64Array, i: number, j: number, n: number, from: number): void {
  rowProducts(M, j * n, L, i * n, n, Math.max(j, from), i);
  const next = (i + 1) * n + i;
  const below = L[next]!;
  const over = -1 / L[i * n + i]!;
  const overNext = -1 / L[next + 1]!;
  for (let row = 0; row < AT_ONCE; row++) {
    const at = (j + row) * n + i;
    const value = PRODUCTS[2 * row]! * over;
    M[at] = value;
    M[at + 1] = (PRODUCTS[2 * row + 1]! + below * value) * overNext;
  }
}

/** Elements j to j + 3 of rows i and i + 1 of M Mᵀ, M upper. */
function squareEight(M: Float64Array, inverse: Float64Array, i: number, j: number, n: number): void {
  rowProducts(M, j * n, M, i * n, n, i, n);
  const at = i * n + j;
  for (let column = 0; column < AT_ONCE; column++) {
    inverse[at + column] = PRODUCTS[2 * column]!;
    inverse[at + n + column] = PRODUCTS[2 * column + 1]!;
  }
}

function isWanted(wanted: Uint8Array, i: number, j: number, n: number): boolean {
  const at = i * n + j;
  for (let column = at; column < at + AT_ONCE; column++) if (wanted[column] || wanted[column + n]) return true;
  return false;
}
