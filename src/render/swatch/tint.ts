/** What the drawings do to colours: flat greys, and the lighter and darker faces of a flake. */
import { linearOfCoded } from '../../tables/srgb.ts';

/** Colours of the bare backings: reflectance 0.90 and 0.03 as sRGB (see `tables/backings.ts`; a test compares them). */
export const WHITE_CARD = '#f3f3f3';
export const BLACK_CARD = '#303030';

const channels = (hex: string): readonly [number, number, number] => {
  const value = Number.parseInt(hex.slice(1), 16);
  return [value >> 16, (value >> 8) & 255, value & 255];
};

/** A colour between two, part 0 the first and 1 the second, in coded sRGB: for the faces of a flake, never for plastics. */
export function tint(hex: string, towards: string, part: number): string {
  const [from, to] = [channels(hex), channels(towards)];
  const mixed = from.map((channel, at) => Math.round(channel + (to[at]! - channel) * part));
  return `#${mixed.map((channel) => channel.toString(16).padStart(2, '0')).join('')}`;
}

/**
 * Relative luminance of a screen colour, 0..1.
 *
 * Source: WCAG 2.2, relative luminance.
 */
export function luminance(hex: string): number {
  const [red, green, blue] = channels(hex).map((channel) => linearOfCoded(channel / 255)) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
