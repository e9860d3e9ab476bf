/** Chance that is the same for the same seed. */
export class Chance {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
    for (let i = 0; i < 8; i++) this.uniform();
  }

  /** Evenly from 0 up to 1. Source: Steele, Lea & Flood's splitmix in 32 bits, public domain (from memory). */
  uniform(): number {
    this.#state = (this.#state + 0x9e3779b9) >>> 0;
    let z = this.#state;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return ((z ^ (z >>> 15)) >>> 0) / 2 ** 32;
  }

  /** Normal, of a standard deviation about 0. Source: Box and Muller (1958). */
  normal(deviation = 1): number {
    return deviation * Math.sqrt(-2 * Math.log(1 - this.uniform())) * Math.cos(2 * Math.PI * this.uniform());
  }

  /** One of a list. */
  oneOf<T>(list: readonly T[]): T {
    const index = Math.floor(this.uniform() * list.length);
    const one = list[index];
    if (one === undefined) throw new RangeError('nothing to choose from');
    return one;
  }

  /** So many different ones of a list. */
  some<T>(list: readonly T[], count: number): readonly T[] {
    const left = [...list];
    return Array.from({ length: Math.min(count, left.length) }, () => {
      const one = this.oneOf(left);
      left.splice(left.indexOf(one), 1);
      return one;
    });
  }
}
