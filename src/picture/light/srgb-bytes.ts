/** Steps of the table: fine enough that neighbours of the darkest differ by less than one of 256. */
const STEPS = 8192;

/** Byte of sRGB by linear light, 0 to 1 in so many steps. Source: IEC 61966-2-1:1999. */
const BYTES = Uint8Array.from({ length: STEPS + 1 }, (_, step) => {
  const linear = step / STEPS;
  return Math.round(255 * (linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055));
});

/**
 * Byte of sRGB of linear light; what a screen cannot show is cut.
 *
 * @example srgbByte(0.5) // 188
 */
export function srgbByte(linear: number): number {
  return BYTES[linear <= 0 ? 0 : linear >= 1 ? STEPS : (linear * STEPS + 0.5) | 0]!;
}
