import { describe, expect, test } from 'vitest';
import { CARDS, type Place } from '../../../src/measuring-card/measuring-card.ts';
import { type BaitPlace, baitAlong, findBait } from '../../../src/photo/bait/bait-place.ts';
import type { LinearRgb } from '../../../src/photo/pixels.ts';
import { type Drawn, drawnWindow, seeded, type Taken } from './drawn-window.ts';

const { window, seamX } = CARDS.small;
const MIDDLE = { x: seamX, y: window.y + window.height / 2 };

/** A worm around a straight line: its ends, its half width, and what it does to the light behind it. */
interface Worm {
  readonly from?: Place;
  readonly to?: Place;
  readonly half?: number;
  readonly paint: (behind: LinearRgb) => LinearRgb;
}

const solid = (r: number, g: number, b: number) => (): LinearRgb => ({ r, g, b });
const stain =
  (r: number, g: number, b: number) =>
  (behind: LinearRgb): LinearRgb => ({ r: behind.r * r, g: behind.g * g, b: behind.b * b });

function drawn({ from = { x: 28, y: 47 }, to = { x: 105, y: 50 }, half = 4, paint }: Worm, taken?: Taken): Drawn {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  return drawnWindow(({ x, y }, behind) => {
    const along = (x - from.x) * ux + (y - from.y) * uy;
    const across = Math.abs((y - from.y) * ux - (x - from.x) * uy);
    return along >= 0 && along <= length && across <= half ? paint(behind) : behind;
  }, taken);
}

const yAt = ({ from, to }: BaitPlace, x: number): number => from.y + ((to.y - from.y) * (x - from.x)) / (to.x - from.x);

describe('a bait is found where it lies', () => {
  test.each<readonly [string, Worm, Taken]>([
    ['red, seen on both halves', { paint: solid(0.5, 0.08, 0.06) }, {}],
    ['pale, seen on black alone', { paint: solid(0.97, 0.96, 0.93) }, {}],
    ['black, seen on paper alone', { paint: solid(0.05, 0.05, 0.055) }, {}],
    ['a clear stain, which darkens paper and leaves black black', { paint: stain(0.35, 0.6, 0.2) }, {}],
    ['in a noisy photo with few pixels', { paint: solid(0.2, 0.3, 0.1) }, { perMm: 5, noise: 0.04, tilt: 0.25 }],
    ['turned by 100 degrees', { paint: solid(0.2, 0.3, 0.1) }, { turn: 1.75 }],
  ])('%s', (_, worm, taken) => {
    const photo = drawn(worm, taken);
    const place = findBait(photo, photo)!;
    expect(yAt(place, 40)).toBeCloseTo(47 + (12 * 3) / 77, 0);
    expect(Math.abs(yAt(place, 40) - (47 + 36 / 77))).toBeLessThan(0.2);
    expect(Math.abs(yAt(place, 95) - (47 + (67 * 3) / 77))).toBeLessThan(0.2);
    expect(place.halfWidth).toBeGreaterThan(3.7);
    expect(place.halfWidth).toBeLessThan(4.3);
  });
});

test('both ends are found of a bait that both halves show; of another the seen half tells for both', () => {
  const red = drawn({ paint: solid(0.5, 0.08, 0.06) });
  const whole = findBait(red, red)!;
  expect(Math.abs(whole.from.x - 28)).toBeLessThan(1);
  expect(Math.abs(whole.to.x - 105)).toBeLessThan(1);
  const black = drawn({ paint: solid(0.05, 0.05, 0.055) });
  expect(findBait(black, black)!.to.x - seamX).toBeCloseTo(15, 0);
});

test('a bait that lies on paper alone is not thought to lie on black', () => {
  const photo = drawn({ from: { x: 22, y: 48 }, to: { x: 60, y: 48 }, paint: solid(0.05, 0.05, 0.055) });
  expect(findBait(photo, photo)!.to.x).toBeLessThan(62);
});

test.each([12.5, 15, 20])(
  'a round chip of %d mm radius across the seam is found, though it reaches over the window',
  (radius) => {
    const photo = drawnWindow(({ x, y }, behind) =>
      Math.hypot(x - MIDDLE.x, y - MIDDLE.y) < radius ? { r: 0.1, g: 0.25, b: 0.4 } : behind,
    );
    const place = findBait(photo, photo)!;
    expect(Math.abs(yAt(place, MIDDLE.x) - MIDDLE.y)).toBeLessThan(0.5);
    expect(Math.abs(place.from.x - (MIDDLE.x - radius))).toBeLessThan(1.5);
    expect(Math.abs(place.to.x - (MIDDLE.x + radius))).toBeLessThan(1.5);
  },
);

test('flake, a highlight and a soft shadow do not move it', () => {
  const random = seeded(3);
  const flakes = Array.from({ length: 250 }, () => ({ x: 28 + 77 * random(), y: 42 + 13 * random() }));
  const photo = drawnWindow(({ x, y }, behind) => {
    const across = y - 48;
    if (x > 28 && x < 105 && Math.abs(across) <= 4) {
      if (Math.abs(across + 2) < 0.5) return { r: 1.1, g: 1.1, b: 1.1 };
      if (flakes.some((flake) => Math.hypot(flake.x - x, flake.y - y) < 0.45)) return { r: 0.9, g: 0.7, b: 0.2 };
      return { r: 0.12, g: 0.2, b: 0.05 };
    }
    const shade = x < seamX && across > 4 && across < 8 ? 0.75 + (across - 4) / 16 : 1;
    return { r: behind.r * shade, g: behind.g * shade, b: behind.b * shade };
  });
  const place = findBait(photo, photo)!;
  expect(Math.abs(yAt(place, 45) - 48)).toBeLessThan(0.4);
  expect(place.halfWidth).toBeLessThan(4.5);
});

test('an empty card has no bait', () => {
  const photo = drawnWindow((_, behind) => behind);
  expect(findBait(photo, photo)).toBeUndefined();
});

test('along a touched line the bait is as wide as it is there, and a clear one gets a narrow zone', () => {
  const line = [
    { x: 90, y: 50 },
    { x: 40, y: 44 },
  ] as const;
  const photo = drawn({ from: { x: 34, y: 43.3 }, to: { x: 96, y: 50.7 }, half: 3.5, paint: solid(0.5, 0.1, 0.1) });
  const place = baitAlong(photo, photo, line);
  expect([place.from, place.to]).toEqual([line[1], line[0]]);
  expect(Math.abs(place.halfWidth - 3.5)).toBeLessThan(0.5);
  const empty = drawnWindow((_, behind) => behind);
  expect(baitAlong(empty, empty, line).halfWidth).toBe(2.5);
});
