import type { BaitField, FieldFrame } from './bait-field.ts';
import { baitSolid } from './bait-solid.ts';
import { type Reach, reachOf } from './reach.ts';
import type { ShapedMold } from './shaped-mold.ts';
import { solidField } from './solid-field.ts';

/** What each pixel of the side view of a mold's bait holds. Keep it: it is the mold's and the frame's alone. */
export function baitField(mold: ShapedMold, frame: FieldFrame): BaitField {
  return solidField(baitSolid(mold), frame);
}

/** How far the bait of a mold reaches from its nose, mm: what a frame must hold. */
export function baitReach(mold: ShapedMold): Reach {
  return reachOf(baitSolid(mold));
}
