/**
 * How far a predicted spectrum is from a measured one, for an eye and for a spectrophotometer.
 *
 * For an eye: ΔE00² about the measured colour, as a quadratic form of the Lab difference (exact for small differences, and
 * smooth everywhere, which ΔE00 itself is not). For the instrument: the difference in each band on the scale of lightness,
 * 116 ∛R, so that dark bands count as much as they are seen.
 */
import { cieRoot, cieRootSlope } from '../cie-root.ts';
import type { ObserverWeights } from '../tristimulus.ts';

/** Lab and its derivatives by the reflectance of each band. */
export interface LabSlopes {
  readonly lab: Float64Array;
  /** dL, da and db by band, one after the other. */
  readonly byBand: readonly [Float64Array, Float64Array, Float64Array];
}

/** Space for `labSlopes`. */
export function labSlopesSpace(bands: number): LabSlopes {
  return {
    lab: new Float64Array(3),
    byBand: [new Float64Array(bands), new Float64Array(bands), new Float64Array(bands)],
  };
}

/** Writes Lab of a spectrum, and its derivatives. */
export function labSlopes(R: ArrayLike<number>, weights: ObserverWeights, out: LabSlopes): void {
  const { x, y, z, white } = weights;
  let X = 0;
  let Y = 0;
  let Z = 0;
  for (let band = 0; band < x.length; band++) {
    X += x[band]! * R[band]!;
    Y += y[band]! * R[band]!;
    Z += z[band]! * R[band]!;
  }
  const fx = cieRoot(X / white.X);
  const fy = cieRoot(Y / white.Y);
  const fz = cieRoot(Z / white.Z);
  out.lab[0] = 116 * fy - 16;
  out.lab[1] = 500 * (fx - fy);
  out.lab[2] = 200 * (fy - fz);
  const sx = cieRootSlope(X / white.X) / white.X;
  const sy = cieRootSlope(Y / white.Y) / white.Y;
  const sz = cieRootSlope(Z / white.Z) / white.Z;
  const [byL, byA, byB] = out.byBand;
  for (let band = 0; band < x.length; band++) {
    byL[band] = 116 * sy * y[band]!;
    byA[band] = 500 * (sx * x[band]! - sy * y[band]!);
    byB[band] = 200 * (sy * y[band]! - sz * z[band]!);
  }
}

/** What each band counts in the misfit for the instrument: half evenly, half by what the eye makes of it. */
export function bandWeights(weights: ObserverWeights): Float64Array {
  const { x, y, z, white } = weights;
  const total = white.X + white.Y + white.Z;
  return Float64Array.from(x, (value, band) => 0.5 / x.length + (0.5 * (value + y[band]! + z[band]!)) / total);
}

/** Below this reflectance the scale of lightness stops getting steeper. */
const DARKEST = 1e-4;

/** 116 ∛R. */
export function bandLightness(R: number): number {
  return 116 * Math.cbrt(Math.max(DARKEST, R));
}

/** Derivative of `bandLightness`. */
export function bandLightnessSlope(R: number): number {
  return R < DARKEST ? 0 : 116 / (3 * Math.cbrt(R) ** 2);
}
