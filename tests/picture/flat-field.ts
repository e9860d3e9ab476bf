import type { BaitField } from '../../src/shapes/bait-field.ts';

/** A slab of plastic that fills all but the border of a picture, so thick everywhere. */
export function flatField(thickMm: number, { columns = 300, rows = 150, pixelsPerMm = 6, border = 0 } = {}): BaitField {
  const numbers = (): Float32Array => new Float32Array(columns * rows);
  const field = {
    columns,
    rows,
    pixelsPerMm,
    noseX: border,
    noseY: rows / 2,
    cover: numbers(),
    thicknessMm: numbers(),
    alongMm: numbers(),
    across: numbers(),
    halfMm: numbers(),
    part: new Uint8Array(columns * rows),
    heightMm: numbers(),
  };
  for (let y = border; y < rows - border; y++) {
    for (let x = border; x < columns - border; x++) {
      const at = y * columns + x;
      field.cover[at] = 1;
      field.thicknessMm[at] = thickMm;
      field.heightMm[at] = thickMm / 2;
    }
  }
  return field;
}
