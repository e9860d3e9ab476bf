/**
 * Shapes of baits from the side, our own drawings: a body and its thin parts, to a length and a thickness.
 *
 * Units: mm; the nose is at x = 0, the middle of the body at y = 0.
 *
 * @packageDocumentation
 */

import { across, alongside, type Ribbon, ribbon, smoothPath, stretch } from './ribbon.ts';
import type { ShapeName } from './shape-names.ts';
import type { ShapedMold } from './shaped-mold.ts';

export interface BaitShape {
  readonly body: Ribbon;
  readonly thin: readonly Ribbon[];
  /** Paths of rings and gills, drawn as fine lines. */
  readonly lines: readonly string[];
  /** How far the drawing reaches above and below the middle. */
  readonly reachMm: number;
}

/** A body along the x axis from profiles of its half height in parts of the body's thickness, evenly spaced. */
function profile(length: number, thickness: number, up: readonly number[], down: readonly number[] = up): Ribbon {
  return {
    middle: up.map((_, index) => [(length * index) / (up.length - 1), 0] as const),
    up: up.map((part) => part * thickness),
    down: down.map((part) => part * thickness),
  };
}

const rings = (body: Ribbon, from: number, to: number, count: number): readonly string[] =>
  Array.from({ length: count }, (_, index) => across(body, from + ((to - from) * index) / Math.max(count - 1, 1)));

const round2 = (mm: number): number => Math.round(mm * 100) / 100;

/** An eye. */
function ring(x: number, y: number, radius: number): string {
  const r = round2(radius);
  return `M${round2(x - radius)} ${round2(y)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;
}

/** The line between the fingers of a claw. */
function cleft(claw: Ribbon): string {
  return smoothPath(alongside(stretch(claw, 0.7, 1), -0.25), false);
}

type Draw = (length: number, thickness: number) => BaitShape;

const minnow: Draw = (L, D) => {
  const body = profile(
    L * 0.82,
    D,
    [0.03, 0.24, 0.38, 0.47, 0.52, 0.54, 0.52, 0.47, 0.4, 0.32, 0.24, 0.17, 0.13, 0.12],
    [0.03, 0.22, 0.38, 0.5, 0.57, 0.6, 0.58, 0.52, 0.44, 0.34, 0.25, 0.17, 0.13, 0.12],
  );
  const fin = (side: number): Ribbon =>
    ribbon([
      [L * 0.79, 0, D * 0.1],
      [L * 0.85, side * D * 0.1, D * 0.12],
      [L * 0.92, side * D * 0.3, D * 0.13],
      [L * 0.97, side * D * 0.48, D * 0.09],
      [L, side * D * 0.6, D * 0.02],
    ]);
  return {
    body,
    thin: [fin(-1), fin(1)],
    lines: [across(body, 0.24, 0.7), ring(L * 0.085, -D * 0.07, D * 0.075)],
    reachMm: D * 0.68,
  };
};

const worm: Draw = (L, D) => {
  const count = 29;
  const points = Array.from({ length: count }, (_, index) => {
    const part = index / (count - 1);
    const head = Math.min(1, Math.sqrt(part / 0.05));
    const saddle = part > 0.24 && part < 0.34 ? 1.1 : 1;
    const taper = part < 0.5 ? 1 : 1 - ((part - 0.5) / 0.5) ** 1.5 * 0.9;
    const sway = Math.sin(part * 2 * Math.PI * 1.15 + 0.4) * D * 0.42 * Math.min(1, part * 3);
    return [L * part, sway, (D / 2) * Math.max(0.06, head * saddle * taper)] as const;
  });
  const body = ribbon(points.slice(0, 20));
  return {
    body,
    thin: [ribbon(points.slice(19))],
    lines: [...rings(body, 0.11, 0.32, 5), ...rings(body, 0.53, 0.95, 9)],
    reachMm: D * 0.98,
  };
};

const grub: Draw = (L, D) => {
  const body = profile(L * 0.5, D, [0.1, 0.4, 0.5, 0.5, 0.49, 0.47, 0.44, 0.41, 0.37, 0.32, 0.26, 0.2]);
  const tail = ribbon([
    [L * 0.47, 0, D * 0.2],
    [L * 0.55, D * 0.02, D * 0.22],
    [L * 0.64, D * 0.12, D * 0.3],
    [L * 0.74, D * 0.3, D * 0.36],
    [L * 0.84, D * 0.34, D * 0.36],
    [L * 0.92, D * 0.12, D * 0.32],
    [L * 0.94, -D * 0.26, D * 0.25],
    [L * 0.9, -D * 0.56, D * 0.16],
    [L * 0.84, -D * 0.66, D * 0.04],
  ]);
  return { body, thin: [tail], lines: rings(body, 0.18, 0.9, 9), reachMm: D * 0.86 };
};

const stick: Draw = (L, D) => {
  const count = 25;
  const half = Array.from({ length: count }, (_, index) => {
    const part = index / (count - 1);
    return (
      0.5 * Math.max(0.1, Math.min(1, Math.sqrt(part / 0.06), 1 - Math.max(0, (part - 0.58) / 0.42) ** 1.6 * 0.62))
    );
  });
  const whole = profile(L * 0.985, D, half);
  const part = (from: number, to?: number): Ribbon => ({
    middle: whole.middle.slice(from, to),
    up: whole.up.slice(from, to),
    down: whole.down.slice(from, to),
  });
  const body = part(0, 20);
  const tip = ribbon([
    ...part(19).middle.map(([x, y], index) => [x, y, part(19).up[index]!] as const),
    [L, 0, D * 0.06],
  ]);
  return { body, thin: [tip], lines: rings(body, 0.16, 0.95, 11), reachMm: D * 0.52 };
};

const tube: Draw = (L, D) => {
  const body = profile(L * 0.56, D, [0.12, 0.36, 0.46, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.49, 0.48]);
  const count = 7;
  const strands = Array.from({ length: count }, (_, index) => {
    const lane = (index - (count - 1) / 2) / ((count - 1) / 2);
    const swing = index % 2 === 0 ? 1 : -1;
    const end = 1 - (index % 3) * 0.035;
    return ribbon([
      [L * 0.53, lane * D * 0.42, D * 0.055],
      [L * 0.66, lane * D * 0.46 + swing * D * 0.04, D * 0.055],
      [L * 0.8, lane * D * 0.54 - swing * D * 0.05, D * 0.05],
      [L * 0.92, lane * D * 0.62 + swing * D * 0.05, D * 0.045],
      [L * end, lane * D * 0.66 + swing * D * 0.1, D * 0.02],
    ]);
  });
  return { body, thin: strands, lines: [across(body, 0.9)], reachMm: D * 0.82 };
};

const craw: Draw = (L, D) => {
  const body = profile(
    L * 0.6,
    D,
    [0.2, 0.33, 0.36, 0.4, 0.42, 0.46, 0.48, 0.5, 0.56, 0.6, 0.58, 0.52, 0.42, 0.28, 0.08],
  );
  const claw = (side: number): Ribbon =>
    ribbon([
      [L * 0.5, side * D * 0.36, D * 0.1],
      [L * 0.58, side * D * 0.6, D * 0.11],
      [L * 0.66, side * D * 0.76, D * 0.16],
      [L * 0.75, side * D * 0.84, D * 0.3],
      [L * 0.84, side * D * 0.84, D * 0.33],
      [L * 0.92, side * D * 0.78, D * 0.22],
      [L, side * D * 0.68, D * 0.04],
    ]);
  const leg = (side: number, x: number): Ribbon =>
    ribbon([
      [L * x, side * D * 0.42, D * 0.05],
      [L * (x - 0.02), side * D * 0.66, D * 0.05],
      [L * (x - 0.07), side * D * 0.88, D * 0.02],
    ]);
  const both = (draw: (side: number) => Ribbon): readonly Ribbon[] => [draw(-1), draw(1)];
  return {
    body,
    thin: [...both(claw), ...both((side) => leg(side, 0.38)), ...both((side) => leg(side, 0.44))],
    lines: [...rings(body, 0.1, 0.5, 6), across(body, 0.64, 0.9), ...both(claw).map((part) => cleft(part))],
    reachMm: D * 1.22,
  };
};

const creature: Draw = (L, D) => {
  const body = profile(L * 0.62, D, [0.14, 0.38, 0.46, 0.48, 0.48, 0.48, 0.5, 0.5, 0.5, 0.48, 0.46, 0.44, 0.38, 0.26]);
  const paddle = (side: number, x: number, long: number): Ribbon =>
    ribbon([
      [L * x, side * D * 0.4, D * 0.07],
      [L * (x + 0.035), side * D * (0.4 + long * 0.4), D * 0.08],
      [L * (x + 0.085), side * D * (0.4 + long * 0.8), D * 0.13],
      [L * (x + 0.14), side * D * (0.4 + long), D * 0.05],
    ]);
  const flap = (side: number): Ribbon =>
    ribbon([
      [L * 0.58, side * D * 0.16, D * 0.1],
      [L * 0.68, side * D * 0.26, D * 0.12],
      [L * 0.79, side * D * 0.4, D * 0.22],
      [L * 0.89, side * D * 0.46, D * 0.27],
      [L * 0.96, side * D * 0.42, D * 0.2],
      [L, side * D * 0.34, D * 0.06],
    ]);
  const thin = [-1, 1].flatMap((side) => [paddle(side, 0.14, 0.62), paddle(side, 0.34, 0.8), flap(side)]);
  return { body, thin, lines: rings(body, 0.1, 0.92, 12), reachMm: D * 1.28 };
};

const DRAWINGS: Readonly<Record<ShapeName, Draw>> = { minnow, worm, grub, stick, tube, craw, creature };

/** Draws a shape to a length and to the thickness of its body, both in mm. */
export function baitShape(shape: ShapeName, lengthMm: number, thicknessMm: number): BaitShape {
  return DRAWINGS[shape](lengthMm, thicknessMm);
}

/** Part of the cylinder round it that a bait fills, by shape: for the length of a mold that does not state it. Our own drawings' figures. */
const FULLNESS: Readonly<Record<ShapeName, number>> = {
  minnow: 0.62,
  worm: 0.72,
  grub: 0.52,
  stick: 0.86,
  tube: 0.5,
  craw: 0.7,
  creature: 0.7,
};

/** Length of a bait: as the mold states it, or as its volume and thickness let it be, within 2 to 16 thicknesses. */
export function baitLength(mold: Omit<ShapedMold, 'thinMm'> & { readonly cavityMl: number }): number {
  if (mold.lengthMm !== undefined) return mold.lengthMm;
  const section = (Math.PI / 4) * mold.bodyMm ** 2 * FULLNESS[mold.shape];
  return Math.min(16, Math.max(2, (mold.cavityMl * 1000) / section / mold.bodyMm)) * mold.bodyMm;
}
