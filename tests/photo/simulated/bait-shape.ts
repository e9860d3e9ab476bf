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

/** Where a body lies. */
export type Lying = Pick<BaitShape, 'at' | 'turned'>;

/** Measures of a worm, mm: `flat` is its height against its width, `tail` how thick its tail is, `head` to which side it looks. */
export interface WormMeasures {
  readonly length: number;
  readonly radius: number;
  readonly flat: number;
  readonly tail: number;
  readonly head: 1 | -1;
  readonly ribs: number;
  readonly ribPitch: number;
}

/** A worm of 6 to 10 mm, along a card's window: blunt at its head, thinner towards its tail, a third of them ribbed. */
export function someWorm(chance: Chance, middle: readonly [number, number], room: number): BaitShape {
  const measures: WormMeasures = {
    length: room * (0.72 + 0.18 * chance.uniform()),
    radius: 3 + 2 * chance.uniform(),
    flat: 0.75 + 0.25 * chance.uniform(),
    tail: 0.25 + 0.4 * chance.uniform(),
    head: chance.uniform() < 0.5 ? 1 : -1,
    ribs: chance.uniform() < 0.33 ? 0.03 + 0.04 * chance.uniform() : 0,
    ribPitch: 1.8 + 1.6 * chance.uniform(),
  };
  return worm(measures, {
    at: [middle[0] + chance.normal(1.5), middle[1] + chance.normal(0.7)],
    turned: chance.normal(0.02),
  });
}

/** A worm of some measures. */
export function worm({ length, radius, flat, tail, head, ribs, ribPitch }: WormMeasures, lying: Lying): BaitShape {
  const radiusAt = tabulated((along) => {
    const part = (2 * along) / length;
    if (Math.abs(part) >= 1) return 0;
    const thinner = 1 - (1 - tail) * Math.max(0, (0.15 - head * part) / 1.15) ** 1.3;
    return radius * thinner * (1 - part ** 6) ** 0.5 * (1 + ribs * Math.cos((2 * Math.PI * along) / ribPitch));
  }, length / 2);
  const rise = (along: number, across: number): number => {
    const own = radiusAt(along);
    return own <= Math.abs(across) ? 0 : flat * Math.sqrt(own * own - across * across);
  };
  return {
    kind: 'worm',
    ...lying,
    length,
    halfWidth: radiusAt,
    height: (along, across) => {
      const above = rise(along, across);
      return above === 0 ? 0 : flat * radiusAt(along) + above;
    },
    thickness: (along, across) => 2 * rise(along, across),
    top: 2 * flat * radius * (1 + ribs),
  };
}

/** A chip of 1.5 to 3.5 mm over both halves of a card's window. */
export function someChip(chance: Chance, middle: readonly [number, number]): BaitShape {
  const [length, half, thick] = [44 + 20 * chance.uniform(), 6 + 3 * chance.uniform(), 1.5 + 2 * chance.uniform()];
  return chip(length, half, thick, {
    at: [middle[0] + chance.normal(2), middle[1] + chance.normal(1)],
    turned: chance.normal(0.03),
  });
}

/** How round a chip's corners are, mm. */
const CORNER = 3;

/** A chip of a length, half a width and a thickness, mm: a rectangle with round corners, a little thinner at its rim. */
export function chip(length: number, half: number, thick: number, lying: Lying): BaitShape {
  const halfWidth = (along: number): number => {
    const beyond = Math.abs(along) - (length / 2 - CORNER);
    if (beyond >= CORNER) return 0;
    return beyond <= 0 ? half : half - CORNER + Math.sqrt(CORNER * CORNER - beyond * beyond);
  };
  const height = (along: number, across: number): number => {
    const inside = Math.min(halfWidth(along) - Math.abs(across), length / 2 - Math.abs(along));
    return inside <= 0 ? 0 : thick * Math.min(1, 0.6 + inside / 2);
  };
  return { kind: 'chip', ...lying, length, halfWidth, height, thickness: height, top: thick };
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
