import { expect, test } from 'vitest';
import { countAlike, nearestFileFix, nearestFix, nearestName } from '../../src/diagnostics/nearest-name.ts';

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

test.each([
  ['craw-4', 'craw-3', false],
  ['craw-4', 'craw', false],
  ['IMG_2041.jpg', 'IMG_2042.jpg', false],
  ['copper-hex-035', 'copper-hex-040', false],
  ['craw', 'craw-3', true],
  ['craw4', 'craw', true],
  ['minow-3', 'minnow-3', true],
] as const)('countAlike(%s, %s) is %s', (name, other, alike) => {
  expect(countAlike(name, other)).toBe(alike);
});

test('nearestFileFix(name, known) does not offer another size, but says that it is there', () => {
  const create = 'create molds/craw-4.md';
  expect(nearestFileFix('craw-4', ['craw-3'], create)).toEqual({ fix: 'create molds/craw-4.md; there is `craw-3`' });
  expect(nearestFileFix('carw-4', ['craw-4', 'craw-3'], create)).toEqual({ fix: 'write `craw-4`', nearest: 'craw-4' });
  expect(nearestFileFix('chartreuse', ['craw-3'], create)).toEqual({ fix: create });
});
