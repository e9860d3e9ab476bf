import type { FieldFrame } from './bait-field.ts';
import { baitReach } from './mold-field.ts';
import type { ShapedMold } from './shaped-mold.ts';

/** Width of the picture that all smaller ones of a bait are made from, px. */
const MASTER_WIDTH = 1200;

/** Bare card round a bait, as a part of its length, and at least so much, mm: a shadow has room in it. */
const MARGIN = { part: 0.05, leastMm: 4 } as const;

/** Molds of which the frame is kept, since every page with a picture asks for it. */
const MOST_KEPT = 200;
const kept = new Map<string, FieldFrame>();

/** Where the bait of a mold lies in the picture that all smaller ones are made from. */
export function masterFrame(mold: ShapedMold): FieldFrame {
  const { shape, cavityMl, bodyMm, thinMm, lengthMm } = mold;
  const key = JSON.stringify([shape, cavityMl, bodyMm, thinMm, lengthMm]);
  const frame = kept.get(key) ?? frameOf(mold);
  if (kept.size === MOST_KEPT) kept.clear();
  kept.set(key, frame);
  return frame;
}

function frameOf(mold: ShapedMold): FieldFrame {
  const { left, right, up, down } = baitReach(mold);
  const marginMm = Math.max(MARGIN.leastMm, MARGIN.part * (left + right));
  const pixelsPerMm = MASTER_WIDTH / (left + right + 2 * marginMm);
  return {
    columns: MASTER_WIDTH,
    rows: Math.round((up + down + 2 * marginMm) * pixelsPerMm),
    pixelsPerMm,
    noseX: (left + marginMm) * pixelsPerMm,
    noseY: (up + marginMm) * pixelsPerMm,
  };
}
