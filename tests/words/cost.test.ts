import { expect, test } from 'vitest';
import { costWords } from '../../src/words/cost.ts';

const money = (amount: number): string => `$${amount.toFixed(2)}`;

test('costWords(cost, unpriced, money) says no amount where nothing has a price', () => {
  expect(costWords(0, ['Milk', 'Soot'], money)).toBe('no price on the shelf for Milk and Soot');
  expect(costWords(0.4, ['Milk'], money)).toBe('$0.40, without Milk: no price');
  expect(costWords(0.4, [], money)).toBe('$0.40');
});
