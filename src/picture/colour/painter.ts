import type { Run } from '../../patterns/place.ts';
import type { BaitField } from '../../shapes/bait-field.ts';
import type { PicturedBait, PicturedSide } from '../pictured-bait.ts';

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
  /** Adds linear sRGB over white and over black of a pixel's plastic to six numbers. */
  add(pixel: number, sums: Float64Array): void;
  /** What the line of sight runs through there, the near cup first: cups by their places in the bait. */
  runsAt(pixel: number): readonly Run[];
}

/** Runs that name cups as a pattern numbers them, as an eye on this side meets them by their places in the bait. */
export function metFrom({ cups, from }: PicturedSide, runs: readonly Run[]): readonly Run[] {
  const met = runs.map(({ cup, part }): Run => ({ cup: cups[cup]!.cup, part }));
  return from === 'near' ? met : met.toReversed();
}
