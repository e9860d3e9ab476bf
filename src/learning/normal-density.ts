import { solveLowerDense } from './dense-cholesky.ts';

/**
 * How likely numbers are that are normal about 0: their squared length in units of what they may be (chi-square, one degree each), and ln of
 * their density.
 *
 * @param factor Cholesky's factor of their covariance, n × n row by row, the lower triangle
 */
export function normalDensity(
  values: Float64Array,
  factor: Float64Array,
): { readonly chiSquare: number; readonly logDensity: number } {
  const n = values.length;
  const z = values.slice();
  solveLowerDense(factor, n, z);
  let chiSquare = 0;
  let logRoot = 0;
  for (let i = 0; i < n; i++) {
    chiSquare += z[i]! * z[i]!;
    logRoot += Math.log(factor[i * n + i]!);
  }
  return { chiSquare, logDensity: -chiSquare / 2 - logRoot - (n / 2) * Math.log(2 * Math.PI) };
}
