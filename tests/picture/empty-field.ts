import type { BaitField, FieldFrame } from '../../src/shapes/bait-field.ts';

/** A field in which no bait is yet. */
export function emptyField(frame: FieldFrame): BaitField {
  const numbers = (): Float32Array => new Float32Array(frame.columns * frame.rows);
  return {
    ...frame,
    cover: numbers(),
    thicknessMm: numbers(),
    alongMm: numbers(),
    across: numbers(),
    halfMm: numbers(),
    part: new Uint8Array(frame.columns * frame.rows),
    heightMm: numbers(),
  };
}
