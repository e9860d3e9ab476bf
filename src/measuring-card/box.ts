/** A point of a card: x to the right and y down from the card's left top corner, mm as designed. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

/** An upright rectangle of a card, mm as designed: its left top corner and its size. */
export interface Box extends Place {
  readonly width: number;
  readonly height: number;
}

/** A box with its middle at a place. */
export function boxAround({ x, y }: Place, width: number, height: number): Box {
  return { x: x - width / 2, y: y - height / 2, width, height };
}

/** A box with this much more on every side, mm. */
export function grown({ x, y, width, height }: Box, by: number): Box {
  return { x: x - by, y: y - by, width: width + 2 * by, height: height + 2 * by };
}

/** Whether a place lies in a box, its edges included. */
export function contains({ x, y, width, height }: Box, place: Place): boolean {
  return place.x >= x && place.x <= x + width && place.y >= y && place.y <= y + height;
}
