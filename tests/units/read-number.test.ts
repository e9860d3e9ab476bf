import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readNumber } from '../../src/units/read-number.ts';

describe('readNumber(text)', () => {
  test.each([
    ['14', 14],
    [' 0.25 ', 0.25],
    ['.5', 0.5],
    ['1,5', 1.5],
    ['1/8', 0.125],
    ['1 1/2', 1.5],
    ['1½', 1.5],
    ['1 000', 1000],
    ['0', 0],
  ])('reads “%s” as %d', (text, number) => {
    expect(readNumber(text)).toBe(number);
  });

  test.each(['', ' ', 'some', '1,500', '-3', '1e300', '1/0', '14 ml', '1.2.3', 'NaN', 'Infinity'])(
    'takes “%s” for none, since it is none or could be two',
    (text) => {
      expect(readNumber(text)).toBeNaN();
    },
  );

  test('reads every number that a field shows', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e9 }), fc.integer({ min: 0, max: 6 }), (digits, decimals) => {
        const text = (digits / 10 ** decimals).toFixed(decimals);
        expect(readNumber(text)).toBe(Number(text));
      }),
    );
  });
});
