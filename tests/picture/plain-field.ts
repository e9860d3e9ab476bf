import type { BaitField } from '../../src/shapes/bait-field.ts';
import type { ShapedMold } from '../../src/shapes/shaped-mold.ts';
import { emptyField } from './empty-field.ts';

const TAIL = 0.75;

/**
 * A field that is known exactly: a round bait, even for most of its body, with round ends, and from three quarters of its length on a flat
 * strip, as thick as the mold's thin part.
 */
export function plainField({ bodyMm, thinMm, lengthMm = 80 }: ShapedMold, pixelsPerMm = 6): BaitField {
  const [columns, rows] = [Math.ceil((lengthMm + 4) * pixelsPerMm), Math.ceil((bodyMm + 4) * pixelsPerMm)];
  const [noseX, noseY] = [2 * pixelsPerMm, rows / 2];
  const field = emptyField({ columns, rows, pixelsPerMm, noseX, noseY });
  const bodyEnd = TAIL * lengthMm;
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const along = (column + 0.5 - noseX) / pixelsPerMm;
      const up = (row + 0.5 - noseY) / pixelsPerMm;
      if (along < 0 || along > lengthMm) continue;
      const isThin = along > bodyEnd;
      const fromEnd = Math.min(1, along / bodyMm, (bodyEnd - along) / bodyMm);
      const half = isThin ? 0.35 * bodyMm : (bodyMm / 2) * Math.sqrt(fromEnd * (2 - fromEnd));
      const v = up / half;
      if (!(Math.abs(v) <= 1)) continue;
      const at = row * columns + column;
      field.cover[at] = 1;
      field.thicknessMm[at] = isThin ? thinMm : 2 * half * Math.sqrt(1 - v * v);
      field.alongMm[at] = along;
      field.across[at] = v;
      field.halfMm[at] = half;
      field.part[at] = isThin ? 1 : 0;
      field.heightMm[at] = field.thicknessMm[at]! / 2;
    }
  return field;
}
