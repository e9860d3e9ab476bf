/**
 * Chromatic adaptation: how a colour seen under one light looks to an eye that has grown used to another.
 *
 * Source: K. M. Lam, PhD thesis, University of Bradford (1985); the matrix as printed in ICC.1:2022, annex E.
 */
import type { Tristimulus } from './tristimulus.ts';

type Cones = [number, number, number];

/**
 * The tristimulus values that look under one white as those given look under another (linear Bradford).
 *
 * Units: all on the scale where Y of white is 1.
 *
 * @example adaptTristimulus(whitePoint('A'), whitePoint('A'), whitePoint('D65')) // whitePoint('D65'), to 7 digits
 */
export function adaptTristimulus(XYZ: Tristimulus, from: Tristimulus, to: Tristimulus): Tristimulus {
  const colour = cones(XYZ);
  const source = cones(from);
  const target = cones(to);
  const [l, m, s] = colour.map((response, i) => (response * target[i]!) / source[i]!) as Cones;
  return {
    X: 0.9869929 * l - 0.1470543 * m + 0.1599627 * s,
    Y: 0.4323053 * l + 0.5183603 * m + 0.0492912 * s,
    Z: -0.0085287 * l + 0.0400428 * m + 0.9684867 * s,
  };
}

function cones({ X, Y, Z }: Tristimulus): Cones {
  return [
    0.8951 * X + 0.2664 * Y - 0.1614 * Z,
    -0.7502 * X + 1.7135 * Y + 0.0367 * Z,
    0.0389 * X - 0.0685 * Y + 1.0296 * Z,
  ];
}
