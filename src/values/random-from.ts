/**
 * Numbers that look random and are the same for the same text, from 0 (included) to 1 (excluded): the flakes of a colour
 * lie where they lay in the last build.
 *
 * Source: FNV-1a (Fowler, Noll & Vo, 32 bits) makes the text a seed; xorshift32 (Marsaglia 2003, shifts 13, 17, 5) goes on
 * from there; both from memory.
 *
 * @example randomFrom('alder-smoke')() === randomFrom('alder-smoke')() // true
 */
export function randomFrom(text: string): () => number {
  let state = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) state = Math.imul(state ^ text.charCodeAt(at), 0x01000193);
  // 0 is the one state that xorshift never leaves.
  state = state >>> 0 || 1;
  const next = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
  // The first numbers of short texts that differ in one letter are still alike.
  for (let warm = 0; warm < 8; warm++) next();
  return next;
}
