import type { ShapeName } from './shape-names.ts';

/** What a mold says of its bait's shape and size. */
export interface ShapedMold {
  readonly shape: ShapeName;
  /** Volume of one bait; where it is not told, the bait is drawn as we would. */
  readonly cavityMl?: number;
  readonly bodyMm: number;
  readonly thinMm: number;
  readonly lengthMm?: number;
}
