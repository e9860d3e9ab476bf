import { expect, test } from 'vitest';
import { sheetsOf } from '../../src/browser/sheets-of.ts';

test('sheetsOf(wanted, perSheet) has every label as often as it is wanted, in order, and no empty sheet', () => {
  expect(sheetsOf([2, 0, 1], 2)).toEqual([[0, 0], [2]]);
  expect(sheetsOf([4], 4)).toEqual([[0, 0, 0, 0]]);
  expect(sheetsOf([0, 0], 4)).toEqual([]);
});
