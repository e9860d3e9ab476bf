import type { FieldFrame } from './bait-field.ts';
import { baitReach } from './mold-field.ts';
import type { ShapedMold } from './shaped-mold.ts';

/**
 * Width of the picture that all others of a bait are made from, px: that of a page’s own, or of half of it where a bait lies beside itself, but
 * no less than that of the largest tile. A page’s picture is then as it was drawn; a link has bare card round it.
 */
const WIDTH = { long: 990, tall: 640 } as const;

/** So tall for its length a bait lies beside itself over white and over black, and not above. */
const TALL = 0.36;

/** Bare card round a bait, as a part of its length, and at least so much, mm: a shadow has room in it. */
const MARGIN = { part: 0.05, leastMm: 4 } as const;

/** Molds of which the frame is kept, since every page with a picture asks for it. */
const MOST_KEPT = 200;
const kept = new Map<string, FieldFrame>();

/** Whether a bait in its frame is so tall for its length that it lies beside itself over white and over black, and not above. */
export function isTall({ columns }: Pick<FieldFrame, 'columns'>): boolean {
  return columns === WIDTH.tall;
}

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
  const [wideMm, highMm] = [left + right + 2 * marginMm, up + down + 2 * marginMm];
  const columns = highMm / wideMm > TALL ? WIDTH.tall : WIDTH.long;
  const pixelsPerMm = columns / wideMm;
  return {
    columns,
    // Two rows become one in a tile.
    rows: 2 * Math.round((highMm * pixelsPerMm) / 2),
    pixelsPerMm,
    noseX: (left + marginMm) * pixelsPerMm,
    noseY: (up + marginMm) * pixelsPerMm,
  };
}
