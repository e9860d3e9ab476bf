/** Plates thrown into a slab at random, and the first one that a line straight down meets: what the closed forms are held against. */
import type { FlakeShape } from '../../src/optics/flake.ts';

/** A kind of plate. */
export interface Plates {
  readonly shape: FlakeShape;
  /** mm */
  readonly size: number;
  readonly perMl: number;
}

/**
 * Depth in mm at which a line straight down through a slab of fresh random plates meets the first one, and of which kind that is;
 * no depth (infinity) where it meets none.
 */
export function firstMet(
  kinds: readonly Plates[],
  thicknessMm: number,
  random: () => number,
): { readonly depth: number; readonly kind: number } {
  let depth = Number.POSITIVE_INFINITY;
  let kind = -1;
  for (const [index, { shape, size, perMl }] of kinds.entries()) {
    // A line at the middle of a box as wide as a plate's diagonal is met by no plate from outside the box.
    const reach = size * 1.5;
    const height = thicknessMm + 2 * reach;
    const expectedInBox = (perMl / 1000) * (2 * reach) ** 2 * height;
    for (let plate = poisson(expectedInBox, random); plate > 0; plate--) {
      const centre: Vector = [(2 * random() - 1) * reach, (2 * random() - 1) * reach, random() * height - reach];
      const up = 2 * random() - 1;
      const around = 2 * Math.PI * random();
      const flat = Math.sqrt(1 - up * up);
      const normal: Vector = [flat * Math.cos(around), flat * Math.sin(around), up];
      const met = meets(shape, size, centre, normal, 2 * Math.PI * random());
      if (met === undefined || met < 0 || met > thicknessMm || met >= depth) continue;
      depth = met;
      kind = index;
    }
  }
  return { depth, kind };
}

/** The next number in 0..1 of a sequence that a seed decides (a 32-bit mixing generator). */
export function sequence(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32;
  };
}

type Vector = readonly [number, number, number];

/** Whether a point of a plate's plane, in the plate's own axes, lies in it. */
const inside: Record<FlakeShape, (u: number, v: number, size: number) => boolean> = {
  square: (u, v, size) => Math.max(Math.abs(u), Math.abs(v)) <= size / 2,
  round: (u, v, size) => u * u + v * v <= (size * size) / 4,
  hex: (u, v, size) =>
    [0, Math.PI / 3, (2 * Math.PI) / 3].every((turn) => Math.abs(u * Math.cos(turn) + v * Math.sin(turn)) <= size / 2),
};

/** Depth at which a line straight down the z axis meets a plate, or nothing. */
function meets(shape: FlakeShape, size: number, centre: Vector, normal: Vector, spin: number): number | undefined {
  const down = normal[2];
  if (Math.abs(down) < 1e-9) return undefined;
  const depth = (centre[0] * normal[0] + centre[1] * normal[1] + centre[2] * down) / down;
  const from: Vector = [-centre[0], -centre[1], depth - centre[2]];
  // Two axes across the normal, then turned by the spin.
  const helper: Vector = Math.abs(normal[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0];
  const across = cross(normal, helper);
  const length = Math.hypot(...across);
  const e1: Vector = [across[0] / length, across[1] / length, across[2] / length];
  const e2 = cross(normal, e1);
  const u = dot(from, e1);
  const v = dot(from, e2);
  const turned = [u * Math.cos(spin) + v * Math.sin(spin), v * Math.cos(spin) - u * Math.sin(spin)] as const;
  return inside[shape](turned[0], turned[1], size) ? depth : undefined;
}

function poisson(mean: number, random: () => number): number {
  let count = 0;
  for (let product = random(); product > Math.exp(-mean); product *= random()) count++;
  return count;
}

function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}
