import type { ShapeName } from './shape-names.ts';

/** What a mold says of its bait's shape and size. */
export interface ShapedMold {
  readonly shape: ShapeName;
  /** Volume of one bait. */
  readonly cavityMl: number;
  readonly bodyMm: number;
  readonly thinMm: number;
  readonly lengthMm?: number;
}
