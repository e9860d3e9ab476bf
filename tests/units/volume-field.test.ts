import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { UNITS } from '../../src/units/unit.ts';
import {
  mlInField,
  noLessThan,
  noMoreThan,
  typedOunces,
  volumeInField,
  volumeLimits,
} from '../../src/units/volume-field.ts';

const ML = { volume: 'ml' } as const;
const OUNCES = { volume: 'fl oz' } as const;
// US customary fluid ounce, NIST SP 811, Appendix B.
const FL_OZ = 29.57353;

const volume = fc.double({ min: 0.01, max: 100_000, noNaN: true });

describe('volumeInField(ml) and mlInField(text)', () => {
  test.each([
    [120, '4.06'],
    [14, '0.473'],
    [355, '12'],
    [350, '11.83'],
    [4 * UNITS['fl oz'].size, '4'],
    [4.125 * UNITS['fl oz'].size, '4.125'],
    [0.01, '0.000338'],
    [100_000, '3381'],
  ])('%s ml are %s fl oz', (ml, text) => {
    expect(volumeInField(ml, OUNCES)).toBe(text);
    expect(Math.abs(mlInField(text, OUNCES) / FL_OZ - Number(text))).toBeLessThanOrEqual(1e-7 * Number(text));
  });

  test('a field that is not changed stands for what it showed, to the last digit, in either unit', () => {
    fc.assert(
      fc.property(volume, fc.constantFrom(ML, OUNCES), (ml, unit) => {
        expect(mlInField(` ${volumeInField(ml, unit)} `, unit, ml)).toBe(ml);
      }),
    );
  });

  test('what was typed is shown again as it was typed', () => {
    const typed = fc.tuple(fc.integer({ min: 1, max: 3000 }), fc.integer({ min: 0, max: 999_999 }));
    fc.assert(
      fc.property(typed, ([whole, millionths]) => {
        const text = String(Number(`${whole}.${String(millionths).padStart(6, '0')}`));
        expect(volumeInField(mlInField(text, OUNCES), OUNCES)).toBe(text);
        expect(volumeInField(mlInField(text, ML), ML)).toBe(text);
      }),
    );
  });

  test('what is shown is within half a per cent of what it stands for', () => {
    fc.assert(
      fc.property(volume, (ml) => {
        expect(Math.abs(mlInField(volumeInField(ml, OUNCES), OUNCES) - ml)).toBeLessThanOrEqual(0.005 * ml);
      }),
    );
  });

  test('mlInField(no number) is none', () => {
    for (const unit of [ML, OUNCES]) {
      expect(mlInField('some', unit)).toBeNaN();
      expect(mlInField(' ', unit)).toBe(0);
    }
  });
});

test('typedOunces(ml) is what was typed in fluid ounces, and nothing for whole millilitres', () => {
  expect(typedOunces(0.5 * UNITS['fl oz'].size)).toBe('0.5');
  for (let ml = 1; ml <= 2000; ml++) expect(typedOunces(ml)).toBeUndefined();
});

test('volumeLimits(limits) lie within the limits', () => {
  expect(volumeLimits({ least: 1, most: 100_000 }, ML)).toEqual({ least: 1, most: 100_000 });
  for (const [least, told] of [
    [1, 0.034],
    [0.1, 0.0034],
    [0.01, 0.00034],
  ] as const) {
    expect(volumeLimits({ least, most: 100_000 }, OUNCES)).toEqual({ least: told, most: 3381 });
    expect(told * FL_OZ).toBeGreaterThanOrEqual(least);
  }
});

test('noMoreThan(ml) and noLessThan(ml) are the step below and above, and what is on a step stays there', () => {
  expect([noMoreThan(86.77, ML), noLessThan(86.73, ML)]).toEqual(['86.7 ml', '86.8 ml']);
  expect([noMoreThan(120, OUNCES), noLessThan(120, OUNCES)]).toEqual(['4.05 fl oz', '4.06 fl oz']);
  for (let steps = 1; steps < 500; steps++) {
    const ml = (steps * UNITS['fl oz'].size) / 100;
    expect([noMoreThan(ml, OUNCES), noLessThan(ml, OUNCES)]).toEqual([`${steps / 100} fl oz`, `${steps / 100} fl oz`]);
  }
});
