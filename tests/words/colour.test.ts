import fc from 'fast-check';
import { expect, test } from 'vitest';
import { hueFamily } from '../../src/book/recipes/facets.ts';
import { colourWords, hexWords } from '../../src/words/colour.ts';

test.each([
  ['#ffffff', 'white'],
  ['#101010', 'black'],
  ['#808080', 'grey'],
  ['#bbbbbb', 'light grey'],
  ['#4f595a', 'dark bluish grey'],
  ['#5c605c', 'grey'],
  ['#8f9a90', 'greenish grey'],
  ['#4a2f1c', 'dark brown'],
  ['#d9c48f', 'light yellow'],
  ['#ff2020', 'vivid red'],
  ['#1c4870', 'dark blue'],
  ['#7f8f9f', 'bluish grey'],
  ['#6f90ae', 'blue'],
  ['#76b82a', 'bright green'],
])('hexWords(%s) is %s', (hex, words) => {
  expect(hexWords(hex)).toBe(words);
});

test('colourWords(lab) ends in the family that the colour is found by, for every colour', () => {
  const side = fc.double({ min: -100, max: 100, noNaN: true });
  fc.assert(
    fc.property(fc.record({ L: fc.double({ min: 0, max: 100, noNaN: true }), a: side, b: side }), (lab) => {
      const words = colourWords(lab).split(' ');
      expect(words.at(-1)).toBe(hueFamily(lab));
      expect(words.length).toBeLessThanOrEqual(3);
    }),
  );
});
