import fc from 'fast-check';
import { expect, test } from 'vitest';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { labFromHex } from '../../src/optics/display.ts';
import {
  DIFFERENCE_WORDS,
  deltaEText,
  differenceText,
  differenceWords,
  hidesText,
} from '../../src/words/difference.ts';

test.each([
  [0, '0.0'],
  [0.0093, 'less than 0.1'],
  [0.055, '0.1'],
  [1.84, '1.8'],
  [9.96, '10'],
  [18.6, '19'],
])('deltaEText(%f) is %s', (deltaE, text) => {
  expect(deltaEText(deltaE)).toBe(text);
});

test.each([
  ['#8a6a44', '#8b6b45', 'you won’t see it'],
  ['#8a6a44', '#8e6c44', 'just visible'],
  ['#8a6a44', '#946e40', 'easy to see'],
  ['#8a6a44', '#8a6a52', 'hard to miss'],
  ['#8a6a44', '#3a5f8a', 'plainly another colour'],
])('differenceWords of %s and %s: %s', (one, other, words) => {
  expect(differenceWords(deltaE00(labFromHex(one), labFromHex(other)))).toBe(words);
});

test('differenceWords goes by the figure that is shown, so that the same figure has the same words', () => {
  expect(differenceText(0.951)).toBe('just visible (ΔE 1.0)');
  expect(differenceText(0.949)).toBe('you won’t see it (ΔE 0.9)');
  expect(differenceText(0.02)).toBe('you won’t see it (ΔE less than 0.1)');
});

test('differenceWords never has milder words for a larger difference', () => {
  const rank = (deltaE: number): number => DIFFERENCE_WORDS.findIndex(([, words]) => words === differenceWords(deltaE));
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 150, noNaN: true }),
      fc.double({ min: 0, max: 50, noNaN: true }),
      (one, more) => rank(one + more) >= rank(one),
    ),
  );
});

test.each([
  [0, '0 %'],
  [0.294, '29 %'],
  [1, '100 %'],
])('hidesText(%f) is %s', (contrast, text) => {
  expect(hidesText(contrast)).toBe(text);
});
