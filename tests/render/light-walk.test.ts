import { expect, test } from 'vitest';
import { lightWalk } from '../../src/render/method/light-walk.ts';

const length = (corners: readonly (readonly [number, number])[]): number =>
  corners.slice(1).reduce((sum, [x, y], at) => sum + Math.hypot(x - corners[at]![0], y - corners[at]![1]), 0);

test('in clear plastic a ray goes straight down to the card and straight back', () => {
  const { corners, wayMm, turns } = lightWalk(0, 6, 9);
  expect(corners.map(([, down]) => down)).toEqual([0, 6, 0]);
  expect([wayMm, turns]).toEqual([12, 0]);
  for (const [across] of corners) expect(across).toBeCloseTo(0, 9);
});

test('in cloudy plastic it turns, stays in its drawing, comes out, and is the same every time', () => {
  for (const perMm of [0.3, 0.6, 1.5, 3]) {
    const walk = lightWalk(perMm, 6, 9);
    const { corners, wayMm, turns } = walk;
    expect(walk).toEqual(lightWalk(perMm, 6, 9));
    expect(turns, String(perMm)).toBeGreaterThanOrEqual(4);
    expect(wayMm).toBeCloseTo(length(corners), 9);
    expect(corners.at(-1)![1]).toBeCloseTo(0, 9);
    for (const [across, down] of corners) {
      expect(Math.abs(across)).toBeLessThanOrEqual(3.6);
      expect(down).toBeGreaterThanOrEqual(-1e-9);
      expect(down).toBeLessThanOrEqual(6 + 1e-9);
    }
  }
});
