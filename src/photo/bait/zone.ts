/**
 * What of a bait is looked at: its middle, away from its edges, its ends, and the seam behind it.
 *
 * @packageDocumentation
 */
import type { Box, MeasuringCard, Place } from '../../measuring-card/measuring-card.ts';
import type { Half } from './background.ts';
import type { BaitPlace } from './bait-place.ts';
import { type Piece, placeIn } from './rectify.ts';

/** The card, and how far over it a line of sight moves for each mm that it rises. */
interface OnCard {
  readonly card: MeasuringCard;
  leanAt(place: Place): Place;
}

/** The zones of a bait, each a straight piece; one that would be too small is left out. */
export interface Zones {
  readonly white?: Piece;
  readonly black?: Piece;
}

/** Part of a bait's width that is looked at: its sides are thinner and lie in their own shade. */
const OF_WIDTH = 0.6;

/** And no further from its middle line than this part: there its outline begins. */
const WITHIN = 0.9;

/** A bait is about so high, of its half width, and no higher, mm; its top is seen this far, of that, beside the middle of its outline. */
const HIGH = 1.7;
const HIGHEST_MM = 9;
const TOP_BESIDE = 0.5;

/** Light wanders sideways in a bait, the further the thicker it is: so far from the seam, mm, little of it comes from the other half. */
const FROM_SEAM_MM = 2.5;
const FROM_SEAM_BY_HEIGHT = 0.55;

/** Of a short bait, or a chip, no more than this part of what lies on a half is kept off the seam. */
const FROM_SEAM = 0.25;

/** Nor more than this part, slant and all: a chip is flatter than a bait of its width. */
const MOST_FROM_SEAM = 0.45;

/** Ends are thinner, mm; a short bait, or a chip, has no more of an end than this part of what lies on a half. */
const FROM_END_MM = 8;
const FROM_END = 0.35;
const FROM_TOUCHED_END_MM = 1;

/** Less than this is too little to be sure of, mm. */
const SHORTEST_MM = 1.5;
const NARROWEST_MM = 1.2;

/** The window's edge may show, mm. */
const WINDOW_EDGE_MM = 0.8;

/**
 * The zones of a bait on a card.
 *
 * What is high is seen beside where it stands: of a bait on the slant its top lies beside the middle of its outline, and the seam is seen
 * through it beside where it is printed.
 */
export function zonesOf({ from, to, halfWidth, narrow, touched }: BaitPlace, { card, leanAt }: OnCard): Zones {
  const { window, seamX } = card;
  const turn = Math.atan2(to.y - from.y, to.x - from.x);
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  // Where the middle line meets the seam.
  const cos = Math.max(Math.cos(turn), 1e-3);
  const seam = (seamX - from.x) / cos;
  const high = Math.min(HIGHEST_MM, HIGH * halfWidth);
  const onLine = (along: number): Place => placeIn({ corner: from, turn, length, width: 0 }, along, 0);
  const slant = high * leanAt(onLine(seam)).x;
  const fromEnd = (onHalf: number): number =>
    touched ? FROM_TOUCHED_END_MM : Math.min(FROM_END_MM, FROM_END * onHalf);
  const piece = (half: Half): Piece | undefined => {
    const [first, last] = half === 'white' ? [0, Math.min(length, seam)] : [Math.max(0, seam), length];
    const { shift, across } = acrossOf(leanAt(onLine((first + last) / 2)), turn, narrow[half]);
    const clear = Math.max(FROM_SEAM_MM, Math.min(FROM_SEAM_BY_HEIGHT * high, FROM_SEAM * (last - first)));
    // A zone that lies askew must stay further from the seam.
    const fromSeam =
      Math.min(
        clear + Math.max(0, half === 'white' ? slant : -slant),
        Math.max(FROM_SEAM_MM, MOST_FROM_SEAM * (last - first)),
      ) /
        cos +
      (across + Math.abs(shift)) * Math.abs(Math.tan(turn));
    const margin = fromEnd(last - first);
    const start = Math.max(first + (first > 0 ? 0 : margin), half === 'black' ? seam + fromSeam : 0);
    const end = Math.min(last - (last < length ? 0 : margin), half === 'white' ? seam - fromSeam : length);
    const [top, bottom] = withinWindow(from, turn, length, [shift - across, shift + across], window);
    if (end - start < SHORTEST_MM || bottom - top < NARROWEST_MM) return undefined;
    const corner = placeIn({ corner: from, turn, length, width: 0 }, start, top);
    return { corner, turn, length: end - start, width: bottom - top };
  };
  const [white, black] = [piece('white'), piece('black')];
  return { ...(white ? { white } : {}), ...(black ? { black } : {}) };
}

/** How far beside its middle line the top of a bait is seen, to the right of its way, and how far to either side of that it is looked at. */
function acrossOf(lean: Place, turn: number, halfWidth: number): { readonly shift: number; readonly across: number } {
  const high = Math.min(HIGHEST_MM, HIGH * halfWidth);
  const beside = -TOP_BESIDE * high * (lean.y * Math.cos(turn) - lean.x * Math.sin(turn));
  const most = (WITHIN - OF_WIDTH / 2) * halfWidth;
  const shift = Math.max(-most, Math.min(most, beside));
  return { shift, across: Math.min(OF_WIDTH * halfWidth, WITHIN * halfWidth - Math.abs(shift)) };
}

/** Corners of a piece, once around. */
export function cornersOf(piece: Piece): readonly Place[] {
  const { length, width } = piece;
  return [placeIn(piece, 0, 0), placeIn(piece, length, 0), placeIn(piece, length, width), placeIn(piece, 0, width)];
}

/** What of a strip along a line, from and to so far to the right of it, stays in the window. */
function withinWindow(
  from: Place,
  turn: number,
  length: number,
  [top, bottom]: readonly [number, number],
  window: Box,
): readonly [number, number] {
  const cos = Math.max(Math.cos(turn), 1e-3);
  const ends = [from.y, from.y + length * Math.sin(turn)];
  const highest = Math.max(...ends.map((y) => window.y + WINDOW_EDGE_MM - y)) * cos;
  const lowest = Math.min(...ends.map((y) => window.y + window.height - WINDOW_EDGE_MM - y)) * cos;
  return [Math.max(top, highest), Math.min(bottom, lowest)];
}
