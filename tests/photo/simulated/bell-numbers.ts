import { Chance } from '../../measure/foreign/world/chance.ts';

const SIZE = 1 << 14;
const NORMALS = ((): Float32Array => {
  const chance = new Chance(271_828);
  return Float32Array.from({ length: SIZE }, () => chance.normal());
})();

/** Normal numbers of deviation 1, three at a time and quickly: from one long list of them, at places by chance. */
export class BellNumbers {
  #state: number;

  constructor(seed: number) {
    this.#state = Math.imul(seed + 1, 0x9e3779b1) | 1;
  }

  /** Takes three new ones (Marsaglia's xorshift, 2003). */
  draw(): void {
    let state = this.#state;
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    this.#state = state;
  }

  /** One of the three. */
  number(which: number): number {
    return NORMALS[(this.#state >>> (3 + 5 * which)) & (SIZE - 1)]!;
  }
}
