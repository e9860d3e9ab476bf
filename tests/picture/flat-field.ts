import type { BaitField } from '../../src/shapes/bait-field.ts';
import { emptyField } from './empty-field.ts';

/** A slab of plastic that fills all but the border of a picture, so thick everywhere. */
export function flatField(thickMm: number, { columns = 300, rows = 150, pixelsPerMm = 6, border = 0 } = {}): BaitField {
  const field = emptyField({ columns, rows, pixelsPerMm, noseX: border, noseY: rows / 2 });
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
