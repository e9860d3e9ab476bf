/**
 * Places in a bait, whatever its shape, and the lines that an eye looks along.
 *
 * @packageDocumentation
 */

/** A line straight through a bait, from the side that is looked at to the other. */
export interface LineOfSight {
  /** 0 at the nose, 1 at the tail: the part of the bait's plastic that lies before it. */
  readonly along: number;
  /** 0 on one edge of what is looked at, 1 on the other: a part of the width there. */
  readonly across: number;
}

/** A place in a bait. */
export interface Place extends LineOfSight {
  /** 0 on the side that is looked at, 1 on the other: a part of the thickness there. */
  readonly depth: number;
}

/** What a line of sight runs through: a cup, by its place in the recipe, for a part of the thickness. */
export interface Run {
  readonly cup: number;
  /** Above 0; 1 together. */
  readonly part: number;
}

/** The line through the middle of a bait. */
export const MIDDLE: LineOfSight = { along: 0.5, across: 0.5 };
