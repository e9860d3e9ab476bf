import fc from 'fast-check';
import { expect, test } from 'vitest';
import { moneyText } from '../../src/units/money-text.ts';

test.each([
  [0, '$', '$0.00'],
  [0.0001, '$', 'less than $0.01'],
  [0.00999, 'EUR', 'less than 0.01 EUR'],
  [0.01, '$', '$0.01'],
  [0.054, '€', '€0.05'],
  [0.096, '$', '$0.10'],
  [0.1, '$', '$0.10'],
  [12.345, 'EUR', '12.35 EUR'],
  [7, 'EUR', '7.00 EUR'],
])('moneyText(%d) in %s is %s', (amount, currency, text) => {
  expect(moneyText(amount, { currency })).toBe(text);
});

test('moneyText(amount) has two decimals, whatever the amount', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), (amount) => {
      expect(moneyText(amount, { currency: '$' })).toMatch(/^(less than )?\$\d+\.\d\d$/);
    }),
  );
});
