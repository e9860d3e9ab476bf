/**
 * Compositions as points, so that it can be said how alike two are: what the theory is off by in one tells of the other.
 *
 * Coordinates of a layer are ln(1 + dose/(.03 typical dose)) of each material, and 2 ln(thickness/6 mm).
 *
 * @packageDocumentation
 */
import { ALIKE_WITHIN, MIDDLE_THICKNESS_MM, THICKNESS_COUNTS, TRACE_OF_TYPICAL } from '../tables/model-discrepancy.ts';
import type { LookedLayer } from './learning-data.ts';
import type { ShelfUnknowns } from './shelf-unknowns.ts';

/** The coordinates that are not 0, by rising key. */
export interface CompositionPoint {
  readonly keys: Int32Array;
  readonly values: Float64Array;
}

// What a share of the face counts for, so that a swirl is not like the layers of the same cups: convention of this book.
const SHARE_COUNTS = 4;

/** The point of a composition. Throws: RangeError, naming it, if a material is not one of the shelf. */
export function compositionPoint(
  unknowns: ShelfUnknowns,
  layers: readonly LookedLayer[],
  streaks?: readonly number[],
): CompositionPoint {
  const { materials, placeOf } = unknowns;
  const values = new Map<number, number>();
  const total = streaks?.reduce((sum, share) => sum + share, 0) ?? 1;
  for (const [l, { plastics, contents, thicknessMm }] of layers.entries()) {
    const first = l * (materials.length + 2);
    for (const [id, dose] of [...plastics, ...contents]) {
      const place = placeOf.get(id);
      if (place === undefined) throw new RangeError(`There is no material ${id} on the shelf that is learned; add it`);
      values.set(first + place, doseCoordinate(dose, materials[place]!.typical));
    }
    values.set(first + materials.length, THICKNESS_COUNTS * depth(thicknessMm / MIDDLE_THICKNESS_MM, l));
    if (streaks) values.set(first + materials.length + 1, (SHARE_COUNTS * streaks[l]!) / total);
  }
  const keys = Int32Array.from(values.keys()).sort();
  return { keys, values: Float64Array.from(keys, (key) => values.get(key)!) };
}

/** The coordinate of a dose; in a near layer its key is the material's place in the unknowns. */
export function doseCoordinate(dose: number, typical: number): number {
  return Math.log1p(dose / (TRACE_OF_TYPICAL * typical));
}

/** Where no layer is behind the first, its thickness counts as nothing. */
function depth(ratio: number, layer: number): number {
  return layer === 0 ? Math.log(Math.max(1e-3, ratio)) : Math.log1p(ratio);
}

/** Square of the distance of two points of one shelf. */
export function squaredDistance(one: CompositionPoint, other: CompositionPoint): number {
  let sum = 0;
  let i = 0;
  let j = 0;
  while (i < one.keys.length || j < other.keys.length) {
    const left = one.keys[i] ?? Number.POSITIVE_INFINITY;
    const right = other.keys[j] ?? Number.POSITIVE_INFINITY;
    const key = Math.min(left, right);
    const apart = (left === key ? one.values[i++]! : 0) - (right === key ? other.values[j++]! : 0);
    sum += apart * apart;
  }
  return sum;
}

/** How much of the theory's error two compositions have in common: exp(−distance²/(2 · 1.3²)), 1 of the same. */
export function likeness(one: CompositionPoint, other: CompositionPoint): number {
  return Math.exp(-squaredDistance(one, other) / (2 * ALIKE_WITHIN * ALIKE_WITHIN));
}
