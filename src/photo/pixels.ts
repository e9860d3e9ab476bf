/**
 * Pixels as a canvas or a decoder gives them, and the linear light they stand for.
 *
 * @packageDocumentation
 */
import { modeLrgb, modeP3, modeRgb, modeXyz65, useMode } from 'culori/fn';

useMode(modeRgb);
useMode(modeXyz65);
useMode(modeP3);
const linearFrom = useMode(modeLrgb);

/** Pixels as a canvas has them: rows from the top, upright, four bytes each (red, green, blue, opacity). */
export interface Pixels {
  readonly data: ArrayLike<number>;
  readonly width: number;
  readonly height: number;
  /** What the bytes mean; sRGB if left out. */
  readonly space?: 'srgb' | 'display-p3';
}

/** Red, green and blue in linear light, with the primaries of sRGB: 0..1, of a colour outside sRGB also beyond. */
export interface LinearRgb {
  readonly r: number;
  readonly g: number;
  readonly b: number;
}

/** The linear light of each byte: sRGB and Display P3 have one curve (IEC 61966-2-1; SMPTE EG 432-1 has the primaries). */
export const LIGHT_OF_BYTE: Float64Array = Float64Array.from(
  { length: 256 },
  (_, byte) => linearFrom({ mode: 'rgb', r: byte / 255, g: 0, b: 0 }).r,
);

// Full light of one primary of P3 in those of sRGB.
const [P3_RED, P3_GREEN, P3_BLUE] = [
  linearFrom({ mode: 'p3', r: 1, g: 0, b: 0 }),
  linearFrom({ mode: 'p3', r: 0, g: 1, b: 0 }),
  linearFrom({ mode: 'p3', r: 0, g: 0, b: 1 }),
] as const;

/**
 * The same light by the primaries of sRGB, of red, green and blue by those of the pixels' own space. Exact for means of
 * pixels as for pixels, since it is linear.
 */
export function inSrgbPrimaries({ r, g, b }: LinearRgb, space: Pixels['space']): LinearRgb {
  if (space !== 'display-p3') return { r, g, b };
  return {
    r: P3_RED.r * r + P3_GREEN.r * g + P3_BLUE.r * b,
    g: P3_RED.g * r + P3_GREEN.g * g + P3_BLUE.g * b,
    b: P3_RED.b * r + P3_GREEN.b * g + P3_BLUE.b * b,
  };
}

/** From this byte on a channel is at the camera's end, and may be anything. */
export const CLIPPED_BYTE = 253;

/** Luminance of linear light: IEC 61966-2-1. */
export function luminanceOf({ r, g, b }: LinearRgb): number {
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/**
 * The light of one pixel.
 *
 * @param column, row from the left top corner, whole numbers within the photo
 */
export function lightOfPixel({ data, width, space }: Pixels, column: number, row: number): LinearRgb {
  const at = 4 * (row * width + column);
  const own = { r: LIGHT_OF_BYTE[data[at]!]!, g: LIGHT_OF_BYTE[data[at + 1]!]!, b: LIGHT_OF_BYTE[data[at + 2]!]! };
  return inSrgbPrimaries(own, space);
}
