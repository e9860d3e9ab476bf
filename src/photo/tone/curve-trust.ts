import type { Knot } from './monotone-curve.ts';

/**
 * How far a print's greys may bend by themselves: standard deviation of the exponent by which they differ from what was wanted. Of prints
 * on plain paper; common practice, no source.
 */
const PRINT_SPREAD = 0.14;

/** What lies nearer to paper than this, in ln R, tells no exponent. */
const NEAR_PAPER = 0.2;

/**
 * Which part of a curve through greys that nobody has measured is to be believed, 0..1.
 *
 * A photo can't tell the phone's bend from the print's: both are exponents. But prints differ from what was wanted by some 14 %, and phones
 * by up to half, so what bends much is the phone. The part is e² / (e² + 0.14²), e the root mean square of the exponents' difference
 * from 1: an empirical Bayes estimate.
 *
 * @param knots of the greys: x the logarithm of the signal and y that of what is thrown back, paper 0 in both
 */
export function curveTrust(knots: readonly Knot[]): number {
  const bends = knots.filter(({ y }) => y < -NEAR_PAPER).map(({ x, y }) => (x / y - 1) ** 2);
  if (bends.length === 0) return 0;
  const square = bends.reduce((sum, bend) => sum + bend, 0) / bends.length;
  return square / (square + PRINT_SPREAD * PRINT_SPREAD);
}
