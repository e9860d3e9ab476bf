import { expect, test } from 'vitest';
import { nearestFix, nearestName } from '../../src/diagnostics/nearest-name.ts';

test.each([
  ['paet', ['peat', 'straw'], 'peat'],
  ['oz', ['ml', 'fl oz'], 'fl oz'],
  ['OZ', ['ml', 'fl oz'], 'fl oz'],
  ['m', ['ml', 'fl oz'], 'ml'],
  ['chartreuse', ['peat', 'straw'], undefined],
  // Two letters exchanged count less than one edit.
  ['form', ['for', 'from'], 'from'],
  ['gm', ['mg', 'g'], 'g'],
  ['mud-hne', ['mud-hen', 'mud-hue'], 'mud-hen'],
  ['photo', ['photos', 'note'], 'photos'],
  // A whole word of one name alone.
  ['white', ['over-white', 'over-black', 'note'], 'over-white'],
  ['anise', ['anise-oil', 'peat'], 'anise-oil'],
  ['pearl', ['ivory-pearl', 'moth-pearl', 'straw'], undefined],
  ['red', ['pet', 'barn-red'], 'barn-red'],
  ['peta', ['peta-red', 'peat'], 'peat'],
  // The beginning of one name alone, or begun by one.
  ['core-shot', ['solid', 'core', 'tipped'], 'core'],
  ['crawfish', ['worm', 'craw'], 'craw'],
  ['hex', ['hexagon', 'square', 'round', 'strip'], 'hexagon'],
  ['mud-hen-lite', ['mud-hen', 'mud-hen-light'], 'mud-hen-light'],
  ['lam', ['laminate', 'lamination'], undefined],
  ['li', ['litres'], undefined],
] as const)('nearestName(%s, %j) is %s', (name, known, nearest) => {
  expect(nearestName(name, known)).toBe(nearest);
});

test('nearestFix(name, known) is the edit, and nothing where nothing is near', () => {
  expect(nearestFix('paet', ['peat', 'straw'])).toEqual({ fix: 'write `peat`', nearest: 'peat' });
  expect(nearestFix('chartreuse', ['peat', 'straw'])).toBeUndefined();
});
