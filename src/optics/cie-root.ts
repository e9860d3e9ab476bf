/**
 * The compression of CIELAB: a cube root that runs on as a straight line where it is dark.
 *
 * Source: ISO/CIE 11664-4, with the limits as the fractions that they stand for, 216/24389 and 24389/27.
 */
const EPSILON = 216 / 24389;
const KAPPA = 24389 / 27;

/**
 * f of CIELAB, of a ratio to white.
 *
 * @example cieRoot(1) // 1
 */
export function cieRoot(ratio: number): number {
  return ratio > EPSILON ? Math.cbrt(ratio) : (KAPPA * ratio + 16) / 116;
}

/**
 * Derivative of `cieRoot`.
 *
 * @example cieRootSlope(1) // 0.3333333333333333
 */
export function cieRootSlope(ratio: number): number {
  if (!(ratio > EPSILON)) return KAPPA / 116;
  const root = Math.cbrt(ratio);
  return 1 / (3 * root * root);
}

/**
 * Inverse of `cieRoot`.
 *
 * @example cieCube(cieRoot(0.18)) // 0.18
 */
export function cieCube(root: number): number {
  const cube = root * root * root;
  return cube > EPSILON ? cube : (116 * root - 16) / KAPPA;
}
