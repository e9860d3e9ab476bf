/** The thing with the highest score, of equals the first; undefined of none. */
export function bestOf<T>(things: readonly T[], score: (thing: T) => number): T | undefined {
  let best: T | undefined;
  for (const thing of things) if (best === undefined || score(thing) > score(best)) best = thing;
  return best;
}
