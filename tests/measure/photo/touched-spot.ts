import { hexOfSpot, spotOf } from '../../../src/photo/photo-spot.ts';
import type { SimulatedPhoto } from '../../photo/simulated/simulated-photo.ts';
import { colourOfHex, difference } from '../foreign/physics/eye.ts';
import type { Outcome } from './photo-result.ts';

/** As a spot on the page is: part of the photo's shorter side. */
const SPOT_RADIUS = 0.015;

/** How far the middle of either half is touched from the seam, mm; and where paper is touched, from the card's middle. */
const FROM_SEAM = 15;
const PAPER = [-25, -11] as const;

/** What a touched spot in either half says, with a touched spot of bare paper for white: the way without a card. */
export function touchedSpot({ pixels, scene, truth }: SimulatedPhoto): Outcome {
  const { lens, print, card, bait } = scene;
  const middle = [(card.width * print.scale) / 2, (card.height * print.scale) / 2] as const;
  const radius = SPOT_RADIUS * Math.min(pixels.width, pixels.height);
  const spotAt = (u: number, v: number) => spotOf(pixels, u, v, radius);
  const paper = spotAt(...lens.toPixel(middle[0] + PAPER[0], middle[1] + PAPER[1]));
  const seenAt = (side: -1 | 1) => {
    const along = middle[0] + side * FROM_SEAM - bait.shape.at[0];
    const [x, y] = [along * Math.cos(bait.shape.turned), along * Math.sin(bait.shape.turned)];
    const spot = spotAt(...lens.toPixel(bait.shape.at[0] + x, bait.shape.at[1] + y, bait.shape.height(along, 0)));
    return colourOfHex(hexOfSpot(spot, paper));
  };
  return { white: difference(seenAt(-1), truth.overWhite), black: difference(seenAt(1), truth.overBlack) };
}
