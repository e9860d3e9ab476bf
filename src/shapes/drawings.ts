/**
 * Seven shapes of baits, our own drawings: each a trunk and its limbs, to a size.
 *
 * @packageDocumentation
 */
import type { Point } from './ribbon.ts';
import type { ShapeName } from './shape-names.ts';
import type { BaitSolid, Eye, Groove, Ring, SolidRibbon, Station } from './solid.ts';

/** What a drawing is made to. */
export interface DrawnTo {
  readonly lengthMm: number;
  readonly bodyMm: number;
  readonly thinMm: number;
  /** Heights are drawn in parts of this. */
  readonly heightMm: number;
  /** By which power of its height a body is thick. */
  readonly girthExponent: number;
}

type Drawing = Pick<BaitSolid, 'trunk' | 'limbs'> & {
  readonly grooves?: readonly Groove[];
  readonly eyes?: readonly Eye[];
};
type Draw = (to: DrawnTo) => Drawing;

/** 0 before a place, 1 after another, smoothly between. */
function ramp(from: number, to: number, at: number): number {
  const part = Math.min(1, Math.max(0, (at - from) / (to - from)));
  return part * part * (3 - 2 * part);
}

const mix = (from: number, to: number, part: number): number => from + (to - from) * part;

/** A place of a trunk as it is drawn: along in parts of the length, heights in parts of the height. */
interface Cut {
  readonly x: number;
  readonly up: number;
  readonly down?: number;
  readonly y?: number;
  /** 0 as thick as its height has it, 1 as the thin part. */
  readonly flat?: number;
  /** Part of that thickness. */
  readonly deep?: number;
  readonly lift?: number;
  readonly twist?: number;
}

/** Stations of a trunk: as thick as the body where it is as high as `full` says, thinner where it is less high. */
function trunkOf(
  cuts: readonly Cut[],
  full: number,
  { lengthMm, heightMm, bodyMm, thinMm, girthExponent }: DrawnTo,
): readonly Station[] {
  return cuts.map(({ x, up, down = up, y = 0, flat = 0, deep = 1, lift, twist }) => {
    const girth = bodyMm * Math.min(1, (up + down) / 2 / full) ** girthExponent;
    return {
      x: x * lengthMm,
      y: y * heightMm,
      up: up * heightMm,
      down: down * heightMm,
      deep: deep * mix(girth, Math.min(girth, thinMm), flat),
      flat,
      ...(lift === undefined ? {} : { lift }),
      ...(twist === undefined ? {} : { twist }),
    };
  });
}

/** Cuts at even places of a profile. */
function evenly(length: number, up: readonly number[], down: readonly number[] = up): readonly Cut[] {
  return up.map((each, index) => ({ x: (length * index) / (up.length - 1), up: each, down: down[index]! }));
}

/** A limb: places in parts of the length, of the height, and half its own height in parts of that; it begins within the body with no thickness. */
function limb(
  points: readonly (readonly [x: number, y: number, half: number])[],
  { lengthMm, heightMm, thinMm }: DrawnTo,
  {
    deep = 1,
    lift = 0,
    twist = 0,
    flat = 1,
  }: { readonly deep?: number; readonly lift?: number; readonly twist?: number; readonly flat?: number } = {},
): SolidRibbon {
  const last = points.length - 1;
  return {
    stations: points.map(([x, y, half], index) => {
      const part = index / last;
      return {
        x: x * lengthMm,
        y: y * heightMm,
        up: half * heightMm,
        down: half * heightMm,
        deep: thinMm * deep * Math.min(1, 2.5 * part) * (1 - 0.3 * part ** 4),
        flat,
        lift: lift * part * part,
        twist: twist * part,
      };
    }),
    roundStart: false,
    roundEnd: true,
    thinFrom: 0,
    startMm: points[0]![0] * lengthMm,
    rings: [],
  };
}

/** How far from even rings lie, and how unlike they are: a hand cut them. */
const UNEVEN = 0.05;

/** Rings from one place to another, no two quite alike. */
function rings(fromMm: number, toMm: number, count: number, deep: number): readonly Ring[] {
  const pitch = (toMm - fromMm) / Math.max(count - 1, 1);
  // Multiples of the golden ratio's fraction are spread evenly, and repeat nowhere.
  const chance = (index: number, step: number): number => 2 * ((index * step) % 1) - 1;
  return Array.from({ length: count }, (_, index) => ({
    alongMm: fromMm + pitch * (index + UNEVEN * chance(index + 1, 0.618034)),
    deep: deep * (1 + 3 * UNEVEN * chance(index + 1, 0.754878)),
    widthMm: 0.11 * pitch,
  }));
}

const ROUND_TRUNK = { roundStart: true, roundEnd: true, startMm: 0 } as const;

/** An arc across a straight body at a place along it, bent towards the tail. */
function arcAcross(x: number, up: number, down: number, bend: number): readonly Point[] {
  return Array.from({ length: 13 }, (_, index): Point => {
    const v = -1 + index / 6;
    return [x + bend * (1 - v * v), v < 0 ? v * up : v * down];
  });
}

const minnow: Draw = (to) => {
  const { lengthMm: L, heightMm: H } = to;
  const cuts: readonly Cut[] = [
    ...evenly(
      0.76,
      [0, 0.28, 0.43, 0.54, 0.61, 0.64, 0.63, 0.59, 0.52, 0.42, 0.32, 0.23, 0.17],
      [0, 0.26, 0.43, 0.57, 0.67, 0.71, 0.71, 0.66, 0.57, 0.45, 0.33, 0.23, 0.17],
    ).map((cut) => ({ ...cut, flat: 0.7 * ramp(0.56, 0.76, cut.x) })),
    { x: 0.79, up: 0.15, flat: 0.9, deep: 0.85 },
    { x: 0.82, up: 0.13, flat: 1, deep: 0.5 },
    { x: 0.845, up: 0.1, flat: 1, deep: 0.25 },
    { x: 0.86, up: 0, flat: 1, deep: 0.2 },
  ];
  const fin = (side: number): SolidRibbon =>
    limb(
      [
        [0.7, side * 0.03, 0.1],
        [0.755, side * 0.05, 0.12],
        [0.81, side * 0.11, 0.16],
        [0.86, side * 0.23, 0.19],
        [0.91, side * 0.4, 0.18],
        [0.955, side * 0.57, 0.13],
        [0.985, side * 0.68, 0.07],
        [1, side * 0.73, 0],
      ],
      to,
      { lift: side * 0.5, twist: -side * 0.1 },
    );
  return {
    trunk: { ...ROUND_TRUNK, stations: trunkOf(cuts, 0.675, to), thinFrom: 14, rings: [] },
    limbs: [fin(-1), fin(1)],
    grooves: [
      { points: arcAcross(L * 0.2, H * 0.4, H * 0.46, H * 0.14), widthMm: H * 0.035, deepMm: H * 0.035 },
      { points: arcAcross(L * 0.185, H * 0.3, H * 0.36, H * 0.1), widthMm: H * 0.025, deepMm: H * 0.015 },
    ],
    eyes: [{ x: L * 0.1, y: -H * 0.1, radiusMm: H * 0.095 }],
  };
};

const worm: Draw = (to) => {
  const { lengthMm: L, heightMm: H, thinMm } = to;
  // A ribbon's bends are wider than the ribbon: a short, stout worm has flat ones.
  const wave = Math.min(0.33, (L / H) ** 2 / 430);
  const count = 61;
  let turn = 0.4;
  const cuts = Array.from({ length: count }, (_, index): Cut => {
    const x = index / (count - 1);
    const tail = ramp(0.48, 0.66, x);
    turn += (2 * Math.PI * mix(1.05, 3.7, tail)) / (count - 1);
    const sway = Math.sin(turn) * mix(Math.min(0.4, (L / H) ** 2 / 40), wave, tail) * Math.min(1, x * 3);
    const collar = ramp(0.23, 0.25, x) * (1 - ramp(0.32, 0.34, x));
    const girth = (0.5 + 0.04 * collar) * mix(1, 0.72, ramp(0.38, 0.53, x));
    const ribbon = mix(0.33, 0.68, ramp(0.52, 0.7, x)) * Math.sqrt(Math.max(0, 1 - ramp(0.74, 1.04, x) * 1.02));
    const head = Math.min(1, Math.sqrt(x / 0.045));
    return {
      x,
      y: sway,
      up: x === 0 || x === 1 ? 0 : head * mix(girth, ribbon, ramp(0.46, 0.56, x)),
      flat: ramp(0.46, 0.58, x),
      lift: 1.1 * thinMm * Math.sin(1.5 * turn + 1) * ramp(0.56, 0.7, x),
      twist: 0.34 * Math.sin(turn + 2) * ramp(0.54, 0.7, x),
    };
  });
  return {
    trunk: {
      ...ROUND_TRUNK,
      stations: trunkOf(cuts, 0.5, to),
      thinFrom: Math.round(0.54 * (count - 1)),
      rings: [...rings(L * 0.06, L * 0.22, 10, 0.07), ...rings(L * 0.355, L * 0.52, 11, 0.07)],
    },
    limbs: [],
  };
};

const grub: Draw = (to) => {
  const { lengthMm: L, heightMm: H } = to;
  const body = evenly(0.5, [0, 0.47, 0.6, 0.66, 0.67, 0.66, 0.65, 0.63, 0.6, 0.56, 0.5]);
  // The tail's curl: part of a circle, from below its middle round its right to above it.
  const curlHalf = Math.min(0.37, (0.085 * L) / H);
  const [radius, wide] = [0.128, (0.31 * H) / L];
  const [middleX, middleY] = [1 - radius - wide, 0.036 - radius];
  const steps = 9;
  const curl = Array.from({ length: steps + 1 }, (_, index): Cut => {
    const part = index / steps;
    const angle = Math.PI * (0.5 - 1.28 * part);
    const away = radius * (1 - 0.1 * part);
    return {
      x: middleX + away * Math.cos(angle),
      y: ((middleY + away * Math.sin(angle)) * L) / H,
      up: part === 1 ? 0 : curlHalf * (1 - part ** 1.8) ** 0.7,
      flat: 1,
      lift: 0.35 + 0.5 * Math.sin(Math.PI * part),
      twist: 0.16 * Math.sin(Math.PI * part),
    };
  });
  const [first] = curl;
  const sink = (part: number): number => first!.y! * ramp(0.5, middleX + 0.03, part);
  const root = (x: number, up: number, flat: number, lift: number): Cut => ({ x, y: sink(x), up, flat, lift });
  const cuts: readonly Cut[] = [
    ...body,
    root(0.54, 0.44, 0.15, 0),
    root(0.58, 0.4, 0.45, 0),
    root(0.625, 0.37, 0.8, 0.08),
    root(0.67, 0.36, 1, 0.16),
    root(0.715, Math.min(0.36, curlHalf), 1, 0.22),
    root(0.76, Math.min(0.365, curlHalf), 1, 0.3),
    ...curl,
  ];
  return {
    trunk: {
      ...ROUND_TRUNK,
      stations: trunkOf(cuts, 0.66, to),
      thinFrom: 13,
      rings: rings(L * 0.1, L * 0.5, 9, 0.1),
    },
    limbs: [],
  };
};

const stick: Draw = (to) => {
  const { lengthMm: L, bodyMm, thinMm, girthExponent } = to;
  const count = 33;
  // So high that it is as thick as the mold's thin part.
  const end = Math.min(0.85, Math.max(0.3, (thinMm / bodyMm) ** (1 / girthExponent)));
  const cuts = Array.from({ length: count }, (_, index): Cut => {
    const x = index / (count - 1);
    const taper = 1 - (1 - end) * ramp(0.5, 0.98, x);
    const cap = Math.sqrt(Math.max(0, 1 - Math.max(0, (x - 0.965) / 0.035) ** 2));
    return { x, up: 0.51 * Math.min(1, Math.sqrt(x / 0.05)) * taper * cap };
  });
  return {
    trunk: {
      ...ROUND_TRUNK,
      stations: trunkOf(cuts, 0.51, to),
      thinFrom: Math.round(0.86 * (count - 1)),
      rings: rings(L * 0.1, L * 0.86, 17, 0.075),
    },
    limbs: [],
  };
};

const tube: Draw = (to) => {
  const { lengthMm: L, heightMm: H } = to;
  const cuts: readonly Cut[] = [
    ...evenly(0.55, [0, 0.36, 0.46, 0.5, 0.51, 0.51, 0.51, 0.51, 0.51, 0.51, 0.51, 0.51]).map((cut) => ({
      ...cut,
      flat: 0.7 * ramp(0.47, 0.56, cut.x),
    })),
    { x: 0.57, up: 0.5, flat: 0.85 },
    { x: 0.58, up: 0, flat: 1 },
  ];
  const count = 9;
  const strands = Array.from({ length: count }, (_, index) => {
    const lane = Math.sin(((index - (count - 1) / 2) / ((count - 1) / 2)) * 1.35);
    const swing = index % 2 === 0 ? 1 : -1;
    const end = 1 - (index % 3) * 0.035;
    return limb(
      [
        [0.5, lane * 0.42, 0.06],
        [0.58, lane * 0.43, 0.06],
        [mix(0.58, end, 0.22), lane * 0.48 + swing * 0.03, 0.06],
        [mix(0.58, end, 0.5), lane * 0.55 - swing * 0.05, 0.056],
        [mix(0.58, end, 0.78), lane * 0.63 + swing * 0.04, 0.05],
        [end, lane * 0.68 + swing * 0.1, 0],
      ],
      to,
      { lift: swing * 0.08 * H, flat: 0.5 },
    );
  });
  return {
    trunk: { ...ROUND_TRUNK, stations: trunkOf(cuts, 0.51, to), thinFrom: 99, rings: [] },
    limbs: strands,
    grooves: [{ points: arcAcross(L * 0.525, H * 0.5, H * 0.5, H * 0.1), widthMm: H * 0.03, deepMm: H * 0.03 }],
  };
};

const craw: Draw = (to) => {
  const { lengthMm: L } = to;
  const cuts: readonly Cut[] = [
    ...evenly(0.56, [0, 0.44, 0.5, 0.52, 0.54, 0.57, 0.6, 0.65, 0.7, 0.74, 0.76, 0.75, 0.7, 0.6]).map((cut) => ({
      ...cut,
      flat: 0.35 * ramp(0.46, 0.6, cut.x),
    })),
    { x: 0.6, up: 0.45, flat: 0.6 },
    { x: 0.64, up: 0.26, flat: 0.9 },
    { x: 0.66, up: 0, flat: 1 },
  ];
  const claw = (side: number): SolidRibbon =>
    limb(
      [
        [0.44, side * 0.4, 0.16],
        [0.52, side * 0.62, 0.17],
        [0.59, side * 0.8, 0.18],
        [0.66, side * 0.94, 0.26],
        [0.74, side * 1.03, 0.42],
        [0.83, side * 1.05, 0.46],
        [0.91, side * 0.98, 0.34],
        [0.97, side * 0.88, 0.17],
        [1, side * 0.82, 0],
      ],
      to,
      { lift: 0.5, twist: side * 0.1 },
    );
  const leg = (side: number, x: number): SolidRibbon =>
    limb(
      [
        [x, side * 0.45, 0.07],
        [x - 0.015, side * 0.72, 0.07],
        [x - 0.04, side * 0.95, 0.055],
        [x - 0.075, side * 1.12, 0],
      ],
      to,
      { flat: 0.3 },
    );
  const both = (draw: (side: number) => SolidRibbon): readonly SolidRibbon[] => [draw(-1), draw(1)];
  const { heightMm: H } = to;
  // Between a claw's fingers: from its palm to its tip, bent inwards.
  const cleft = (side: number): Groove => ({
    points: Array.from({ length: 9 }, (_, index): Point => {
      const part = index / 8;
      return [L * mix(0.77, 0.985, part), side * H * (mix(1.06, 0.86, part) + 0.1 * part * (1 - part))];
    }),
    widthMm: 0.035 * H,
    deepMm: 0.03 * H,
  });
  return {
    trunk: {
      ...ROUND_TRUNK,
      stations: trunkOf(cuts, 0.74, to),
      thinFrom: 15,
      rings: rings(L * 0.07, L * 0.33, 7, 0.1),
    },
    limbs: [
      ...both(claw),
      ...both((side) => leg(side, 0.4)),
      ...both((side) => leg(side, 0.455)),
      ...both((side) => leg(side, 0.51)),
    ],
    grooves: [
      cleft(-1),
      cleft(1),
      { points: arcAcross(L * 0.47, H * 0.62, H * 0.62, -L * 0.05), widthMm: 0.03 * H, deepMm: 0.03 * H },
    ],
    eyes: [-1, 1].map((side) => ({ x: L * 0.575, y: side * H * 0.34, radiusMm: 0.07 * H })),
  };
};

const creature: Draw = (to) => {
  const { lengthMm: L } = to;
  const cuts: readonly Cut[] = [
    ...evenly(0.56, [0, 0.4, 0.49, 0.52, 0.52, 0.52, 0.53, 0.54, 0.54, 0.53, 0.51, 0.47, 0.41]).map((cut) => ({
      ...cut,
      flat: 0.4 * ramp(0.48, 0.6, cut.x),
    })),
    { x: 0.59, up: 0.36, flat: 0.75, deep: 0.9 },
    { x: 0.615, up: 0.3, flat: 1, deep: 0.6 },
    { x: 0.635, up: 0.2, flat: 1, deep: 0.35 },
    { x: 0.645, up: 0, flat: 1, deep: 0.2 },
  ];
  const paddle = (side: number, x: number, long: number): SolidRibbon =>
    limb(
      [
        [x, side * 0.36, 0.09],
        [x + 0.025, side * (0.4 + long * 0.3), 0.095],
        [x + 0.06, side * (0.4 + long * 0.6), 0.13],
        [x + 0.1, side * (0.4 + long * 0.85), 0.13],
        [x + 0.135, side * (0.4 + long), 0],
      ],
      to,
      { lift: 0.6, twist: side * 0.15 },
    );
  const flap = (side: number): SolidRibbon =>
    limb(
      [
        [0.5, side * 0.14, 0.14],
        [0.57, side * 0.18, 0.17],
        [0.65, side * 0.27, 0.2],
        [0.77, side * 0.41, 0.25],
        [0.86, side * 0.48, 0.3],
        [0.94, side * 0.47, 0.25],
        [1, side * 0.42, 0],
      ],
      to,
      { lift: 0.6, twist: -side * 0.2 },
    );
  return {
    trunk: {
      ...ROUND_TRUNK,
      stations: trunkOf(cuts, 0.53, to),
      thinFrom: 13,
      rings: rings(L * 0.08, L * 0.56, 12, 0.08),
    },
    limbs: [-1, 1].flatMap((side) => [paddle(side, 0.13, 0.66), paddle(side, 0.33, 0.84), flap(side)]),
  };
};

const DRAWINGS: Readonly<Record<ShapeName, Draw>> = { minnow, worm, grub, stick, tube, craw, creature };

/** Draws a shape to a size. */
export function drawSolid(shape: ShapeName, to: DrawnTo, sectionExponent: number): BaitSolid {
  const { trunk, limbs, grooves = [], eyes = [] } = DRAWINGS[shape](to);
  return { lengthMm: to.lengthMm, bodyMm: to.bodyMm, trunk, limbs, grooves, eyes, sectionExponent };
}
