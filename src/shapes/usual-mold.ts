import type { ShapeName } from './shape-names.ts';
import type { ShapedMold } from './shaped-mold.ts';

/** A mold of each shape as they are usually sold, where nothing but the shape is known. Common practice, no source. */
const USUAL: Readonly<Record<ShapeName, Omit<ShapedMold, 'shape'>>> = {
  minnow: { lengthMm: 76, bodyMm: 11, thinMm: 2.4, cavityMl: 5.4 },
  worm: { lengthMm: 152, bodyMm: 8, thinMm: 1.8, cavityMl: 5.8 },
  grub: { lengthMm: 51, bodyMm: 8, thinMm: 1.6, cavityMl: 2.2 },
  craw: { lengthMm: 76, bodyMm: 10, thinMm: 2.6, cavityMl: 6.5 },
  stick: { lengthMm: 102, bodyMm: 9, thinMm: 4.5, cavityMl: 6 },
  tube: { lengthMm: 89, bodyMm: 13, thinMm: 2, cavityMl: 7 },
  creature: { lengthMm: 80, bodyMm: 12, thinMm: 2.2, cavityMl: 7.5 },
};

/** The usual mold of a shape. */
export function usualMold(shape: ShapeName): ShapedMold {
  return { shape, ...USUAL[shape] };
}
