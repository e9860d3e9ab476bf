import type { Rgb } from './rgb.ts';

/** The three factors with which weighted rows come nearest to what is wanted (normal equations, Cramer's rule). */
export function leastSquares3(rows: readonly Rgb[], wanted: readonly number[], weights: readonly number[]): Rgb {
  const product = (one: number, other: number): number =>
    rows.reduce((sum, row, at) => sum + weights[at]! * row[one]! * row[other]!, 0);
  const [a, b, c, d, e, f] = [product(0, 0), product(0, 1), product(0, 2), product(1, 1), product(1, 2), product(2, 2)];
  const [p, q, r] = [0, 1, 2].map((axis) =>
    rows.reduce((sum, row, at) => sum + weights[at]! * row[axis]! * wanted[at]!, 0),
  ) as [number, number, number];
  const det = a * (d * f - e * e) - b * (b * f - c * e) + c * (b * e - c * d);
  return [
    (p * (d * f - e * e) - b * (q * f - e * r) + c * (q * e - d * r)) / det,
    (a * (q * f - e * r) - p * (b * f - c * e) + c * (b * r - c * q)) / det,
    (a * (d * r - e * q) - b * (b * r - c * q) + p * (b * e - c * d)) / det,
  ];
}
