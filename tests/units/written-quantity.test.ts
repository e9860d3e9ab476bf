import fc from 'fast-check';
import { expect, test } from 'vitest';
import { celsius, millilitres, millimetres, minutes } from '../../src/units/convert.ts';
import { DOSE_DIMENSIONS, parseDose, parseQuantity } from '../../src/units/parse-quantity.ts';
import { isFault } from '../../src/units/quantity.ts';
import { UNITS, type Unit } from '../../src/units/unit.ts';
import {
  plainDecimal,
  writtenDose,
  writtenDuration,
  writtenLength,
  writtenShare,
  writtenTemperature,
  writtenVolume,
} from '../../src/units/written-quantity.ts';

test('plainDecimal(number) has no exponent, and is read as the same number', () => {
  expect([1e-7, 1.25e-9, 1e21, 123e22, -2.5e-8, 0.1, 120].map(plainDecimal)).toEqual([
    '0.0000001',
    '0.00000000125',
    '1000000000000000000000',
    '1230000000000000000000000',
    '-0.000000025',
    '0.1',
    '120',
  ]);
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (number) => {
      expect(plainDecimal(number)).toMatch(/^-?\d+(\.\d+)?$/);
      expect(Number(plainDecimal(number)) + 0).toBe(number + 0);
    }),
  );
});

test('what was typed in a unit of a book is written in it again', () => {
  const typed = [
    writtenVolume(millilitres({ amount: 4, unit: 'fl oz' })),
    writtenVolume(120),
    writtenLength(millimetres({ amount: 0.04, unit: 'in' })),
    writtenLength(9),
    writtenTemperature(celsius({ amount: 355, unit: '°F' })),
    writtenTemperature(171),
    writtenShare(0.4),
    writtenShare(0.07),
  ];
  expect(typed).toEqual(['4 fl oz', '120 ml', '0.04 in', '9 mm', '355 °F', '171 °C', '40%', '7%']);
});

test('writtenDose(dose) is read as the same dose', () => {
  expect(writtenDose({ quantity: { amount: 3 / 8, unit: 'tsp' }, per: { amount: 1, unit: 'cup' } })).toBe(
    '3/8 tsp per 1 cup',
  );
  const units = (Object.keys(UNITS) as Unit[]).filter((unit) => DOSE_DIMENSIONS.includes(UNITS[unit].dimension));
  fc.assert(
    fc.property(fc.double({ min: 0.01, max: 900, noNaN: true }), fc.constantFrom(...units), (amount, unit) => {
      fc.pre(!isFault(parseQuantity(`${plainDecimal(amount)} ${unit}`, DOSE_DIMENSIONS)));
      expect(parseDose(writtenDose({ amount, unit }))).toEqual({ amount, unit });
    }),
  );
});

test('writtenDuration(minutes) is read as the same time, in the unit of fewest digits', () => {
  expect([6, 0.5, 60, 90].map(writtenDuration)).toEqual(['6 min', '30 s', '1 h', '90 min']);
  fc.assert(
    fc.property(fc.double({ min: 1 / 60, max: 6000, noNaN: true }), (time) => {
      const read = parseQuantity(writtenDuration(time), ['duration']);
      expect(isFault(read) ? read : minutes(read)).toBe(time);
    }),
  );
});
