import { type Box, contains, grown, type Place } from './box.ts';

/** How wide a spot is that is read at once, mm. */
export const SPOT_MM = 2;

/** How far a spot keeps from what is printed, mm: dots spread, and a place is known to some hundredths. */
const CLEAR_MM = 0.75;

/** Middles of the spots of a card where paper is bare: a grid, without what is taken. `width` and `height` in mm. */
export function bareSpots(card: Pick<Box, 'width' | 'height'>, taken: readonly Box[], pitch: number): readonly Place[] {
  const keptOff = taken.map((box) => grown(box, SPOT_MM / 2 + CLEAR_MM));
  const spots: Place[] = [];
  for (const y of stations(card.height, pitch)) {
    for (const x of stations(card.width, pitch)) {
      if (!keptOff.some((box) => contains(box, { x, y }))) spots.push({ x, y });
    }
  }
  return spots;
}

/** Where the card is cut, paper may be missing, and what lies behind it shows: spots begin this far inside, mm. */
const FROM_EDGE = 3;

function stations(length: number, pitch: number): readonly number[] {
  const count = Math.floor((length - 2 * FROM_EDGE) / pitch);
  const first = (length - count * pitch) / 2;
  return Array.from({ length: count + 1 }, (_, index) => first + index * pitch);
}
