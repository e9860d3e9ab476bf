import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CupState } from '../../src/cup/ledger.ts';
import { temperatureAfter } from '../../src/cup/temperature-after.ts';

const SHELF = {
  supple: { density: 1.05 },
  salt: { density: 2.16 },
  peat: { density: 1, gramsPerDrop: 0.05 },
};
const plastic = (ml: number): CupState => ({ plastics: { supple: ml }, materials: {} });
const of = (material: string, grams: number): CupState => ({ plastics: {}, materials: { [material]: grams } });
const mixed = (cup: CupState, celsius: number, added: CupState): number =>
  temperatureAfter(cup, celsius, added, (id) => SHELF[id as keyof typeof SHELF]);

describe('temperature of a cup that something at 20 °C was stirred into', () => {
  test.each([
    [140, 35, 140],
    // 106 ml at 170 °C and 65 ml: (106 · 170 + 65 · 20) / 171.
    [106, 65, 112.98],
  ])('temperatureAfter(%s ml at 170 °C, %s ml of the same plastic) is %s °C', (ml, added, celsius) => {
    expect(mixed(plastic(ml), 170, plastic(added))).toBeCloseTo(celsius, 1);
  });

  test('temperatureAfter(20 % of salt by mass) is 10 to 16 °C lower (common practice, no source)', () => {
    const fall = 170 - mixed(plastic(100), 170, of('salt', 0.2 * 105));
    expect(fall).toBeGreaterThan(10);
    expect(fall).toBeLessThan(16);
    // (170 + 0.1 · 20) / 1.1 by hand.
    expect(170 - fall).toBeCloseTo(156.36, 2);
  });

  test('temperatureAfter(a few drops) is hardly less', () => {
    expect(mixed(plastic(120), 170, of('peat', 0.5))).toBeGreaterThan(169);
  });

  test('law: it lies between both, whatever goes in, and more of it cools more', () => {
    const ml = fc.double({ min: 1, max: 500, noNaN: true });
    fc.assert(
      fc.property(ml, ml, ml, fc.double({ min: 120, max: 200, noNaN: true }), (cup, added, more, celsius) => {
        const once = mixed(plastic(cup), celsius, plastic(added));
        const twice = mixed(plastic(cup), celsius, plastic(added + more));
        expect(once).toBeLessThanOrEqual(celsius);
        expect(twice).toBeGreaterThanOrEqual(20);
        expect(twice).toBeLessThanOrEqual(once);
        // In one go or one after the other.
        expect(mixed(plastic(cup + added), once, plastic(more))).toBeCloseTo(twice, 6);
      }),
    );
  });
});
