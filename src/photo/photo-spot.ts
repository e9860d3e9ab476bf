/**
 * A colour out of a photo: the mean of a spot, and what it is under the light that a white card in the same photo tells of.
 *
 * @packageDocumentation
 */
import { formatHex, modeLrgb, modeRgb, useMode } from 'culori/fn';
import { WHITE_BACKING } from '../tables/backings.ts';
import { type LinearRgb, lightOfPixel, type Pixels } from './pixels.ts';

useMode(modeLrgb);
const rgbFrom = useMode(modeRgb);

/** What a card must throw back at least to tell anything of the light. */
const DARKEST_CARD = 1e-3;

/** Part of the pixels that is left out at either end: highlights of the gloss, and dust. Chosen by eye, no source. */
const TRIMMED = 0.1;

/**
 * The colour of a spot: the mean, in linear light, of its pixels without the brightest and the darkest tenth.
 *
 * @param x, y middle of the spot, pixels from the left and from the top
 * @param radius pixels; at least the pixel in the middle counts
 *
 * Throws: RangeError if no pixel of the photo lies in the spot.
 */
export function spotOf(pixels: Pixels, x: number, y: number, radius: number): LinearRgb {
  const { width, height } = pixels;
  const reach = Math.max(radius, 0.5);
  const seen: (LinearRgb & { readonly bright: number })[] = [];
  for (let row = Math.max(0, Math.floor(y - reach)); row <= Math.min(height - 1, y + reach); row += 1) {
    for (let column = Math.max(0, Math.floor(x - reach)); column <= Math.min(width - 1, x + reach); column += 1) {
      if (Math.hypot(column + 0.5 - x, row + 0.5 - y) > reach + 0.5) continue;
      const { r, g, b } = lightOfPixel(pixels, column, row);
      seen.push({ r, g, b, bright: r + g + b });
    }
  }
  if (seen.length === 0)
    throw new RangeError(`Spot at ${x}, ${y} lies outside the photo of ${width} × ${height} pixels`);
  seen.sort((one, other) => one.bright - other.bright);
  const cut = Math.floor(seen.length * TRIMMED);
  const kept = seen.slice(cut, seen.length - cut);
  const mean = (channel: 'r' | 'g' | 'b'): number => kept.reduce((sum, each) => sum + each[channel], 0) / kept.length;
  return { r: mean('r'), g: mean('g'), b: mean('b') };
}

/**
 * `#rrggbb` of a spot. With the white card of the same photo, each channel is scaled so that the card comes out as white
 * as the book's (scaling by channel in linear light: common practice, no source).
 */
export function hexOfSpot(spot: LinearRgb, card?: LinearRgb): string {
  const under = (channel: 'r' | 'g' | 'b'): number =>
    card === undefined ? spot[channel] : (spot[channel] * WHITE_BACKING) / Math.max(card[channel], DARKEST_CARD);
  return formatHex(rgbFrom({ mode: 'lrgb', r: under('r'), g: under('g'), b: under('b') }));
}
