/**
 * Chromaticity of the white of sRGB.
 *
 * Source: IEC 61966-2-1:1999, table 1 (CIE standard illuminant D65, rounded to four digits there).
 * Checked: `tests/optics/display.test.ts` derives the matrix from this white and the primaries and compares it with two
 * colour libraries; first on 2026-11-25.
 */
export const SRGB_WHITE: { readonly x: number; readonly y: number } = { x: 0.3127, y: 0.329 };
