import { expect, test } from 'vitest';
import { paintDensity } from '../../src/tables/paint-densities.ts';
import { expectClose } from '../optics/close.ts';

test('paintDensity(name) is the mass of pigment and oil by their volumes', () => {
  // 100 g of zinc white of 5.65 g/ml with 23 g of oil: 123 g in 17.70 + 24.73 ml.
  expectClose(paintDensity('ZincWhite')!, 123 / (17.7 + 24.73), 0.005);
  // 100 g of Prussian blue of 1.83 g/ml with 78 g of oil: 178 g in 54.64 + 83.87 ml.
  expectClose(paintDensity('Prussian blue')!, 178 / (54.64 + 83.87), 0.005);
});

test('paintDensity(name) finds the pigment in a longer name, however it is written, and nothing else', () => {
  const zinc = paintDensity('zinc white');
  expect(paintDensity('ZincWhiteLinseed')).toBe(zinc);
  expect(paintDensity('Zinc-white, batch 2')).toBe(zinc);
  expect(paintDensity('Vermillion')).toBe(paintDensity('vermilion'));
  expect(paintDensity('Red lead')).toBe(paintDensity('minium'));
  for (const name of ['Cochineal', 'Eosin2PbWax', 'peat', '']) expect(paintDensity(name)).toBeUndefined();
});

test('paintDensity(name) orders paints by weight: red lead, white lead, vermilion, zinc white, ultramarine, black', () => {
  const densities = ['minium', 'lead white', 'vermilion', 'zinc white', 'ultramarine', 'bone black'].map(
    (name) => paintDensity(name)!,
  );
  expect(densities).toEqual([...densities].sort((one, other) => other - one));
});
