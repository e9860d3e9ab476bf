/**
 * A bait in space, as our drawings have it: ribbons that lie in a plane, each with its thickness square to that plane.
 *
 * Units: mm; the nose is at x = 0, the middle of the body at y = 0, y downwards, and the plane is looked at square.
 *
 * @packageDocumentation
 */
import type { Point } from './ribbon.ts';

/** A cut across a ribbon at one place of its middle line. */
export interface Station {
  readonly x: number;
  readonly y: number;
  /** How far the ribbon reaches to the left of its middle line, which is up where that runs away from the nose. */
  readonly up: number;
  readonly down: number;
  /** Thickness in the middle. */
  readonly deep: number;
  /** 0 round like a body, 1 flat like a fin. */
  readonly flat: number;
  /** How far the middle lies out of the plane, towards the one who looks; for light alone. */
  readonly lift?: number;
  /** By how much more the lower edge does than the upper, a mm of height; for light alone. */
  readonly twist?: number;
}

/** A groove round a body. */
export interface Ring {
  /** Place along the ribbon. */
  readonly alongMm: number;
  /** Part of the thickness that it takes away. */
  readonly deep: number;
  readonly widthMm: number;
}

export interface SolidRibbon {
  readonly stations: readonly Station[];
  /** Whether it begins, and ends, in a rounded end; else it is cut off square, within another ribbon. */
  readonly roundStart: boolean;
  readonly roundEnd: boolean;
  /** The first station that belongs to a thin part; none does where it is the number of stations. */
  readonly thinFrom: number;
  /** Place of its first station along the bait. */
  readonly startMm: number;
  readonly rings: readonly Ring[];
}

/** A line that is pressed into the surface of both sides, too fine to change how thick a bait is. */
export interface Groove {
  readonly points: readonly Point[];
  readonly widthMm: number;
  readonly deepMm: number;
}

export interface Eye {
  readonly x: number;
  readonly y: number;
  readonly radiusMm: number;
}

export interface BaitSolid {
  readonly lengthMm: number;
  readonly bodyMm: number;
  /** The body, with the tail that it runs out into. */
  readonly trunk: SolidRibbon;
  readonly limbs: readonly SolidRibbon[];
  /** A body's section is √(1 − |v|^p) of its thickness at v across it, -1 to 1. */
  readonly sectionExponent: number;
  readonly grooves: readonly Groove[];
  readonly eyes: readonly Eye[];
}
