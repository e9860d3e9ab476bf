import type { ShapedMold } from '../../src/shapes/shaped-mold.ts';
import { DEMO_BOOK } from '../render/demo-book.ts';

/** Molds of all shapes: the demo book's, and a tube, of which it has none. */
export const MOLDS: readonly (readonly [name: string, mold: ShapedMold & { readonly cavityMl: number }])[] = [
  ...DEMO_BOOK.molds.map((mold) => [mold.id, mold] as const),
  ['tube', { shape: 'tube', cavityMl: 5, lengthMm: 89, bodyMm: 11, thinMm: 2 }],
];
