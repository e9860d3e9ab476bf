import { expect, test } from 'vitest';
import { tooLittleToWeigh } from '../../src/matching/measure/too-little.ts';

const amount = (title: string, grams: number): { title: string; grams: number; text: string } => ({
  title,
  grams,
  text: `${grams.toFixed(2)} g`,
});

test('tooLittleToWeigh(amounts, step) warns where half a step is more than a fifth of an amount', () => {
  expect(tooLittleToWeigh([amount('Soot', 0.01), amount('Straw', 0.25)], 0.01)).toBe(
    '0.01 g of Soot is too little to weigh here, half a step of the scale is 50 % of it: make a larger cup.',
  );
  expect(tooLittleToWeigh([amount('Soot', 0.01), amount('Moss', 0.02)], 0.01)).toBe(
    '0.01 g of Soot and 0.02 g of Moss are too little to weigh here, half a step of the scale is 50 % of the least of them: make a larger cup.',
  );
  expect(tooLittleToWeigh([amount('Moss', 0.03)], 0.01)).toBeUndefined();
});

test('tooLittleToWeigh(amounts) without a scale has nothing to say', () => {
  expect(tooLittleToWeigh([amount('Soot', 0.01)])).toBeUndefined();
});
