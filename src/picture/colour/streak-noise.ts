/**
 * Smooth noise in space, the same for the same seed everywhere: gradients at whole places, blended between them.
 *
 * Source of the form: K. Perlin, Computer Graphics 19(3):287 (1985) and ACM Trans. Graph. 21(3):681 (2002), from memory.
 *
 * @packageDocumentation
 */

/** A whole number from a text, that of another text most likely another: FNV-1a, 32 bits (from memory). */
export function seedOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  return hash >>> 0;
}

/** Noise at a place in the plane, about −0.7 to 0.7, 0 at whole places. */
export type Noise = (x: number, y: number) => number;

/** The noise of a seed. */
export function noiseOf(seed: number): Noise {
  return (x, y) => {
    const column = Math.floor(x);
    const row = Math.floor(y);
    const [fx, fy] = [x - column, y - row];
    const [sx, sy] = [smooth(fx), smooth(fy)];
    const upper = mix(slope(seed, column, row, fx, fy), slope(seed, column + 1, row, fx - 1, fy), sx);
    const lower = mix(slope(seed, column, row + 1, fx, fy - 1), slope(seed, column + 1, row + 1, fx - 1, fy - 1), sx);
    return mix(upper, lower, sy);
  };
}

const smooth = (at: number): number => at * at * at * (at * (6 * at - 15) + 10);
const mix = (from: number, to: number, part: number): number => from + part * (to - from);

/** Directions of gradients, evenly round. */
const DIRECTIONS = Array.from({ length: 32 }, (_, index) => [
  Math.cos((index * Math.PI) / 16),
  Math.sin((index * Math.PI) / 16),
]).flat();

function slope(seed: number, column: number, row: number, dx: number, dy: number): number {
  let hash = seed ^ Math.imul(column, 0x27d4eb2d) ^ Math.imul(row, 0x165667b1);
  hash = Math.imul(hash ^ (hash >>> 15), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  const at = 2 * ((hash >>> 27) & 31);
  return DIRECTIONS[at]! * dx + DIRECTIONS[at + 1]! * dy;
}
