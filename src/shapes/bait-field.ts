/**
 * What each pixel of a bait's side view holds.
 *
 * Units: mm; pixels count from the upper left, row by row, and hold what is at their middle.
 *
 * @packageDocumentation
 */

/** Where a bait lies in a picture. */
export interface FieldFrame {
  readonly columns: number;
  readonly rows: number;
  readonly pixelsPerMm: number;
  /** Place of the nose, on the middle line, in pixels from the upper left corner of the picture. */
  readonly noseX: number;
  readonly noseY: number;
}

/** A bait's side view, pixel by pixel; each array holds columns × rows numbers, 0 where no bait is. */
export interface BaitField extends FieldFrame {
  /** Part of the pixel that is bait, 0 to 1. */
  readonly cover: Float32Array;
  /** Thickness of the bait along the line of sight, mm. */
  readonly thicknessMm: Float32Array;
  /** Place along its ribbon, mm from the bait's nose. */
  readonly alongMm: Float32Array;
  /** Place across its ribbon, -1 at the upper edge to 1 at the lower. */
  readonly across: Float32Array;
  /** Half of its ribbon's height there, mm. */
  readonly halfMm: Float32Array;
  /** 0 the body, 1 a thin part. */
  readonly part: Uint8Array;
  /** The near surface above the plane through the middle of the bait, mm: for light alone. */
  readonly heightMm: Float32Array;
}

/** Volume of the bait in a field, ml. */
export function fieldVolumeMl({
  cover,
  thicknessMm,
  pixelsPerMm,
}: Pick<BaitField, 'cover' | 'thicknessMm' | 'pixelsPerMm'>): number {
  let sum = 0;
  for (let at = 0; at < cover.length; at++) sum += cover[at]! * thicknessMm[at]!;
  return sum / pixelsPerMm ** 2 / 1000;
}
