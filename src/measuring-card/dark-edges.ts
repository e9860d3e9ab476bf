import type { Box, Place } from './box.ts';

/** A straight printed edge. Whoever walks from the first place to the second has the dark side at the right hand. */
export type Edge = readonly [Place, Place];

/** How far an edge stays from the corners of what it belongs to, mm: a line across it then meets nothing else. */
const FROM_CORNER = 1;

/** The edge along the top of a dark box. */
export function topEdge({ x, y, width }: Box): Edge {
  return [
    { x: x + FROM_CORNER, y },
    { x: x + width - FROM_CORNER, y },
  ];
}

/** The edge along the bottom of a dark box. */
export function bottomEdge({ x, y, width, height }: Box): Edge {
  return [
    { x: x + width - FROM_CORNER, y: y + height },
    { x: x + FROM_CORNER, y: y + height },
  ];
}

/** All four edges of a dark box, clockwise from the top. */
export function edgesAround(box: Box): readonly Edge[] {
  const { x, y, width, height } = box;
  const right = x + width;
  return [
    topEdge(box),
    [
      { x: right, y: y + FROM_CORNER },
      { x: right, y: y + height - FROM_CORNER },
    ],
    bottomEdge(box),
    [
      { x, y: y + height - FROM_CORNER },
      { x, y: y + FROM_CORNER },
    ],
  ];
}
