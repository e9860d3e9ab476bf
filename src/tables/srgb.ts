/**
 * Chromaticity of the white of sRGB.
 *
 * Source: IEC 61966-2-1:1999, table 1 (CIE standard illuminant D65, rounded to four digits there).
 * Checked: `tests/optics/display.test.ts` derives the matrix from this white and the primaries and compares it with two
 * colour libraries; first on 2026-11-25.
 */
export const SRGB_WHITE: { readonly x: number; readonly y: number } = { x: 0.3127, y: 0.329 };

/** Linear light of a coded value of sRGB, both 0 to 1. Source: IEC 61966-2-1:1999. */
export function linearOfCoded(coded: number): number {
  return coded <= 0.04045 ? coded / 12.92 : ((coded + 0.055) / 1.055) ** 2.4;
}

/** Coded value of sRGB for linear light, both 0 to 1: the inverse of `linearOfCoded`. */
export function codedOfLinear(linear: number): number {
  return linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;
}
