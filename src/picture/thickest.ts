import type { BaitField } from '../shapes/bait-field.ts';

const known = new WeakMap<BaitField, number>();

/** The greatest thickness in a field, mm, found once; 0 where it is empty. */
export function thickestOf(field: BaitField): number {
  const thickest = known.get(field) ?? thickestIn(field);
  known.set(field, thickest);
  return thickest;
}

function thickestIn({ cover, thicknessMm }: BaitField): number {
  let thickest = 0;
  for (let pixel = 0; pixel < cover.length; pixel++)
    if (cover[pixel]! > 0 && thicknessMm[pixel]! > thickest) thickest = thicknessMm[pixel]!;
  return thickest;
}
