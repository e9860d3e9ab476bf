import type { FieldFrame } from '../../shapes/bait-field.ts';

/** How far a surface is tilted at a place by being uneven, as slopes. */
interface Tilt {
  x: number;
  y: number;
}

/** Waves of a poured surface, mm, and how steep they are. */
const WAVES = [
  { lengthMm: 4.2, slope: 0.034 },
  { lengthMm: 0.75, slope: 0.007 },
] as const;

/**
 * How uneven a bait's surface is: what makes a highlight that of something poured. In the bait's own mm, so that every size of picture
 * shows the same. What it returns is written over by the next call.
 */
export function unevenness({ pixelsPerMm, noseX, noseY }: FieldFrame): (x: number, y: number) => Readonly<Tilt> {
  const tilt: Tilt = { x: 0, y: 0 };
  return (x, y) => {
    tilt.x = 0;
    tilt.y = 0;
    for (let i = 0; i < WAVES.length; i++) {
      const { lengthMm, slope } = WAVES[i]!;
      const [across, down] = [(x - noseX) / pixelsPerMm / lengthMm, (y - noseY) / pixelsPerMm / lengthMm];
      tilt.x += slope * latticeNoise(across, down, 2 * i);
      tilt.y += slope * latticeNoise(across, down, 2 * i + 1);
    }
    return tilt;
  };
}

/** Smooth noise of −1 to 1 with a random number at each whole place. */
function latticeNoise(x: number, y: number, layer: number): number {
  const [left, top] = [Math.floor(x), Math.floor(y)];
  const [fx, fy] = [smooth(x - left), smooth(y - top)];
  const upper = mixed(corner(left, top, layer), corner(left + 1, top, layer), fx);
  const lower = mixed(corner(left, top + 1, layer), corner(left + 1, top + 1, layer), fx);
  return mixed(upper, lower, fy);
}

const smooth = (part: number): number => part * part * (3 - 2 * part);
const mixed = (from: number, to: number, part: number): number => from + (to - from) * part;

/** A number of −1 to 1 of a lattice's corner: its place, mixed as by the finalizer of MurmurHash3 (Appleby, public domain), from memory. */
function corner(x: number, y: number, layer: number): number {
  let hash = Math.imul(x, 0x8da6b343) ^ Math.imul(y, 0xd8163841) ^ Math.imul(layer + 1, 0xcb1ab31f);
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return ((hash ^ (hash >>> 16)) >>> 0) / 2 ** 31 - 1;
}
