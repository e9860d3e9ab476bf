/**
 * What of a bait is looked at: its middle, away from its edges, its ends, and the seam behind it.
 *
 * @packageDocumentation
 */
import type { Box, MeasuringCard, Place } from '../../measuring-card/measuring-card.ts';
import type { Half } from './background.ts';
import type { BaitPlace } from './bait-place.ts';
import { type Piece, placeIn } from './rectify.ts';

/** The zones of a bait, each a straight piece; one that would be too small is left out. */
export interface Zones {
  readonly white?: Piece;
  readonly black?: Piece;
}

/** Part of a bait's width that is looked at: its sides are thinner and lie in their own shade. */
const OF_WIDTH = 0.6;

/** Light wanders sideways in a bait: so far from the seam none comes from the other half, mm. */
const FROM_SEAM_MM = 2.5;

/** Ends are thinner, mm; a short bait, or a chip, has no more of an end than this part of what lies on a half. */
const FROM_END_MM = 8;
const FROM_END = 0.35;
const FROM_TOUCHED_END_MM = 1;

/** Less than this is too little to be sure of, mm. */
const SHORTEST_MM = 1.5;
const NARROWEST_MM = 1.2;

/** The window's edge may show, mm. */
const WINDOW_EDGE_MM = 0.8;

/** The zones of a bait on a card. */
export function zonesOf({ from, to, narrow, touched }: BaitPlace, { window, seamX }: MeasuringCard): Zones {
  const turn = Math.atan2(to.y - from.y, to.x - from.x);
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  // Where the middle line meets the seam.
  const cos = Math.max(Math.cos(turn), 1e-3);
  const seam = (seamX - from.x) / cos;
  const fromEnd = (onHalf: number): number =>
    touched ? FROM_TOUCHED_END_MM : Math.min(FROM_END_MM, FROM_END * onHalf);
  const piece = (half: Half): Piece | undefined => {
    const across = acrossWithin(from, turn, length, OF_WIDTH * narrow[half], window);
    // A zone that lies askew must stay further from the seam.
    const fromSeam = FROM_SEAM_MM / cos + across * Math.abs(Math.tan(turn));
    const [first, last] = half === 'white' ? [0, Math.min(length, seam)] : [Math.max(0, seam), length];
    const margin = fromEnd(last - first);
    const start = Math.max(first + (first > 0 ? 0 : margin), half === 'black' ? seam + fromSeam : 0);
    const end = Math.min(last - (last < length ? 0 : margin), half === 'white' ? seam - fromSeam : length);
    if (end - start < SHORTEST_MM || 2 * across < NARROWEST_MM) return undefined;
    const corner = placeIn({ corner: from, turn, length, width: 0 }, start, -across);
    return { corner, turn, length: end - start, width: 2 * across };
  };
  const [white, black] = [piece('white'), piece('black')];
  return { ...(white ? { white } : {}), ...(black ? { black } : {}) };
}

/** Corners of a piece, once around. */
export function cornersOf(piece: Piece): readonly Place[] {
  const { length, width } = piece;
  return [placeIn(piece, 0, 0), placeIn(piece, length, 0), placeIn(piece, length, width), placeIn(piece, 0, width)];
}

/** How far to either side of a line a zone may go, up to `most`, to stay in the window. */
function acrossWithin(from: Place, turn: number, length: number, most: number, window: Box): number {
  const cos = Math.max(Math.cos(turn), 1e-3);
  const room = (y: number): number =>
    Math.min(y - window.y - WINDOW_EDGE_MM, window.y + window.height - WINDOW_EDGE_MM - y);
  return Math.min(most, room(from.y) * cos, room(from.y + length * Math.sin(turn)) * cos);
}
