import { expect, test } from 'vitest';
import { expectationText, leftWords, likelyText } from '../../src/words/expectation.ts';

test('expectationText(…) says how it looks first, and after it what to expect and what nine in ten stay within', () => {
  expect(expectationText({ expected: 2.2, bound90: 4.81 })).toBe(
    'just visible (expect ΔE 2.2, nine in ten within 4.8)',
  );
  expect(expectationText({ expected: 5.04, bound90: 11.3 })).toBe(
    'hard to miss (expect ΔE 5.0, nine in ten within 11)',
  );
});

test('expectationText(…) is that of a difference where nothing is in doubt', () => {
  expect(expectationText({ expected: 0.8, bound90: 0.8 })).toBe('you won’t see it (ΔE 0.8)');
});

test('likelyText(…) is a percentage, and never certain', () => {
  expect(likelyText(0.853)).toBe('likely right: 85 %');
  expect(likelyText(1)).toBe('likely right: 99 %');
  expect(likelyText(0.49)).toBeUndefined();
});

test.each([
  [{ because: 'likely-right' }, ', likely right: 91 %'],
  [
    { because: 'as-near-as-looks-tell', tells: 'cup' },
    ': your looks can’t tell what would get closer. Another look at a test pour would tell more',
  ],
  [
    { because: 'as-near-as-looks-tell', tells: 'target', ofThree: 2.073 },
    ': your looks can’t tell what would get closer. Three photos of the target, a certified card in them, or an instrument would tell more (in the target’s file, write their mean with doubt 2.1)',
  ],
  [{ because: 'no-step-helps' }, ': nothing you could add is expected to get it closer; likely right: 91 %'],
] as const)('leftWords(%o) says why', (left, words) => {
  expect(leftWords({ ...left, likely: 0.91 })).toBe(words);
});
