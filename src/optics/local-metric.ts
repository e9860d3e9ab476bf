/**
 * The colour difference near one colour as a length: what least squares needs, and CIEDE2000 as it stands is not.
 *
 * @packageDocumentation
 */
import type { Lab } from './cielab.ts';

/** Nine numbers, row by row, upper triangle; lightness is by itself: ΔE00 of a small step is the length of this matrix times the step in Lab. */
export type LocalMetric = Float64Array;

/** Least slope of the difference: CIEDE2000's turn in the blues could otherwise leave a direction without length. */
const LEAST = 1e-3;

const RADIANS = Math.PI / 180;

/**
 * The matrix M with ΔE00(lab, lab + d) = |M d| for small d: Cholesky's factor of the metric that CIEDE2000 has at a colour.
 *
 * The terms of G. Sharma, W. Wu & E. N. Dalal, Color Res. Appl. 30:21 (2005), for two colours that are nearly one: both have the same
 * stretch of a, and the mean hue and chroma are the colour's own. Shape: d is (ΔL, Δa, Δb). Right within a few percent up to differences
 * of about 2.
 *
 * @example localMetric({ L: 50, a: 0, b: 0 })[0] // 1: a step in lightness counts as it is in mid grey
 */
export function localMetric({ L, a, b }: Lab): LocalMetric {
  const stretch = 1.5 - 0.5 * Math.sqrt(saturation(Math.sqrt(a * a + b * b)));
  const a1 = a * stretch;
  const C = Math.sqrt(a1 * a1 + b * b);
  // The direction of the hue; a grey has none, and there all directions count alike.
  const [cos, sin] = C > 0 ? [a1 / C, b / C] : [1, 0];
  const hue = Math.atan2(sin, cos);
  const T =
    1 -
    0.17 * Math.cos(hue - 30 * RADIANS) +
    0.24 * Math.cos(2 * hue) +
    0.32 * Math.cos(3 * hue + 6 * RADIANS) -
    0.2 * Math.cos(4 * hue - 63 * RADIANS);
  const bell = ((hue < 0 ? hue / RADIANS + 360 : hue / RADIANS) - 275) / 25;
  const turn = -2 * Math.sqrt(saturation(C)) * Math.sin(60 * RADIANS * Math.exp(-bell * bell));
  const fromMiddle = (L - 50) * (L - 50);
  const byL = 1 / (1 + (0.015 * fromMiddle) / Math.sqrt(20 + fromMiddle));
  const byC = 1 / (1 + 0.045 * C);
  const byH = 1 / (1 + 0.015 * C * T);
  // ΔC/SC and ΔH/SH of a step in a, and of one in b.
  const [aC, aH] = [byC * cos * stretch, -byH * sin * stretch];
  const [bC, bH] = [byC * sin, byH * cos];
  const aa = aC * aC + aH * aH + turn * aC * aH;
  const ab = aC * bC + aH * bH + (turn * (aC * bH + aH * bC)) / 2;
  const bb = bC * bC + bH * bH + turn * bC * bH;
  // G = Uᵀ U with U upper: its rows are those of M.
  const uaa = Math.sqrt(Math.max(LEAST, aa));
  const uab = ab / uaa;
  return Float64Array.of(byL, 0, 0, 0, uaa, uab, 0, 0, Math.sqrt(Math.max(LEAST, bb - uab * uab)));
}

/** C⁷ / (C⁷ + 25⁷). */
function saturation(C: number): number {
  const ratio = 25 / C;
  const squared = ratio * ratio;
  return 1 / (1 + squared * squared * squared * ratio);
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
