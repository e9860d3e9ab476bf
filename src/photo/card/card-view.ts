import type { Place } from '../../measuring-card/measuring-card.ts';
import { type Homography, inverse, mapped } from './homography.ts';

/** How a camera sees a card: a homography from mm to pixels, and how its lens bends that. */
export interface CardView {
  readonly H: Homography;
  /** Of the lens: what lies r half diagonals from the middle comes to lie r (1 + k1 r²) from it. */
  readonly k1: number;
  readonly width: number;
  readonly height: number;
}

/** Where a place of the card is in the photo, pixels from its left top corner. */
export function toPixel({ H, k1, width, height }: CardView, place: Place): Place {
  const { x, y } = mapped(H, place);
  const [fromX, fromY] = [x - width / 2, y - height / 2];
  const stretch = 1 + (k1 * (fromX * fromX + fromY * fromY)) / halfDiagonalSquared(width, height);
  return { x: width / 2 + fromX * stretch, y: height / 2 + fromY * stretch };
}

/** The lens's bend is slight, and this many rounds leave nothing of it that a pixel shows. */
const ROUNDS = 8;

/** Where a pixel of the photo lies on the card: the inverse of `toPixel`. */
export function toPlace({ H, k1, width, height }: CardView, pixel: Place): Place {
  const [fromX, fromY] = [pixel.x - width / 2, pixel.y - height / 2];
  const square = halfDiagonalSquared(width, height);
  let stretch = 1;
  for (let round = 0; round < ROUNDS; round++) {
    stretch = 1 + (k1 * (fromX * fromX + fromY * fromY)) / (stretch * stretch * square);
  }
  return mapped(inverse(H), { x: width / 2 + fromX / stretch, y: height / 2 + fromY / stretch });
}

/** Pixels a mm around a place: the root of the area of a square of 1 mm. */
export function pixelsPerMm(view: CardView, { x, y }: Place): number {
  const along = difference(toPixel(view, { x: x + 0.5, y }), toPixel(view, { x: x - 0.5, y }));
  const down = difference(toPixel(view, { x, y: y + 0.5 }), toPixel(view, { x, y: y - 0.5 }));
  return Math.sqrt(Math.abs(along.x * down.y - along.y * down.x));
}

function difference(one: Place, other: Place): Place {
  return { x: one.x - other.x, y: one.y - other.y };
}

function halfDiagonalSquared(width: number, height: number): number {
  return (width * width + height * height) / 4;
}
