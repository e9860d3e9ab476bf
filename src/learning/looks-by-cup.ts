import type { LinearLook } from './linear-views.ts';

/** Looks by the cup that they were at, cups in the order in which they first come; without what was of no cup. */
export function looksByCup(looks: readonly LinearLook[]): ReadonlyMap<string, readonly LinearLook[]> {
  const byCup = new Map<string, LinearLook[]>();
  for (const look of looks) {
    const { cup } = look.errors;
    if (cup === undefined) continue;
    const of = byCup.get(cup) ?? [];
    byCup.set(cup, of);
    of.push(look);
  }
  return byCup;
}
