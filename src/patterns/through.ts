/**
 * How cups can lie in a bait: what each line of sight runs through, given the shares of the cups, 1 together.
 *
 * A bait is taken as round, its plastic spread evenly along it. Summed up over all of a bait, each of these gives the cups their shares.
 *
 * @packageDocumentation
 */
import { discBefore, discHalf, discPlace } from './disc.ts';
import type { LineOfSight, Place, Run } from './place.ts';

/** What a line of sight runs through. */
export type Through = (shares: readonly number[], line: LineOfSight) => readonly Run[];

/** The cup at a place. */
export function cupAt(through: Through, shares: readonly number[], { depth, ...line }: Place): number {
  const runs = through(shares, line);
  const run =
    runs[
      nthPart(
        runs.map(({ part }) => part),
        depth,
      )
    ];
  if (run === undefined) throw new RangeError('a line of sight runs through nothing; give the bait a cup');
  return run.cup;
}

/** Cups over one another, each as thick as its share wherever one looks. */
export const inLayers: Through = (shares) => shares.map((part, cup) => ({ cup, part }));

/** The second cup in the middle of the first, from nose to tail: its part of the diameter is the root of its share. */
export const within: Through = ([, core = 0], { across }) => {
  return aroundCore(corePart(core, 2 * across - 1));
};

/** Part of the thickness that a core takes at a place across a round bait, -1 to 1: one of that share of the bait's cut there. */
export function corePart(share: number, place: number): number {
  const inside = share - place * place;
  return inside <= 0 ? 0 : Math.min(1, Math.sqrt(inside) / discHalf(place));
}

/** A core that takes a part of the thickness, in its shell. */
export function aroundCore(part: number): readonly Run[] {
  if (part <= 0) return [{ cup: 0, part: 1 }];
  const shell: Run = { cup: 0, part: (1 - part) / 2 };
  return part < 1 ? [shell, { cup: 1, part }, shell] : [{ cup: 1, part: 1 }];
}

/** The second cup at the far side, as it lies level in the bottom of a mold: a segment of the bait's cut, of the area of its share. */
export const alongTheBottom: Through = ([, stripe = 0], { across }) => {
  return onBottom(bottomPart(discPlace(1 - stripe), 2 * across - 1));
};

/** Part of the thickness that lies below a level of a round bait, from its middle and in its radii, at a place across it, -1 to 1. */
export function bottomPart(level: number, place: number): number {
  const half = discHalf(place);
  return half > 0 ? Math.max(0, Math.min(1, (half - level) / (2 * half))) : Number(level < 0);
}

/** A cup at the bottom that takes a part of the thickness, under the other. */
export function onBottom(part: number): readonly Run[] {
  if (part <= 0) return [{ cup: 0, part: 1 }];
  return part < 1
    ? [
        { cup: 0, part: 1 - part },
        { cup: 1, part },
      ]
    : [{ cup: 1, part }];
}

/** Cups behind one another along the bait, the first at its nose. */
export const endToEnd: Through = (shares, { along }) => [{ cup: nthPart(shares, along), part: 1 }];

/** Streaks side by side across a bait of usual width: a convention of this book; where they lie in a bait nobody knows. */
const STREAKS = 3;

/** Cups in streaks that run along the bait and wander, each through all of its thickness. */
export const inStreaks: Through = (shares, { along, across }) => {
  const wander = 0.4 * Math.sin(2 * Math.PI * along) + 0.15 * Math.sin(6 * Math.PI * along + 1);
  const turns = STREAKS * discBefore(2 * across - 1) + wander + 1;
  return [{ cup: nthPart(shares, turns % 1), part: 1 }];
};

/** Which of the parts of 1, laid end to end, a place falls into; the last has what rounding leaves. */
function nthPart(parts: readonly number[], place: number): number {
  let end = 0;
  const found = parts.findIndex((part) => {
    end += part;
    return place < end;
  });
  return found === -1 ? parts.length - 1 : found;
}
