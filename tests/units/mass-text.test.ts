import { expect, test } from 'vitest';
import { ounceText } from '../../src/units/mass-text.ts';

test('ounceText(grams) is ounces, from sixteen on pounds, and grams where it is hardly any', () => {
  expect(ounceText(453.59237)).toBe('1 lb');
  expect(ounceText(453.5)).toBe('1 lb');
  expect(ounceText(680.4)).toBe('1.5 lb');
  expect(ounceText(418.1)).toBe('14.7 oz');
  expect(ounceText(42.52)).toBe('1.5 oz');
  expect(ounceText(0.68)).toBe('0.68 g');
  expect(ounceText(0)).toBe('0 oz');
});
