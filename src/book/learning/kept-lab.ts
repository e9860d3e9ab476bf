import type { Lab } from '../../optics/cielab.ts';

/** A colour as it is learned from, to four decimals: more than anybody sees, and short in the book's JSON. */
export function keptLab({ L, a, b }: Lab): Lab {
  const kept = (value: number): number => Number(value.toFixed(4));
  return { L: kept(L), a: kept(a), b: kept(b) };
}
