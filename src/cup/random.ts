/**
 * Numbers that look random and are the same on every run: a 32-bit counter, mixed.
 *
 * The mixing constants are those of the finalizer of MurmurHash3 (Appleby, public domain), from memory.
 * Returns numbers from 0 (included) to 1 (excluded).
 */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32;
  };
}

/** A number from the standard normal distribution (Box & Muller 1958), from two uniform ones. */
export function standardNormal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
