import { expect, test } from 'vitest';
import { nearestFix, nearestName } from '../../src/diagnostics/nearest-name.ts';

test.each([
  ['paet', ['peat', 'straw'], 'peat'],
  ['oz', ['ml', 'fl oz'], 'fl oz'],
  ['OZ', ['ml', 'fl oz'], 'fl oz'],
  ['m', ['ml', 'fl oz'], 'ml'],
  ['chartreuse', ['peat', 'straw'], undefined],
] as const)('nearestName(%s, %j) is %s', (name, known, nearest) => {
  expect(nearestName(name, known)).toBe(nearest);
});

test('nearestFix(name, known) is the edit, and nothing where nothing is near', () => {
  expect(nearestFix('paet', ['peat', 'straw'])).toEqual({ fix: 'write `peat`', nearest: 'peat' });
  expect(nearestFix('chartreuse', ['peat', 'straw'])).toBeUndefined();
});
