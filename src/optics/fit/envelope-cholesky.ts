/**
 * Cholesky factor of a symmetric matrix that is empty left of a known place in each row.
 *
 * Source: A. George & J. W. H. Liu, Computer Solution of Large Sparse Positive Definite Systems (1981), chapter 4 (from
 * memory): the factor fills only the envelope.
 */

/** The lower triangle, row by row: `rows[i][j - starts[i]]` is element (i, j) for starts[i] ≤ j ≤ i. */
export interface Envelope {
  readonly starts: readonly number[];
  readonly rows: readonly Float64Array[];
}

/** An empty matrix whose row i begins at `starts[i]`. */
export function envelope(starts: readonly number[]): Envelope {
  return { starts, rows: starts.map((start, row) => new Float64Array(row - start + 1)) };
}

/** Adds to element (row, column) of the lower triangle, which must lie in the envelope. */
export function addElement(matrix: Envelope, row: number, column: number, value: number): void {
  matrix.rows[row]![column - matrix.starts[row]!]! += value;
}

/**
 * Turns the matrix into its factor L, in place.
 *
 * Throws: RangeError if it is not positive definite.
 */
export function factorize(matrix: Envelope): void {
  const { starts, rows } = matrix;
  for (let i = 0; i < rows.length; i++) {
    const row = rows[i]!;
    const start = starts[i]!;
    for (let j = start; j < i; j++) {
      const other = rows[j]!;
      const otherStart = starts[j]!;
      const from = Math.max(start, otherStart);
      let sum = row[j - start]!;
      for (let k = from; k < j; k++) sum -= row[k - start]! * other[k - otherStart]!;
      row[j - start] = sum / other[j - otherStart]!;
    }
    let square = row[i - start]!;
    for (let k = 0; k < i - start; k++) square -= row[k]! * row[k]!;
    if (!(square > 0))
      throw new RangeError(`Row ${i + 1} leaves ${square} on the diagonal; give a positive definite one`);
    row[i - start] = Math.sqrt(square);
  }
}

/** Solves L y = b, in place. */
export function solveLower(factor: Envelope, b: Float64Array): void {
  const { starts, rows } = factor;
  for (let i = 0; i < rows.length; i++) {
    const row = rows[i]!;
    const start = starts[i]!;
    let sum = b[i]!;
    for (let k = start; k < i; k++) sum -= row[k - start]! * b[k]!;
    b[i] = sum / row[i - start]!;
  }
}
