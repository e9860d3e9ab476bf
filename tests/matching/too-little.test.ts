import { expect, test } from 'vitest';
import { tooLittleToWeigh } from '../../src/matching/measure/too-little.ts';

const amount = (title: string, grams: number): { title: string; grams: number; text: string; isLiquid: boolean } => ({
  title,
  grams,
  text: `${grams.toFixed(2)} g`,
  isLiquid: true,
});

test('tooLittleToWeigh(amounts, step) warns where half a step is more than a fifth of an amount', () => {
  expect(tooLittleToWeigh([amount('Soot', 0.01), amount('Straw', 0.25)], 0.01)).toEqual({
    amounts: [amount('Soot', 0.01)],
    error: 0.5,
  });
  expect(tooLittleToWeigh([amount('Soot', 0.01), amount('Moss', 0.02)], 0.01)).toEqual({
    amounts: [amount('Soot', 0.01), amount('Moss', 0.02)],
    error: 0.5,
  });
  expect(tooLittleToWeigh([amount('Moss', 0.03)], 0.01)).toBeUndefined();
});

test('tooLittleToWeigh(amounts) without a scale has nothing to say', () => {
  expect(tooLittleToWeigh([amount('Soot', 0.01)])).toBeUndefined();
});
