/**
 * Baits and chips as they lie on a card: how high their surface is above a place, and how thick they are there.
 *
 * @packageDocumentation
 */
import type { Chance } from '../../measure/foreign/world/chance.ts';

/** A body on the table. Its own axes: along, and across from its middle line, both mm. */
export interface BaitShape {
  readonly kind: 'worm' | 'chip';
  /** Its middle on the table, mm, and how it is turned, radians. */
  readonly at: readonly [x: number, y: number];
  readonly turned: number;
  readonly length: number;
  /** Half of its width at a place along it, 0 beyond its ends. */
  halfWidth(along: number): number;
  /** Height of its upper surface, 0 beside it. */
  height(along: number, across: number): number;
  /** How thick it is there, mm: less than its height where it bulges over the table. */
  thickness(along: number, across: number): number;
  /** Its largest height. */
  readonly top: number;
}

/** A worm of 6 to 10 mm, along a card's window: blunt at its head, thinner towards its tail, a third of them ribbed. */
export function someWorm(chance: Chance, middle: readonly [number, number], room: number): BaitShape {
  const length = room * (0.72 + 0.18 * chance.uniform());
  const radius = 3 + 2 * chance.uniform();
  const flat = 0.75 + 0.25 * chance.uniform();
  const tail = 0.25 + 0.4 * chance.uniform();
  const head = chance.uniform() < 0.5 ? 1 : -1;
  const ribs = chance.uniform() < 0.33 ? 0.03 + 0.04 * chance.uniform() : 0;
  const pitch = 1.8 + 1.6 * chance.uniform();
  const formula = (along: number): number => {
    const part = (2 * along) / length;
    if (Math.abs(part) >= 1) return 0;
    const thinner = 1 - (1 - tail) * Math.max(0, (0.15 - head * part) / 1.15) ** 1.3;
    return radius * thinner * (1 - part ** 6) ** 0.5 * (1 + ribs * Math.cos((2 * Math.PI * along) / pitch));
  };
  const radiusAt = tabulated(formula, length / 2);
  const round = (along: number, across: number): number => {
    const own = radiusAt(along);
    return own <= Math.abs(across) ? 0 : flat * Math.sqrt(own * own - across * across);
  };
  return {
    kind: 'worm',
    at: [middle[0] + chance.normal(1.5), middle[1] + chance.normal(0.7)],
    turned: chance.normal(0.02),
    length,
    halfWidth: radiusAt,
    height: (along, across) => {
      const rise = round(along, across);
      return rise === 0 ? 0 : flat * radiusAt(along) + rise;
    },
    thickness: (along, across) => 2 * round(along, across),
    top: 2 * flat * radius * (1 + ribs),
  };
}

/** A chip of 1.5 to 3.5 mm, cut to a rectangle with round corners, over both halves of a card's window. */
export function someChip(chance: Chance, middle: readonly [number, number]): BaitShape {
  const length = 44 + 20 * chance.uniform();
  const half = 6 + 3 * chance.uniform();
  const thick = 1.5 + 2 * chance.uniform();
  const corner = 3;
  const halfWidth = (along: number): number => {
    const beyond = Math.abs(along) - (length / 2 - corner);
    if (beyond >= corner) return 0;
    return beyond <= 0 ? half : half - corner + Math.sqrt(corner * corner - beyond * beyond);
  };
  const height = (along: number, across: number): number => {
    const inside = Math.min(halfWidth(along) - Math.abs(across), length / 2 - Math.abs(along));
    return inside <= 0 ? 0 : thick * Math.min(1, 0.6 + inside / 2);
  };
  return {
    kind: 'chip',
    at: [middle[0] + chance.normal(2), middle[1] + chance.normal(1)],
    turned: chance.normal(0.03),
    length,
    halfWidth,
    height,
    thickness: height,
    top: thick,
  };
}

/** A function of a place along a body, as a table of it gives it: a photo asks it millions of times. */
function tabulated(formula: (along: number) => number, half: number): (along: number) => number {
  const step = 0.05;
  const values = Float64Array.from({ length: Math.ceil((2 * half) / step) + 3 }, (_, at) =>
    formula((at - 1) * step - half),
  );
  return (along) => {
    const at = (along + half) / step + 1;
    const below = Math.floor(at);
    if (below < 0 || below + 1 >= values.length) return 0;
    return values[below]! + (at - below) * (values[below + 1]! - values[below]!);
  };
}

/** A place of the table in a body's own axes. */
export function placeOn({ at, turned }: BaitShape, x: number, y: number): readonly [along: number, across: number] {
  const [dx, dy] = [x - at[0], y - at[1]];
  return [dx * Math.cos(turned) + dy * Math.sin(turned), dy * Math.cos(turned) - dx * Math.sin(turned)];
}
