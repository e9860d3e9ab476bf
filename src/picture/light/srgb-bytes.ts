import { codedOfLinear } from '../../tables/srgb.ts';

/** Steps of the table: fine enough that neighbours of the darkest differ by less than one of 256. */
const STEPS = 8192;

/** Byte of sRGB by linear light, 0 to 1 in so many steps. */
const BYTES = Uint8Array.from({ length: STEPS + 1 }, (_, step) => Math.round(255 * codedOfLinear(step / STEPS)));

/**
 * Byte of sRGB of linear light; what a screen cannot show is cut.
 *
 * @example srgbByte(0.5) // 188
 */
export function srgbByte(linear: number): number {
  return BYTES[linear <= 0 ? 0 : linear >= 1 ? STEPS : (linear * STEPS + 0.5) | 0]!;
}
