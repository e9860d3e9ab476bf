import { CAMERA_UNKNOWNS, COMMON_UNKNOWNS, type MaterialUnknowns, type ShelfUnknowns } from './shelf-unknowns.ts';

/** The theta of one shelf with the places of another: what both know by name is taken over, all else is 0. */
export function translatedTheta(theta: ArrayLike<number>, from: ShelfUnknowns, to: ShelfUnknowns): Float64Array {
  const translated = new Float64Array(to.count);
  const take = (there: number, here: number, count: number): void => {
    for (let i = 0; i < count; i++) translated[here + i] = theta[there + i] ?? 0;
  };
  for (const [id, place] of to.placeOf) {
    const other = from.placeOf.get(id);
    if (other === undefined) continue;
    const [there, here] = [from.materials[other]!, to.materials[place]!];
    if (unknownsOf(there) === unknownsOf(here)) take(there.at, here.at, unknownsOf(here));
  }
  take(from.common, to.common, COMMON_UNKNOWNS.length);
  for (const [camera, here] of to.cameras) {
    const there = from.cameras.get(camera);
    if (there !== undefined) take(there, here, CAMERA_UNKNOWNS);
  }
  return translated;
}

function unknownsOf({ kModes, sModes, bottle }: MaterialUnknowns): number {
  return kModes.length + sModes.length + (bottle === undefined ? 0 : 1);
}
