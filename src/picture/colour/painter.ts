import type { Run } from '../../patterns/place.ts';
import type { BaitField } from '../../shapes/bait-field.ts';
import type { PicturedBait, PicturedSide } from '../pictured-bait.ts';
import type { ComputedColour } from './computed-colour.ts';

/** A side that is painted, and the pixels it is seen in. */
export interface PaintedSide {
  readonly bait: PicturedBait;
  readonly side: PicturedSide;
  readonly field: BaitField;
  /** Of all pixels, mm. */
  readonly thickestMm: number;
}

/** What each pixel of a side shows. */
export interface Painter {
  /** Writes the colour of the plastic of each pixel that has bait in it. */
  paint(into: ComputedColour): void;
  /** What the line of sight of a pixel runs through, the near cup first: cups by their places in the bait. */
  runsAt(pixel: number): readonly Run[];
}

/** Runs that name cups as a pattern numbers them, as an eye on this side meets them by their places in the bait. */
export function metFrom({ cups, from }: PicturedSide, runs: readonly Run[]): readonly Run[] {
  const met = runs.map(({ cup, part }): Run => ({ cup: cups[cup]!.cup, part }));
  return from === 'near' ? met : met.toReversed();
}
