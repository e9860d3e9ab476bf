import { expect, test } from 'vitest';
import { withoutSmallWords } from '../../src/browser/small-words.ts';

test.each([
  ['brown with gold flake', 'brown gold flake'],
  ['The colour of peat, and ivory', 'colour peat, ivory'],
  ['a brown,  in the thin part', 'brown, thin part'],
  ['"brown with gold" flake for water', '"brown with gold" flake water'],
  ['with the', 'with the'],
  ['without android', 'without android'],
  ['', ''],
])('withoutSmallWords(“%s”) is “%s”', (typed, lookedFor) => {
  expect(withoutSmallWords(typed)).toBe(lookedFor);
});
