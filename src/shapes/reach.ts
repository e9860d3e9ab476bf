import type { BaitSolid } from './solid.ts';
import { denseRibbon } from './sweep.ts';

/** How far a bait reaches from its nose, mm. */
export interface Reach {
  readonly left: number;
  readonly right: number;
  readonly up: number;
  readonly down: number;
}

/** Places are taken a quarter of a millimetre from one another. */
const FRAME = { columns: 0, rows: 0, pixelsPerMm: 10, noseX: 0, noseY: 0 };

/** How far a bait in space reaches. */
export function reachOf({ trunk, limbs }: BaitSolid): Reach {
  let left = 0;
  let right = 0;
  let highest = 0;
  let lowest = 0;
  for (const ribbon of [trunk, ...limbs]) {
    const dense = denseRibbon(ribbon, FRAME);
    for (let at = 0; at < dense.count; at++) {
      for (const half of [Math.sqrt(Math.max(0, dense.up[at]!)), -Math.sqrt(Math.max(0, dense.down[at]!))]) {
        const x = (dense.x[at]! + half * dense.ty[at]!) / FRAME.pixelsPerMm;
        const y = (dense.y[at]! - half * dense.tx[at]!) / FRAME.pixelsPerMm;
        left = Math.max(left, -x);
        right = Math.max(right, x);
        highest = Math.max(highest, -y);
        lowest = Math.max(lowest, y);
      }
    }
  }
  return { left, right, up: highest, down: lowest };
}
