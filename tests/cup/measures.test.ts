import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Bench } from '../../src/cup/bench.ts';
import { measuredAmounts } from '../../src/cup/measured-amounts.ts';
import { measures, weighed, weighedAsExact } from '../../src/cup/measures.ts';
import { tooLittleToWeigh } from '../../src/matching/measure/too-little.ts';

const TSP = 4.92892159375;
const bench: Bench = {
  drops: true,
  spoons: [
    { ml: TSP, name: '1 tsp' },
    { ml: TSP / 2, name: '1/2 tsp' },
    { ml: TSP / 4, name: '1/4 tsp' },
    { ml: TSP / 8, name: '1/8 tsp' },
  ],
  scaleGrams: 0.01,
  dropSpread: 0.1,
  spoonSpread: 0.1,
};
const { scaleGrams: _, ...NO_SCALE } = bench;
const liquid = { gramsPerDrop: 0.05, gramsPerMl: 1 };
const powder = { gramsPerMl: 0.4 };

describe('weighedAsExact', () => {
  const HUNDREDTH_OUNCE = 0.28349523125;
  test('weighedAsExact(grams, step) reads an amount off the scale, or leaves it', () => {
    expect(weighedAsExact(0.8, 0.01)).toBe('0.80 g');
    expect(weighedAsExact(0.04, 0.1)).toBeUndefined();
    expect(weighedAsExact(1.04, 0.1)).toBe('1.0 g');
    expect(weighedAsExact(1.12, HUNDREDTH_OUNCE)).toBe('0.04 oz (1.13 g)');
    // 0.03 oz is a fifth more, and 0.02 oz may be any weight from a quarter less to a quarter more.
    expect(weighedAsExact(0.709, HUNDREDTH_OUNCE)).toBeUndefined();
    expect(weighedAsExact(0.567, HUNDREDTH_OUNCE)).toBeUndefined();
  });
  test('weighedAsExact(grams, step) is within a twentieth, and weighs nothing that proposals call too little', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 30, noNaN: true }),
        fc.constantFrom(0.01, 0.1, HUNDREDTH_OUNCE),
        (grams, step) => {
          const text = weighedAsExact(grams, step);
          if (text === undefined) return;
          expect(Math.abs(weighed(grams, step).grams / grams - 1)).toBeLessThanOrEqual(0.05);
          expect(tooLittleToWeigh([{ title: 'Peat', grams, text, isLiquid: true }], step)).toBeUndefined();
        },
      ),
    );
  });
});

describe('measures', () => {
  test('measures(liquid) are whole drops on either side', () => {
    expect(measures(0.37, liquid, bench).map(({ text }) => text)).toEqual(['7 drops', '8 drops']);
    expect(measures(0.01, liquid, bench).map(({ text }) => text)).toEqual(['1 drop']);
  });
  test('measures(much liquid) are not counted in drops, unless there is nothing else', () => {
    expect(measures(7.3, liquid, bench)[0]!.text).toBe('1 tsp + 1/2 tsp');
    expect(measures(7.3, liquid, { drops: true, spoons: [], dropSpread: 0.1, spoonSpread: 0.1 })[0]!.text).toBe(
      '146 drops',
    );
  });
  test('measures(powder) are level spoons, and their sums are what the words say', () => {
    const [nearest] = measures(0.375 * TSP * 0.4, powder, bench);
    expect(nearest).toMatchObject({ text: '1/4 tsp + 1/8 tsp', tool: 'spoons' });
    expect(nearest!.grams).toBeCloseTo(0.375 * TSP * 0.4, 12);
  });
  test('measures(powder without spoons) are steps of the scale', () => {
    expect(measures(0.337, powder, { ...bench, spoons: [] })).toEqual([
      { grams: 0.34, text: '0.34 g', tool: 'scale', effort: 1 },
    ]);
  });
  test('weighed(less than a step) is one step, never nothing', () => {
    expect(weighed(0.001, 0.01).text).toBe('0.01 g');
  });
  test.each([
    [0.25, 0.25, '0.25 g'],
    [0.6, 0.25, '0.50 g'],
    [1.25, 0.5, '1.5 g'],
    [0.337, 0.02, '0.34 g'],
    [0.0123, 0.001, '0.012 g'],
    [12.4, 1, '12 g'],
    [27, 10, '30 g'],
    [1.231, 0.01 * 28.349523125, '0.04 oz (1.13 g)'],
    [10, 0.125 * 28.349523125, '0.375 oz (10.63 g)'],
    [30, 0.1 * 28.349523125, '1.1 oz (31.18 g)'],
    [30, 0.01 * 453.59237, '0.07 lb (31.75 g)'],
  ])('weighed(%f g, in steps of %f g) is what the scale shows: %s', (grams, step, text) => {
    const measure = weighed(grams, step);
    expect(measure.text).toBe(text);
    // What stands there is what was meant: the text does not round the step away.
    expect(Number.parseFloat(/([\d.]+) g/.exec(text)![1]!) / measure.grams).toBeCloseTo(1, 2);
  });
  test('measures(grams) are never empty, never zero, and the nearest is within half the finest tool', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.0001, max: 40, noNaN: true }), fc.boolean(), (grams, drops) => {
        const material = drops ? liquid : powder;
        const counted = drops && grams <= 100 * liquid.gramsPerDrop;
        const finest = counted ? liquid.gramsPerDrop : (TSP / 8) * material.gramsPerMl;
        const found = measures(grams, material, NO_SCALE);
        expect(found.length).toBeGreaterThan(0);
        for (const measure of found) expect(measure.grams).toBeGreaterThan(0);
        // Very large amounts are measured in the largest spoon: nobody levels dozens of small ones.
        if (grams < TSP * material.gramsPerMl * 4 || counted) {
          expect(Math.abs(found[0]!.grams - grams)).toBeLessThanOrEqual(
            Math.max(finest / 2 + 1e-9, grams < finest ? finest : 0),
          );
        }
      }),
    );
  });
});

describe('measures beside a scale', () => {
  test('are two level spoonfuls at most, near the amount, or its weight', () => {
    fc.assert(
      fc.property(fc.double({ min: (TSP / 4) * 0.4, max: 40, noNaN: true }), (grams) => {
        const [nearest] = measures(grams, powder, bench);
        expect(Math.abs(nearest!.grams / grams - 1)).toBeLessThanOrEqual(0.2 + 1e-6);
        if (nearest!.tool === 'spoons') expect(nearest!.effort).toBeLessThanOrEqual(2);
        else expect(nearest!.tool).toBe('scale');
      }),
    );
  });
  test('more than two of the largest spoon is weighed, and heaped up only where there is no scale', () => {
    expect(measures(4 * TSP * 0.4, powder, bench)).toMatchObject([{ text: '7.89 g', tool: 'scale' }]);
    expect(measures(4 * TSP * 0.4, powder, NO_SCALE)[0]!.text).toBe('4 × 1 tsp');
  });
});

describe('measuredAmounts', () => {
  test('measuredAmounts rounds one dose against another where that keeps the colour', () => {
    // Only the sum of the two is seen: 5.4 + 5.4 drops look like 11 drops, and rounding each to its nearest would give 10.
    const colourError = (grams: Readonly<Record<string, number>>): number =>
      Math.abs(grams.straw! + grams.peat! - 10.8 * 0.05) * 1000;
    const { chosen, deltaE, together } = measuredAmounts(
      { straw: 5.4 * 0.05, peat: 5.4 * 0.05 },
      () => liquid,
      bench,
      colourError,
    );
    expect(chosen.straw!.grams + chosen.peat!.grams).toBeCloseTo(11 * 0.05, 9);
    // 5 drops of the one and the other weighed would be 10.4.
    expect(together).toBe(true);
    expect(deltaE).toBeCloseTo(0.2 * 0.05 * 1000, 6);
  });
  test('measuredAmounts keeps the dose of flake near although it hardly moves the colour', () => {
    const { chosen } = measuredAmounts(
      { flake: 0.375 * TSP * 0.4 },
      () => powder,
      bench,
      () => 0,
    );
    expect(chosen.flake!.text).toBe('1/4 tsp + 1/8 tsp');
  });
  test('measuredAmounts weighs what no spoon comes near, and says which spoon was too coarse', () => {
    const exact = { flake: 0.14 };
    const flake = { gramsPerMl: 0.55 };
    const { chosen, tooCoarse, together } = measuredAmounts(
      exact,
      () => flake,
      bench,
      () => 0,
    );
    expect(chosen.flake).toMatchObject({ text: '0.14 g', tool: 'scale' });
    // 4.9289 ml / 8 × 0.55 g/ml = 0.3389 g, 2.4 times as much.
    expect(tooCoarse.flake).toMatchObject({ text: '1/8 tsp', grams: expect.closeTo(0.3389, 4) });
    expect(together).toBe(false);
    const byHand = measuredAmounts(
      exact,
      () => flake,
      NO_SCALE,
      () => 0,
    );
    expect(byHand.chosen.flake!.text).toBe('1/8 tsp');
    expect(byHand.tooCoarse).toEqual({});
  });
  test('measuredAmounts weighs the one dose whose drops leave the colour off, and no more', () => {
    // 5.4 drops of soot are seen far sooner than 5.4 of straw.
    const exact = { soot: 5.4 * 0.05, straw: 5.4 * 0.05 };
    const error = (grams: Readonly<Record<string, number>>): number =>
      150 * Math.abs(grams.soot! - exact.soot) + 10 * Math.abs(grams.straw! - exact.straw);
    const { chosen, deltaE, byHandDeltaE } = measuredAmounts(exact, () => liquid, bench, error, 2);
    expect(chosen.soot).toMatchObject({ text: '0.27 g', tool: 'scale' });
    expect(chosen.straw).toMatchObject({ text: '5 drops', tool: 'drops' });
    expect(deltaE).toBeCloseTo(0.2, 6);
    expect(byHandDeltaE).toBeCloseTo(3.2, 6);
    // What is within the tolerance and hardly better weighed stays with the drops.
    const near = measuredAmounts(
      exact,
      () => liquid,
      bench,
      (grams) => error(grams) / 3,
      2,
    );
    expect(near.chosen.soot!.tool).toBe('drops');
    expect(near.byHandDeltaE).toBeUndefined();
    expect(measuredAmounts(exact, () => liquid, NO_SCALE, error, 2).byHandDeltaE).toBeUndefined();
  });
  test('measuredAmounts with a scale is never further off than without, and within the tolerance wherever the scale alone is', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.03, max: 1, noNaN: true }), { minLength: 1, maxLength: 5 }),
        fc.array(fc.double({ min: 1, max: 300, noNaN: true }), { minLength: 5, maxLength: 5 }),
        (amounts, strengths) => {
          const exact = Object.fromEntries(amounts.map((grams, index) => [`m${index}`, grams]));
          const error = (grams: Readonly<Record<string, number>>): number =>
            Object.keys(exact).reduce(
              (sum, name, at) => sum + strengths[at]! * Math.abs(grams[name]! - exact[name]!),
              0,
            );
          const scale = error(
            Object.fromEntries(Object.entries(exact).map(([name, grams]) => [name, Math.round(grams * 100) / 100])),
          );
          const { deltaE, byHandDeltaE = deltaE } = measuredAmounts(exact, () => liquid, bench, error, 2);
          expect(deltaE).toBeLessThanOrEqual(byHandDeltaE);
          if (scale <= 2) expect(deltaE).toBeLessThanOrEqual(2 + 1e-9);
        },
      ),
      { numRuns: 100 },
    );
  });
  test('measuredAmounts says that doses belong together where one is not its nearest', () => {
    const exact = { straw: 5.4 * 0.05, peat: 5.4 * 0.05 };
    // One drop more of either is worth ΔE 0.3, too little to be noticed by itself.
    const error = (grams: Readonly<Record<string, number>>): number =>
      6 * Math.abs(grams.straw! + grams.peat! - 10.8 * 0.05);
    const { chosen, together } = measuredAmounts(exact, () => liquid, NO_SCALE, error);
    expect(chosen.straw!.grams + chosen.peat!.grams).toBeCloseTo(11 * 0.05, 9);
    expect(together).toBe(true);
  });
  test('measuredAmounts never rounds out of a fifth of the dose what can be measured within it', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.03, max: 4, noNaN: true }), { minLength: 1, maxLength: 5 }),
        (amounts) => {
          const exact = Object.fromEntries(amounts.map((grams, index) => [`m${index}`, grams]));
          // A colour that wants less of everything.
          const { chosen } = measuredAmounts(
            exact,
            () => liquid,
            bench,
            (grams) => 100 * Object.values(grams).reduce((sum, mass) => sum + mass, 0),
          );
          for (const [name, grams] of Object.entries(exact)) {
            const off = Math.abs(chosen[name]!.grams / grams - 1);
            expect(off).toBeLessThanOrEqual(0.2 + 1e-9);
          }
        },
      ),
      { numRuns: 50 },
    );
  });
  test('measuredAmounts(many materials) is never further off than rounding each to its nearest', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.03, max: 2, noNaN: true }), { minLength: 1, maxLength: 10 }),
        (amounts) => {
          const exact = Object.fromEntries(amounts.map((grams, index) => [`m${index}`, grams]));
          const weight = (name: string): number => (Number(name.slice(1)) % 2 === 0 ? 1 : -1);
          const error = (grams: Readonly<Record<string, number>>): number =>
            50 *
            Math.abs(
              Object.entries(grams).reduce((sum, [name, mass]) => sum + weight(name) * (mass - exact[name]!), 0),
            );
          const nearest = Object.fromEntries(
            Object.entries(exact).map(([name, grams]) => [name, measures(grams, liquid, NO_SCALE)[0]!.grams]),
          );
          expect(measuredAmounts(exact, () => liquid, NO_SCALE, error).deltaE).toBeLessThanOrEqual(
            error(nearest) + 0.021,
          );
        },
      ),
      { numRuns: 50 },
    );
  });
});
