import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BelievedViews } from '../../src/learning/believed-views.ts';
import { colourDoubt, type DoubtfulTarget, expectedDifference } from '../../src/learning/expected-difference.ts';
import { DRAW_AXES, DRAW_COUNT, NORMAL_DRAWS } from '../../src/learning/normal-draws.ts';
import { normalQuantile } from '../../src/learning/normal-quantile.ts';
import type { Lab } from '../../src/optics/cielab.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { localMetric } from '../../src/optics/local-metric.ts';
import { expectClose } from '../optics/close.ts';
import { normals } from './normals.ts';

const TAN: Lab = { L: 62, a: 8, b: 24 };
const BROWN: Lab = { L: 31, a: 6, b: 12 };

/** Covariance of independent axes. */
function axes(...sds: number[]): Float64Array {
  const C = new Float64Array(36);
  for (let i = 0; i < 6; i++) C[7 * i] = (sds[i] ?? 0) ** 2;
  return C;
}

const believed = (covariance: Float64Array): BelievedViews => ({
  overWhite: TAN,
  overBlack: BROWN,
  covariance,
  looks: 0,
});

describe('normalQuantile', () => {
  test('is the inverse of the integral of the density', () => {
    // Simpson's rule from the middle.
    const area = (x: number): number => {
      const n = 2000;
      let sum = 0;
      for (let i = 0; i <= n; i++)
        sum += (i === 0 || i === n ? 1 : i % 2 ? 4 : 2) * Math.exp(-(((i * x) / n) ** 2) / 2);
      return 0.5 + (sum * x) / (3 * n * Math.sqrt(2 * Math.PI));
    };
    for (const p of [1e-4, 0.01, 0.02425, 0.1, 0.3, 0.5, 0.7, 0.975, 0.9999])
      expectClose(area(normalQuantile(p)), p, 1e-9);
  });
});

test('NORMAL_DRAWS have no mean and the unit as covariance', () => {
  for (let i = 0; i < DRAW_AXES; i++) {
    for (let j = 0; j <= i; j++) {
      let [mean, product] = [0, 0];
      for (let draw = 0; draw < DRAW_COUNT; draw++) {
        mean += NORMAL_DRAWS[draw * DRAW_AXES + i]! / DRAW_COUNT;
        product += (NORMAL_DRAWS[draw * DRAW_AXES + i]! * NORMAL_DRAWS[draw * DRAW_AXES + j]!) / DRAW_COUNT;
      }
      expectClose(mean, 0, 1e-12);
      expectClose(product, i === j ? 1 : 0, 1e-12);
    }
  }
});

describe('against closed forms, where the doubt is small', () => {
  // Of the chi distribution, from tables of chi-square: mean, and roots of the 50 % and 90 % points.
  test.each([
    ['one axis', [0.05], 0.79788, 0.67449, 1.64485],
    ['another axis', [0, 0, 0.05], 0.79788, 0.67449, 1.64485],
    ['two axes', [0.05, 0.05], 1.25331, 1.17741, 2.14597],
    ['three axes', [0.05, 0.05, 0.05], 1.59577, 1.53817, 2.50028],
    ['three axes over black', [0, 0, 0, 0.05, 0.05, 0.05], 1.59577, 1.53817, 2.50028],
  ])('colourDoubt of %s is of the chi distribution', (_, sds, mean, median, bound) => {
    const doubt = colourDoubt(believed(axes(...sds)));
    expectClose(doubt.expected / 0.05, mean, 0.02 * mean);
    expectClose(doubt.bound90 / 0.05, bound, 0.05 * bound);
    expectClose(doubt.within(0.05 * median), 0.5, 0.05);
  });

  test('a colour that is known is as far from a target as it is', () => {
    const target = { overWhite: { L: 60, a: 10, b: 20 }, overBlack: { L: 40, a: 6, b: 12 } };
    const far = deltaE00(BROWN, target.overBlack);
    const { expected, bound90, within } = expectedDifference(believed(new Float64Array(36)), target);
    expectClose(expected, far, 1e-9);
    expectClose(bound90, far, 1e-9);
    expect([within(far - 0.001), within(far + 0.001)]).toEqual([0, 1]);
    const white = expectedDifference(believed(new Float64Array(36)), { overWhite: target.overWhite });
    expectClose(white.expected, deltaE00(TAN, target.overWhite), 1e-9, 'only the view that the target has');
  });

  test('what is unknown of a target counts as what is unknown of the colour', () => {
    const { overWhite, overBlack } = believed(axes());
    const photo = expectedDifference(believed(axes()), { overWhite, overBlack, axisSd: 0.05, means: 'screen' });
    const C = axes(0.05, 0.05, 0.05, 0.05, 0.05, 0.05);
    for (let i = 0; i < 3; i++) C[6 * i + 3 + i] = C[6 * (3 + i) + i] = 0.64 * 0.05 ** 2;
    expectClose(photo.bound90, colourDoubt(believed(C)).bound90, 1e-6);
    const twice = expectedDifference(believed(axes()), { overWhite, overBlack, axisSd: 0.05, means: 'instrument' });
    expect(twice.expected).toBeGreaterThan(photo.expected);
  });
});

/** Counted over many draws of the colour and of the target, each about its own place in its own metric. */
function counted(of: BelievedViews, target: DoubtfulTarget, spread: readonly (readonly number[])[], draws: number) {
  const normal = normals(99);
  const moved = (lab: Lab, x: readonly number[]): Lab => {
    // Three equations, solved from the last.
    const M = localMetric(lab);
    const b = x[2]! / M[8]!;
    const a = (x[1]! - M[5]! * b) / M[4]!;
    return { L: lab.L + (x[0]! - M[1]! * a - M[2]! * b) / M[0]!, a: lab.a + a, b: lab.b + b };
  };
  const sd = target.axisSd ?? 0;
  const rho = target.means === 'screen' ? 0.64 : 0;
  const differences = Float64Array.from({ length: draws }, () => {
    const z = spread[0]!.map(normal);
    const x = spread.map((row) => row.reduce((sum, value, k) => sum + value * z[k]!, 0));
    const e = [0, 1, 2].map(() => sd * normal());
    const other = e.map((value) => rho * value + Math.sqrt(1 - rho * rho) * sd * normal());
    const white = deltaE00(moved(of.overWhite, x.slice(0, 3)), moved(target.overWhite, e));
    if (!target.overBlack) return white;
    return Math.max(white, deltaE00(moved(of.overBlack, x.slice(3)), moved(target.overBlack, other)));
  }).sort();
  return {
    expected: differences.reduce((sum, difference) => sum + difference, 0) / draws,
    bound90: differences[Math.floor(0.9 * draws)]!,
  };
}

test.each([
  ['wide and near', 2.5, 1, 0, undefined],
  ['narrow and off', 0.8, 4, 0, undefined],
  ['as wide as off', 1.5, 3, 0, undefined],
  ['a photo of a target', 1.2, 2, 1.15, 'screen'],
  ['an instrument twice', 0.6, 1, 1, 'instrument'],
] as const)('expectedDifference agrees with counting 5000 draws: %s', (_, size, off, axisSd, means) => {
  const normal = normals(7);
  let [bounds, chances] = [0, 0];
  for (let problem = 0; problem < 6; problem++) {
    const rank = [1, 2, 3, 6, 4, 6][problem]!;
    const spread = Array.from({ length: 6 }, () =>
      Array.from({ length: rank }, () => (size * normal()) / Math.sqrt(rank)),
    );
    const C = new Float64Array(36);
    for (let i = 0; i < 36; i++)
      C[i] = spread[Math.floor(i / 6)]!.reduce((sum, value, k) => sum + value * spread[i % 6]![k]!, 0);
    const [overWhite, overBlack] = [TAN, BROWN].map(({ L, a, b }) => ({
      L: L + off * normal(),
      a: a + off * normal(),
      b: b + off * normal(),
    })) as [Lab, Lab];
    const target: DoubtfulTarget = {
      overWhite,
      ...(problem === 3 ? {} : { overBlack }),
      axisSd,
      ...(means && { means }),
    };
    const asked = expectedDifference(believed(C), target);
    const truth = counted(believed(C), target, spread, 5000);
    expectClose(asked.expected, truth.expected, 0.045 * truth.expected, `expected of problem ${problem}`);
    bounds += (asked.bound90 / truth.bound90 - 1) ** 2 / 6;
    chances += (asked.within(truth.bound90) - 0.9) ** 2 / 6;
  }
  expectClose(Math.sqrt(bounds), 0, 0.045, 'bounds, root mean square of what they are off by');
  expectClose(Math.sqrt(chances), 0, 0.035, 'chances');
});

describe('laws', () => {
  const sds = fc.array(fc.double({ min: 0, max: 6, noNaN: true }), { minLength: 6, maxLength: 6 });
  const lab = fc.record({
    L: fc.double({ min: 5, max: 95, noNaN: true }),
    a: fc.double({ min: -40, max: 40, noNaN: true }),
    b: fc.double({ min: -40, max: 40, noNaN: true }),
  });

  test('a probability grows with the tolerance from 0 to 1, and is nine in ten at the bound', () => {
    fc.assert(
      fc.property(sds, lab, lab, (widths, overWhite, overBlack) => {
        fc.pre(Math.max(...widths) > 0.01);
        const { expected, bound90, within } = expectedDifference(believed(axes(...widths)), { overWhite, overBlack });
        const tolerances = Array.from({ length: 60 }, (_, i) => i * 2);
        const likely = tolerances.map(within);
        for (const [i, p] of likely.entries()) expect(p).toBeGreaterThanOrEqual(i === 0 ? 0 : likely[i - 1]!);
        expect(within(1e3)).toBe(1);
        // Differences that are alike but for rounding leave the place between two of them open.
        expect(within(bound90)).toBeGreaterThan(0.9 - 0.6 / DRAW_COUNT);
        expect(expected).toBeGreaterThan(0);
      }),
    );
  });

  test('a wider doubt is told wider', () => {
    fc.assert(
      fc.property(sds, fc.double({ min: 1.05, max: 3, noNaN: true }), (widths, factor) => {
        fc.pre(Math.max(...widths) > 0.01 && Math.max(...widths) * factor < 6);
        const one = colourDoubt(believed(axes(...widths)));
        const other = colourDoubt(believed(axes(...widths.map((width) => width * factor))));
        expect(other.expected).toBeGreaterThan(one.expected);
        expect(other.bound90).toBeGreaterThan(one.bound90);
      }),
    );
  });
});
