import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type BaitField, type FieldFrame, fieldVolumeMl } from '../../src/shapes/bait-field.ts';
import { baitSolid } from '../../src/shapes/bait-solid.ts';
import { baitField, baitReach } from '../../src/shapes/mold-field.ts';
import { SHAPE_NAMES } from '../../src/shapes/shape-names.ts';
import type { ShapedMold } from '../../src/shapes/shaped-mold.ts';
import type { BaitSolid, Station } from '../../src/shapes/solid.ts';
import { solidField } from '../../src/shapes/solid-field.ts';
import { denseRibbon } from '../../src/shapes/sweep.ts';
import { MOLDS } from './demo-molds.ts';

/** A frame that a mold's bait fills, its middle line between two rows. */
function frameOf(mold: ShapedMold, pixelsPerMm = 6): FieldFrame {
  const { left, right, up, down } = baitReach(mold);
  const high = Math.ceil(Math.max(up, down) * pixelsPerMm) + 3;
  return {
    columns: Math.ceil((left + right) * pixelsPerMm) + 6,
    rows: 2 * high,
    pixelsPerMm,
    noseX: left * pixelsPerMm + 3,
    noseY: high,
  };
}

const ARRAYS = ['cover', 'thicknessMm', 'alongMm', 'across', 'halfMm', 'part', 'heightMm'] as const;

const largest = (numbers: Float32Array): number => numbers.reduce((most, each) => Math.max(most, each), 0);

describe.each(MOLDS)('the bait of %s', (_, mold) => {
  const frame = frameOf(mold);
  const field = baitField(mold, frame);

  test('holds what the mold says, within 3 %', () => {
    expect(Math.abs(fieldVolumeMl(field) / mold.cavityMl - 1)).toBeLessThan(0.03);
  });

  test('is as thick as the body somewhere, and nowhere thicker', () => {
    expect(largest(field.thicknessMm)).toBeLessThanOrEqual(mold.bodyMm);
    expect(largest(field.thicknessMm)).toBeGreaterThan(0.995 * mold.bodyMm);
  });

  test('has nothing where it does not cover, and its border within the frame', () => {
    const { columns, rows, cover } = field;
    for (let at = 0; at < cover.length; at++) {
      if (cover[at] === 0) for (const name of ARRAYS) if (field[name][at] !== 0) throw new Error(`${name} at ${at}`);
    }
    const border = cover.filter(
      (_each, at) => at < columns || at >= columns * (rows - 1) || at % columns === 0 || at % columns === columns - 1,
    );
    expect(largest(border)).toBe(0);
  });

  test('is as long as the mold says', () => {
    const covered = new Array<boolean>(frame.columns).fill(false);
    field.cover.forEach((each, at) => {
      if (each > 0.5) covered[at % frame.columns] = true;
    });
    const long = (covered.lastIndexOf(true) - covered.indexOf(true) + 1) / frame.pixelsPerMm;
    expect(Math.abs(long / (mold.lengthMm ?? long) - 1)).toBeLessThan(0.01);
  });

  test('has places across from -1 to 1, and numbers everywhere', () => {
    for (const name of ARRAYS) expect(field[name].every((each) => Number.isFinite(each))).toBe(true);
    expect(field.across.every((each) => Math.abs(each) <= 1)).toBe(true);
    expect(largest(field.across)).toBeGreaterThan(0.97);
  });

  test('is the same another time, though others were painted between', () => {
    for (const [, other] of MOLDS.slice(0, 2)) baitField(other, frameOf(other, 5));
    const again = baitField({ ...mold }, frame);
    for (const name of ARRAYS)
      expect([name, Buffer.from(again[name].buffer).equals(Buffer.from(field[name].buffer))]).toEqual([name, true]);
  });

  test.skipIf(mold.shape === 'tube')('is as thick as the thin part along the middle of what is thin', () => {
    const middle = field.thicknessMm.filter(
      (_each, at) => field.part[at] === 1 && Math.abs(field.across[at]!) < 0.4 && field.cover[at] === 1,
    );
    const median = middle.toSorted()[middle.length >> 1]!;
    expect([median / mold.thinMm > 0.85, median / mold.thinMm < 1.15, median]).toEqual([true, true, median]);
  });

  test('holds as much at another size', () => {
    expect(fieldVolumeMl(baitField(mold, frameOf(mold, 12))) / fieldVolumeMl(field)).toBeCloseTo(1, 2);
  });
});

/** How far a field is from its own mirror image, up to down: the largest difference of a thickness, mm. */
function unlikeItsMirror({ columns, rows, thicknessMm }: BaitField): number {
  let most = 0;
  for (let row = 0; row < rows / 2; row++) {
    for (let column = 0; column < columns; column++) {
      const mirrored = thicknessMm[(rows - 1 - row) * columns + column]!;
      most = Math.max(most, Math.abs(thicknessMm[row * columns + column]! - mirrored));
    }
  }
  return most;
}

test.each(['craw', 'stick', 'creature'] as const)('a %s is the same above as below', (shape) => {
  const mold = { shape, bodyMm: 10, thinMm: 2, lengthMm: 80 };
  expect(unlikeItsMirror(baitField(mold, frameOf(mold)))).toBeLessThan(1e-4);
});

test('a minnow is deeper below, so the test of mirrors can fail', () => {
  const mold = { shape: 'minnow', bodyMm: 10, thinMm: 2, lengthMm: 80 } as const;
  expect(unlikeItsMirror(baitField(mold, frameOf(mold)))).toBeGreaterThan(0.5);
});

/** A bait of one ribbon. */
function oneRibbon(stations: readonly Station[], rounded: boolean): BaitSolid {
  return {
    lengthMm: 60,
    bodyMm: 10,
    trunk: { stations, roundStart: rounded, roundEnd: rounded, thinFrom: 999, startMm: 0, rings: [] },
    limbs: [],
    sectionExponent: 2,
    grooves: [],
    eyes: [],
  };
}

const FRAME = { columns: 660, rows: 400, pixelsPerMm: 10, noseX: 30, noseY: 200 } as const;

/** Stations of a ribbon 60 mm long, by its half height and its thickness at each part of it. */
function alongSixty(
  half: (part: number) => number,
  deep: (part: number) => number,
  middle = (_: number): number => 0,
): readonly Station[] {
  return Array.from({ length: 121 }, (_, index) => {
    const part = index / 120;
    return { x: 60 * part, y: middle(part), up: half(part), down: half(part), deep: deep(part), flat: 0 };
  });
}

test('an ellipsoid holds 4/3 π abc', () => {
  const round = (part: number): number => Math.sqrt(Math.max(0, 1 - (2 * part - 1) ** 2));
  const field = solidField(
    oneRibbon(
      alongSixty(
        (part) => 8 * round(part),
        (part) => 10 * round(part),
      ),
      true,
    ),
    FRAME,
  );
  expect(fieldVolumeMl(field) / (((4 / 3) * Math.PI * 30 * 8 * 5) / 1000)).toBeCloseTo(1, 2);
});

test('an elliptic cylinder holds π ab of its length, straight or along an arc', () => {
  const volume = (Math.PI * 7 * 4 * 60) / 1000;
  const straight = solidField(
    oneRibbon(
      alongSixty(
        () => 7,
        () => 8,
      ),
      false,
    ),
    FRAME,
  );
  expect(fieldVolumeMl(straight) / volume).toBeCloseTo(1, 2);
  // By Pappus: the middle of its section goes the arc's length.
  const angle = Math.PI / 2;
  const radius = 60 / angle;
  const bent = alongSixty(
    () => 7,
    () => 8,
  ).map((station, index) => {
    const turned = angle * (index / 120 - 0.5);
    return { ...station, x: 30 + radius * Math.sin(turned), y: radius * (1 - Math.cos(turned)) - 5 };
  });
  const field = solidField(oneRibbon(bent, false), FRAME);
  expect(fieldVolumeMl(field) / volume).toBeCloseTo(1, 2);
  // Along the middle it is as long as the arc.
  expect(largest(field.alongMm)).toBeCloseTo(60, 1);
});

test('a mold that states no length has it from its volume, within 2 to 16 thicknesses', () => {
  const stick = (cavityMl: number): ShapedMold => ({ shape: 'stick', bodyMm: 9, thinMm: 4, cavityMl });
  const long = (mold: ShapedMold): number => baitSolid(mold).lengthMm;
  expect(long(stick(6)) / long(stick(3))).toBeCloseTo(2, 1);
  expect(long(stick(0.1))).toBe(2 * 9);
  expect(long(stick(100))).toBe(16 * 9);
  expect(long({ ...stick(6), lengthMm: 100 })).toBe(100);
});

const bar = ({ bodyMm, lengthMm }: { readonly bodyMm: number; readonly lengthMm: number }): number =>
  ((Math.PI / 4) * bodyMm ** 2 * lengthMm) / 1000;

test('any mold of stated length is held to its volume, from 0.45 to 0.75 of a round bar', () => {
  const molds = fc
    .record({
      shape: fc.constantFrom(...SHAPE_NAMES),
      bodyMm: fc.double({ min: 4, max: 20, noNaN: true }),
      bodies: fc.double({ min: 5, max: 20, noNaN: true }),
      thin: fc.double({ min: 0.1, max: 1, noNaN: true }),
      ofBar: fc.double({ min: 0.45, max: 0.75, noNaN: true }),
    })
    .map(({ shape, bodyMm, bodies, thin, ofBar }) => {
      const lengthMm = bodies * bodyMm;
      return {
        shape,
        bodyMm,
        thinMm: Math.max(1, thin * bodyMm),
        lengthMm,
        cavityMl: ofBar * bar({ bodyMm, lengthMm }),
      };
    });
  fc.assert(
    fc.property(molds, (mold) => {
      const field = baitField(mold, frameOf(mold, 4));
      expect(Math.abs(fieldVolumeMl(field) / mold.cavityMl - 1)).toBeLessThan(0.1);
      expect(largest(field.thicknessMm)).toBeLessThanOrEqual(Math.fround(mold.bodyMm));
      for (const name of ARRAYS) expect(field[name].every((each) => Number.isFinite(each))).toBe(true);
    }),
    { numRuns: 40 },
  );
});

test('what no bait of its length can hold is drawn as stout, or as lean, as we draw', () => {
  const mold = { shape: 'minnow', bodyMm: 10, thinMm: 2, lengthMm: 80 } as const;
  const held = (cavityMl: number): number =>
    fieldVolumeMl(baitField({ ...mold, cavityMl }, frameOf({ ...mold, cavityMl })));
  expect(held(100)).toBe(held(1000));
  expect(held(100)).toBeGreaterThan(bar(mold));
  expect(held(0.01)).toBeLessThan(0.35 * bar(mold));
});

test('no thin part turns so tightly that it would fold over itself', () => {
  for (const [, mold] of MOLDS) {
    const { trunk, limbs } = baitSolid(mold);
    for (const ribbon of [trunk, ...limbs]) {
      const dense = denseRibbon(ribbon, { columns: 0, rows: 0, pixelsPerMm: 10, noseX: 0, noseY: 0 });
      for (let at = 2; at + 2 < dense.count; at++) {
        const turn = dense.tx[at - 1]! * dense.ty[at + 1]! - dense.ty[at - 1]! * dense.tx[at + 1]!;
        const long = Math.hypot(dense.x[at + 1]! - dense.x[at - 1]!, dense.y[at + 1]! - dense.y[at - 1]!);
        // The inner side is below where the ribbon turns down.
        const half = Math.sqrt(Math.max(0, (turn > 0 ? dense.down : dense.up)[at]!));
        expect([mold.shape, at, (half * Math.abs(turn)) / long < 1]).toEqual([mold.shape, at, true]);
      }
    }
  }
});
