import type { Place } from '../../measuring-card/measuring-card.ts';
import { inSrgbPrimaries, LIGHT_OF_BYTE, type LinearRgb, type Pixels } from '../pixels.ts';
import { type CardView, pixelsPerMm, toPixel } from './card-view.ts';

/** So many pixels along each side of a spot tell enough of it. */
const ALONG = 12;

/**
 * The mean light of an upright square around a place of the card, of `sideMm` as it is seen there; undefined if some of it lies outside the
 * photo. Of large spots a part of the pixels is read, evenly spread.
 */
export function spotLight(pixels: Pixels, view: CardView, place: Place, sideMm: number): LinearRgb | undefined {
  const { data, width, height, space } = pixels;
  const middle = toPixel(view, place);
  // Turned by 45°, a square within the spot's circle is this much smaller.
  const half = (sideMm * pixelsPerMm(view, place)) / 2 / Math.SQRT2;
  const stride = Math.max(1, Math.round((2 * half) / ALONG));
  const [left, top] = [Math.round(middle.x - half), Math.round(middle.y - half)];
  const [right, bottom] = [
    Math.max(left, Math.round(middle.x + half) - 1),
    Math.max(top, Math.round(middle.y + half) - 1),
  ];
  if (!(left >= 0 && top >= 0 && right < width && bottom < height)) return undefined;
  let [r, g, b, count] = [0, 0, 0, 0];
  for (let row = top; row <= bottom; row += stride) {
    for (let column = left; column <= right; column += stride) {
      const at = 4 * (row * width + column);
      r += LIGHT_OF_BYTE[data[at]!]!;
      g += LIGHT_OF_BYTE[data[at + 1]!]!;
      b += LIGHT_OF_BYTE[data[at + 2]!]!;
      count += 1;
    }
  }
  return inSrgbPrimaries({ r: r / count, g: g / count, b: b / count }, space);
}
