import type { MeasuringCard, Place } from '../../measuring-card/measuring-card.ts';

/** A point of a straight printed edge, mm. */
export interface EdgePoint {
  readonly place: Place;
  /** Across the edge, toward the dark side, of length 1. */
  readonly across: Place;
}

/** Points an edge, spread evenly, its ends included. */
const POINTS = 9;

/** The points of all edges of a card. */
export function edgePoints({ edges }: MeasuringCard): readonly EdgePoint[] {
  return edges.flatMap(([from, to]) => {
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    // To the right of whoever walks from the first end to the second, where y points down.
    const across = { x: -(to.y - from.y) / length, y: (to.x - from.x) / length };
    return Array.from({ length: POINTS }, (_, i): EdgePoint => {
      const part = i / (POINTS - 1);
      return { place: { x: from.x + part * (to.x - from.x), y: from.y + part * (to.y - from.y) }, across };
    });
  });
}
