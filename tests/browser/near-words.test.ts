import { expect, test } from 'vitest';
import { nearWords, vocabularyOf } from '../../src/browser/near-words.ts';

const vocabulary = vocabularyOf(['Canal Swirl', 'Alder Smoke', 'Gold hexagon .015', 'swirl, translucent']);

test('vocabularyOf(texts) has each word once, in lower case', () => {
  expect([...vocabulary]).toEqual(['canal', 'swirl', 'alder', 'smoke', 'gold', 'hexagon', '015', 'translucent']);
});

test.each([
  ['canel', 'canal'],
  ['Canel swirl', 'canal swirl'],
  ['smoek', 'smoke'],
  ['transluscent', 'translucent'],
  ['hexgon gold', 'hexagon gold'],
])('nearWords(%s) is %s', (text, meant) => {
  expect(nearWords(text, vocabulary)).toBe(meant);
});

test.each(['', 'canal', 'hexa', 'zzqqxx', 'swirl smoke'])('nearWords(%s) has nothing to offer', (text) => {
  expect(nearWords(text, vocabulary)).toBeUndefined();
});
