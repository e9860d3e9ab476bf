/**
 * CIEDE2000 colour difference, kL = kC = kH = 1.
 *
 * Source: ISO/CIE 11664-6; G. Sharma, W. Wu & E. N. Dalal, Color Res. Appl. 30:21 (2005), whose equation numbers are
 * given below.
 *
 * Written without hue angles where vectors do: the hue difference and the mean hue come from the cross product and the sum
 * of the two unit vectors. That is exact where the paper's angles hang on the last bit of an arctangent (opposite hues), and
 * faster.
 */
import type { Lab } from './cielab.ts';

/** The terms of a difference, each already divided by its weight (SL, SC, SH), signed from the first colour to the second. */
export interface DeltaE00Parts {
  /** Lighter (+) or darker (−). */
  readonly dL: number;
  /** Stronger (+) or greyer (−). */
  readonly dC: number;
  /** Hue turned counter-clockwise, from red toward yellow (+), or clockwise (−). */
  readonly dH: number;
  /** What the rotation term in the blues adds to the sum of squares: dL² + dC² + dH² + rotation = total². */
  readonly rotation: number;
  readonly total: number;
}

const RADIANS = Math.PI / 180;
const COS_30 = Math.cos(30 * RADIANS);
const SIN_30 = Math.sin(30 * RADIANS);
const COS_6 = Math.cos(6 * RADIANS);
const SIN_6 = Math.sin(6 * RADIANS);
const COS_63 = Math.cos(63 * RADIANS);
const SIN_63 = Math.sin(63 * RADIANS);

/** Two opposite unit vectors may add up to this for rounding alone: a direction without meaning. */
const ROUNDING = 1e-15;

/** Least product of chromas with hues in it: below, squares would run out of digits. */
const GREY = 1e-100;

/**
 * CIEDE2000 difference of two colours. One is about the least difference that is seen side by side.
 *
 * @example deltaE00({ L: 50, a: 2.5, b: 0 }, { L: 73, a: 25, b: -18 }) // 27.1492, to 4 decimals
 */
export function deltaE00(x: Lab, y: Lab): number {
  return difference(x, y, undefined);
}

/**
 * CIEDE2000 difference, with the share of lightness, chroma and hue in it.
 *
 * @example deltaE00Parts({ L: 50, a: 0, b: 0 }, { L: 60, a: 0, b: 0 }).dC // 0
 */
export function deltaE00Parts(x: Lab, y: Lab): DeltaE00Parts {
  const parts = { dL: 0, dC: 0, dH: 0, rotation: 0, total: 0 };
  difference(x, y, parts);
  return parts;
}

function difference(
  x: Lab,
  y: Lab,
  parts: { dL: number; dC: number; dH: number; rotation: number; total: number } | undefined,
): number {
  const b1 = x.b;
  const b2 = y.b;
  // Equations 2–6: a stretched near the grey axis.
  const meanCab = (Math.sqrt(x.a * x.a + b1 * b1) + Math.sqrt(y.a * y.a + b2 * b2)) / 2;
  const stretch = 1.5 - 0.5 * Math.sqrt(saturation(meanCab));
  const a1 = x.a * stretch;
  const a2 = y.a * stretch;
  const C1 = Math.sqrt(a1 * a1 + b1 * b1);
  const C2 = Math.sqrt(a2 * a2 + b2 * b2);

  const dL = y.L - x.L;
  const dC = C2 - C1;
  const product = C1 * C2;

  // Equations 10, 11 and 14. dH = 2 √(C1 C2) sin(dh/2); sin(dh/2) from the cross product or, past a right angle, from the
  // dot product, whichever loses no digits.
  let dH = 0;
  let cosH = 1;
  let sinH = 0;
  if (product > GREY) {
    const dot = a1 * a2 + b1 * b2;
    const cross = a1 * b2 - a2 * b1;
    let sumA = a1 / C1 + a2 / C2;
    let sumB = b1 / C1 + b2 / C2;
    if (dot >= 0) {
      dH = cross * Math.sqrt(2 / (product + dot));
    } else {
      // For opposite hues the paper takes h2 − h1 as it stands, and the mean halfway between: a quarter turn from each.
      const forward = cross === 0 ? b1 > 0 || (b1 === 0 && a1 > 0) : cross > 0;
      dH = (forward ? 1 : -1) * Math.sqrt(2 * (product - dot));
      if (cross === 0 || Math.abs(sumA) + Math.abs(sumB) < ROUNDING) {
        sumA = forward ? -b1 : b1;
        sumB = forward ? a1 : -a1;
      }
    }
    const length = Math.sqrt(sumA * sumA + sumB * sumB);
    cosH = sumA / length;
    sinH = sumB / length;
  } else if (C1 + C2 > 0) {
    // One of the two is grey, and the mean hue is the other's.
    cosH = (a1 + a2) / (C1 + C2);
    sinH = (b1 + b2) / (C1 + C2);
  }

  // Equation 15, its cosines from those of one angle.
  const cos2 = 2 * cosH * cosH - 1;
  const sin2 = 2 * sinH * cosH;
  const cos3 = cosH * cos2 - sinH * sin2;
  const sin3 = sinH * cos2 + cosH * sin2;
  const cos4 = 2 * cos2 * cos2 - 1;
  const sin4 = 2 * sin2 * cos2;
  const T =
    1 -
    0.17 * (cosH * COS_30 + sinH * SIN_30) +
    0.24 * cos2 +
    0.32 * (cos3 * COS_6 - sin3 * SIN_6) -
    0.2 * (cos4 * COS_63 + sin4 * SIN_63);

  // Equations 16–21.
  const meanC = (C1 + C2) / 2;
  const fromMiddle = (x.L + y.L) / 2 - 50;
  const squared = fromMiddle * fromMiddle;
  const termL = dL / (1 + (0.015 * squared) / Math.sqrt(20 + squared));
  const termC = dC / (1 + 0.045 * meanC);
  const termH = dH / (1 + 0.015 * meanC * T);
  let rotation = 0;
  if (termC !== 0 && termH !== 0) {
    const hue = Math.atan2(sinH, cosH) / RADIANS;
    const bell = ((hue < 0 ? hue + 360 : hue) - 275) / 25;
    const turn = Math.sin(60 * RADIANS * Math.exp(-bell * bell));
    rotation = -2 * Math.sqrt(saturation(meanC)) * turn * termC * termH;
  }
  // The rotation can outweigh rounding only, never the squares; the root of −1e-30 would still be NaN.
  const total = Math.sqrt(Math.max(0, termL * termL + termC * termC + termH * termH + rotation));
  if (parts) {
    parts.dL = termL;
    parts.dC = termC;
    parts.dH = termH;
    parts.rotation = rotation;
    parts.total = total;
  }
  return total;
}

/** C⁷ / (C⁷ + 25⁷), in the form that neither overflows nor divides 0 by 0. */
function saturation(C: number): number {
  const ratio = 25 / C;
  const squared = ratio * ratio;
  return 1 / (1 + squared * squared * squared * ratio);
}
