/**
 * A smooth reflectance for a colour of which only three numbers are known.
 *
 * Of all reflectances R = (1 + tanh z)/2 that show the colour under D65, the one whose z has the least sum of squared
 * steps from band to band: always between 0 and 1, and as flat as the colour lets it be.
 * Source: S. A. Burns, "Numerical methods for smooth and realistic reflectance reconstruction", Color Res. Appl. 45:8
 * (2020), the method of least hyperbolic tangent slope squared; solved here by Newton's method on Lagrange's equations.
 */
import { tristimulusFromHex } from './display.ts';
import { solveLinear } from './linear-system.ts';
import { BAND_COUNT, type Spectrum } from './spectrum.ts';
import { bookWeights, type Tristimulus } from './tristimulus.ts';

/**
 * The colour is first drawn by this share toward middle grey, which keeps black and white off the limits 0 and 1 that no
 * reflectance here reaches. It moves linear RGB by no more than this.
 */
const MARGIN = 1e-4;

const UNKNOWNS = BAND_COUNT + 3;
const MOST_STEPS = 40;
const CLOSE_ENOUGH = 1e-10;

/**
 * A smooth reflectance that shows the given colour under D65.
 *
 * Returns reflectances in (0, 1). For every colour of the screen the round trip is within 1e-3 in linear RGB. A colour
 * that no reflectance shows (brighter than its saturation allows) is drawn toward the grey of its own Y until one does.
 * Throws: RangeError if a number is not finite.
 *
 * @example tristimulus(reflectanceFromTristimulus({ X: 0.2, Y: 0.2, Z: 0.2 })).Y // 0.2001, to 4 decimals
 */
export function reflectanceFromTristimulus(XYZ: Tristimulus): Spectrum {
  const { white } = bookWeights('D65');
  const Y = Math.min(1, Math.max(0, XYZ.Y));
  if (!(Number.isFinite(XYZ.X) && Number.isFinite(XYZ.Y) && Number.isFinite(XYZ.Z))) {
    throw new RangeError(`Tristimulus values are ${XYZ.X}, ${XYZ.Y}, ${XYZ.Z}; give finite numbers, Y of white = 1`);
  }
  const toward = (saturation: number): Spectrum | undefined =>
    flattest([
      drawnIn(saturation * XYZ.X + (1 - saturation) * Y * white.X, white.X),
      drawnIn(saturation * XYZ.Y + (1 - saturation) * Y, 1),
      drawnIn(saturation * XYZ.Z + (1 - saturation) * Y * white.Z, white.Z),
    ]);
  const exact = toward(1);
  if (exact) return exact;
  let best = toward(0) ?? new Float64Array(BAND_COUNT).fill(drawnIn(Y, 1));
  let possible = 0;
  let impossible = 1;
  while (impossible - possible > 1e-3) {
    const middle = (possible + impossible) / 2;
    const found = toward(middle);
    if (found) {
      best = found;
      possible = middle;
    } else impossible = middle;
  }
  return best;
}

/**
 * A smooth reflectance that shows the given screen colour under D65.
 *
 * Throws: RangeError if the text is not `#rgb` or `#rrggbb`.
 *
 * @example hexOf(reflectanceFromHex('#8a5a2b')).hex // '#8a5a2b'
 */
export function reflectanceFromHex(hex: string): Spectrum {
  return reflectanceFromTristimulus(tristimulusFromHex(hex));
}

function drawnIn(value: number, white: number): number {
  return value * (1 - 2 * MARGIN) + MARGIN * white;
}

/**
 * Newton's method for: z flattest, sums of weights × R = target. Unknown are the 36 z and the three multipliers; the
 * equations are the gradient of ½ Σ (z_i+1 − z_i)² + Σ λ_k (W_k · R − target_k). Undefined if it doesn't settle.
 */
function flattest(target: readonly [number, number, number]): Spectrum | undefined {
  const { x, y, z: zWeights } = bookWeights('D65');
  const weights = [x, y, zWeights] as const;
  const unknown = new Float64Array(UNKNOWNS);
  const R = new Float64Array(BAND_COUNT).fill(0.5);
  const matrix = new Float64Array(UNKNOWNS * UNKNOWNS);
  const step = new Float64Array(UNKNOWNS);
  for (let count = 0; count < MOST_STEPS; count++) {
    matrix.fill(0);
    for (let k = 0; k < 3; k++) step[BAND_COUNT + k] = target[k]!;
    for (let i = 0; i < BAND_COUNT; i++) {
      const slope = 2 * R[i]! * (1 - R[i]!); // dR/dz
      const bend = 2 * slope * (1 - 2 * R[i]!); // d²R/dz²
      let gradient = 0;
      let curvature = 0;
      for (const j of [i - 1, i + 1]) {
        if (j < 0 || j >= BAND_COUNT) continue;
        gradient += unknown[i]! - unknown[j]!;
        curvature += 1;
        matrix[i * UNKNOWNS + j] = -1;
      }
      for (let k = 0; k < 3; k++) {
        const weight = weights[k]![i]!;
        const multiplier = unknown[BAND_COUNT + k]!;
        gradient += multiplier * weight * slope;
        curvature += multiplier * weight * bend;
        matrix[i * UNKNOWNS + BAND_COUNT + k] = weight * slope;
        matrix[(BAND_COUNT + k) * UNKNOWNS + i] = weight * slope;
        step[BAND_COUNT + k]! -= weight * R[i]!;
      }
      matrix[i * UNKNOWNS + i] = curvature;
      step[i] = -gradient;
    }
    if (step.every((error) => Math.abs(error) < CLOSE_ENOUGH)) return R;
    if (!solveLinear(matrix, step)) return undefined;
    for (let i = 0; i < UNKNOWNS; i++) unknown[i]! += step[i]!;
    for (let i = 0; i < BAND_COUNT; i++) {
      R[i] = 1 / (1 + Math.exp(-2 * unknown[i]!));
      if (!(R[i]! > 0 && R[i]! < 1)) return undefined;
    }
  }
  return undefined;
}
