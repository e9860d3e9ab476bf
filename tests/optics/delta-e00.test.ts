import { differenceCiede2000 } from 'culori/fn';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Lab } from '../../src/optics/cielab.ts';
import { deltaE00, deltaE00Parts } from '../../src/optics/delta-e00.ts';
import { expectClose } from './close.ts';
import { referenceNumbers, referenceTest } from './reference.ts';

/** G. Sharma, W. Wu & E. N. Dalal, Color Res. Appl. 30:21 (2005), table 1: L, a, b of two colours, ΔE00 to 4 decimals. */
const SHARMA: readonly (readonly [number, number, number, number, number, number, number])[] = [
  [50, 2.6772, -79.7751, 50, 0, -82.7485, 2.0425],
  [50, 3.1571, -77.2803, 50, 0, -82.7485, 2.8615],
  [50, 2.8361, -74.02, 50, 0, -82.7485, 3.4412],
  [50, -1.3802, -84.2814, 50, 0, -82.7485, 1],
  [50, -1.1848, -84.8006, 50, 0, -82.7485, 1],
  [50, -0.9009, -85.5211, 50, 0, -82.7485, 1],
  [50, 0, 0, 50, -1, 2, 2.3669],
  [50, -1, 2, 50, 0, 0, 2.3669],
  [50, 2.49, -0.001, 50, -2.49, 0.0009, 7.1792],
  [50, 2.49, -0.001, 50, -2.49, 0.001, 7.1792],
  [50, 2.49, -0.001, 50, -2.49, 0.0011, 7.2195],
  [50, 2.49, -0.001, 50, -2.49, 0.0012, 7.2195],
  [50, -0.001, 2.49, 50, 0.0009, -2.49, 4.8045],
  [50, -0.001, 2.49, 50, 0.001, -2.49, 4.8045],
  [50, -0.001, 2.49, 50, 0.0011, -2.49, 4.7461],
  [50, 2.5, 0, 50, 0, -2.5, 4.3065],
  [50, 2.5, 0, 73, 25, -18, 27.1492],
  [50, 2.5, 0, 61, -5, 29, 22.8977],
  [50, 2.5, 0, 56, -27, -3, 31.903],
  [50, 2.5, 0, 58, 24, 15, 19.4535],
  [50, 2.5, 0, 50, 3.1736, 0.5854, 1],
  [50, 2.5, 0, 50, 3.2972, 0, 1],
  [50, 2.5, 0, 50, 1.8634, 0.5757, 1],
  [50, 2.5, 0, 50, 3.2592, 0.335, 1],
  [60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387, 1.2644],
  [63.0109, -31.0961, -5.8663, 62.8187, -29.7946, -4.0864, 1.263],
  [61.2901, 3.7196, -5.3901, 61.4292, 2.248, -4.962, 1.8731],
  [35.0831, -44.1164, 3.7933, 35.0232, -40.0716, 1.5901, 1.8645],
  [22.7233, 20.0904, -46.694, 23.0331, 14.973, -42.5619, 2.0373],
  [36.4612, 47.858, 18.3852, 36.2715, 50.5065, 21.2231, 1.4146],
  [90.8027, -2.0831, 1.441, 91.1528, -1.6435, 0.0447, 1.4441],
  [90.9257, -0.5406, -0.9208, 88.6381, -0.8985, -0.7239, 1.5381],
  [6.7747, -0.2908, -2.4247, 5.8714, -0.0985, -2.2286, 0.6377],
  [2.0776, 0.0795, -1.135, 0.9033, -0.0636, -0.5514, 0.9082],
];

const lab: fc.Arbitrary<Lab> = fc.record({
  L: fc.double({ min: 0, max: 100, noNaN: true }),
  a: fc.double({ min: -128, max: 128, noNaN: true }),
  b: fc.double({ min: -128, max: 128, noNaN: true }),
});

/**
 * Whether the formula doesn't jump here. It does where hues are opposite, and where their mean is 0°, which is also 360°: within
 * rounding of those, two right ways to compute it may land on either side. Beside a true grey it has no hue difference, and no jump.
 */
function settled(x: Lab, y: Lab): boolean {
  const [Cx, Cy] = [Math.hypot(x.a, x.b), Math.hypot(y.a, y.b)];
  if (Cx === 0 || Cy === 0) return true;
  const opposite = Math.hypot(x.a / Cx + y.a / Cy, x.b / Cx + y.b / Cy) < 1e-6;
  return !opposite && Math.abs(x.b / Cx + y.b / Cy) > 1e-9;
}

describe('external truth', () => {
  test.each(SHARMA)(
    'deltaE00 of the published pair %s %s %s / %s %s %s is %s, both ways',
    (L1, a1, b1, L2, a2, b2, dE) => {
      const x = { L: L1, a: a1, b: b1 };
      const y = { L: L2, a: a2, b: b2 };
      expectClose(deltaE00(x, y), dE, 0.00005);
      expectClose(deltaE00(y, x), dE, 0.00005);
    },
  );

  referenceTest('the published pairs above are those of the check data', () => {
    expect(SHARMA).toEqual(referenceNumbers('sharma_ciede2000.csv'));
  });

  test('deltaE00 agrees with culori’s on any two colours, away from the formula’s own jumps', () => {
    const culori = differenceCiede2000();
    fc.assert(
      fc.property(lab, lab, (x, y) => {
        fc.pre(settled(x, y));
        const theirs = culori({ mode: 'lab65', l: x.L, a: x.a, b: x.b }, { mode: 'lab65', l: y.L, a: y.a, b: y.b });
        expectClose(deltaE00(x, y), theirs, 1e-6);
      }),
      { numRuns: 3000 },
    );
  });
});

describe('laws', () => {
  test('deltaE00 is 0 from a colour to itself, the same both ways, and never below 0', () => {
    fc.assert(
      fc.property(lab, lab, (x, y) => {
        expect(deltaE00(x, x)).toBe(0);
        expect(deltaE00(x, y)).toBeGreaterThanOrEqual(0);
        if (settled(x, y)) expectClose(deltaE00(x, y), deltaE00(y, x), 1e-9);
      }),
      { numRuns: 1000 },
    );
  });

  test('deltaE00Parts add up to the total, and turn around with the colours', () => {
    fc.assert(
      fc.property(lab, lab, (x, y) => {
        const { dL, dC, dH, rotation, total } = deltaE00Parts(x, y);
        expectClose(dL * dL + dC * dC + dH * dH + rotation, total * total, 1e-9 * (1 + total * total));
        expect(total).toBe(deltaE00(x, y));
        const back = deltaE00Parts(y, x);
        expectClose(back.dL, -dL, 1e-10);
        expectClose(back.dC, -dC, 1e-10);
        expectClose(Math.abs(back.dH), Math.abs(dH), 1e-7);
      }),
      { numRuns: 1000 },
    );
  });

  test('deltaE00Parts say lighter, stronger, and toward yellow by their signs', () => {
    const grey = { L: 50, a: 0, b: 0 };
    expect(deltaE00Parts(grey, { ...grey, L: 60 })).toMatchObject({ dC: 0, dH: 0 });
    expect(deltaE00Parts(grey, { ...grey, L: 60 }).dL).toBeGreaterThan(9);
    const red = { L: 50, a: 40, b: 0 };
    expect(deltaE00Parts(red, { L: 50, a: 60, b: 0 }).dC).toBeGreaterThan(0);
    expect(deltaE00Parts(red, { L: 50, a: 30, b: 25 }).dH).toBeGreaterThan(0);
    expect(deltaE00Parts(red, { L: 50, a: 30, b: -25 }).dH).toBeLessThan(0);
  });

  test('deltaE00 between opposite hues doesn’t hang on the last bit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        (C, h) => {
          const x = { L: 50, a: C * Math.cos(h), b: C * Math.sin(h) };
          const y = { L: 50, a: -x.a, b: -x.b };
          const parts = deltaE00Parts(x, y);
          expect(Number.isFinite(parts.total)).toBe(true);
          // Opposite hues of one chroma differ in hue only, and the mean hue is a quarter turn from both.
          expectClose(parts.dC, 0, 1e-12);
          expect(parts.total).toBeGreaterThan(0);
        },
      ),
    );
  });

  test('deltaE00 never is NaN, even far outside any colour', () => {
    const any = fc.oneof(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      fc.constantFrom(0, 1e-300, -1e-300, Number.MIN_VALUE, 1e40, -1e40),
    );
    fc.assert(
      fc.property(any, any, any, any, any, any, (L1, a1, b1, L2, a2, b2) => {
        expect(deltaE00({ L: L1, a: a1, b: b1 }, { L: L2, a: a2, b: b2 })).not.toBeNaN();
      }),
      { numRuns: 3000 },
    );
  });
});
