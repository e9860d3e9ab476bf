/**
 * The colour difference near one colour as a length: what least squares needs, and CIEDE2000 as it stands is not.
 *
 * @packageDocumentation
 */
import type { Lab } from './cielab.ts';
import { deltaE00 } from './delta-e00.ts';

/** Nine numbers, row by row, upper triangle: ΔE00 of a small step is the length of this matrix times the step in Lab. */
export type LocalMetric = Float64Array;

// Small enough for the difference to be a square, large enough for its digits.
const STEP = 0.05;
const LEAST = 1e-3;

/**
 * The matrix M with ΔE00(lab, lab + d) = |M d| for small d: Cholesky's factor of the metric that CIEDE2000 has at a colour,
 * which is read from the difference itself.
 *
 * Shape: d is (ΔL, Δa, Δb). Right within a few percent up to differences of about 2.
 *
 * @example localMetric({ L: 50, a: 0, b: 0 })[0] // 1, to 4 digits: a step in lightness counts as it is in mid grey
 */
export function localMetric(lab: Lab): LocalMetric {
  const squared = (dL: number, da: number, db: number): number => {
    const forth = deltaE00(lab, { L: lab.L + STEP * dL, a: lab.a + STEP * da, b: lab.b + STEP * db });
    const back = deltaE00(lab, { L: lab.L - STEP * dL, a: lab.a - STEP * da, b: lab.b - STEP * db });
    return (forth * forth + back * back) / 2 / (STEP * STEP);
  };
  const LL = squared(1, 0, 0);
  const aa = squared(0, 1, 0);
  const bb = squared(0, 0, 1);
  const La = (squared(1, 1, 0) - LL - aa) / 2;
  const Lb = (squared(1, 0, 1) - LL - bb) / 2;
  const ab = (squared(0, 1, 1) - aa - bb) / 2;
  // G = Uᵀ U with U upper: its rows are those of M.
  const uLL = Math.sqrt(Math.max(LEAST, LL));
  const uLa = La / uLL;
  const uLb = Lb / uLL;
  const uaa = Math.sqrt(Math.max(LEAST, aa - uLa * uLa));
  const uab = (ab - uLa * uLb) / uaa;
  const ubb = Math.sqrt(Math.max(LEAST, bb - uLb * uLb - uab * uab));
  return Float64Array.of(uLL, uLa, uLb, 0, uaa, uab, 0, 0, ubb);
}

/** M d. */
export function appliedMetric(M: LocalMetric, dL: number, da: number, db: number): [number, number, number] {
  return [M[0]! * dL + M[1]! * da + M[2]! * db, M[4]! * da + M[5]! * db, M[8]! * db];
}

/** M⁻¹, upper triangular as M is: leads from steps measured in ΔE00 back to steps in Lab. */
export function inverseMetric(M: LocalMetric): Float64Array {
  const [a, b, c, d, e, f] = [M[0]!, M[1]!, M[2]!, M[4]!, M[5]!, M[8]!];
  return Float64Array.of(1 / a, -b / (a * d), (b * e - c * d) / (a * d * f), 0, 1 / d, -e / (d * f), 0, 0, 1 / f);
}
