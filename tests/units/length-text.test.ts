import { expect, test } from 'vitest';
import { lengthText } from '../../src/units/length-text.ts';

test('lengthText(mm) in inches keeps what was written, and gives no thousandths to what comes from millimetres', () => {
  const inches = (mm: number): string => lengthText(mm, { volume: 'fl oz' });
  expect([3 / 8, 7 / 16, 1 / 16, 0.07, 3.5, 0.123].map((written) => inches(written * 25.4))).toEqual([
    '0.375 in',
    '0.438 in',
    '0.063 in',
    '0.07 in',
    '3.5 in',
    '0.123 in',
  ]);
  expect([6, 2, 3, 70].map(inches)).toEqual(['0.24 in', '0.079 in', '0.12 in', '2.76 in']);
  expect(lengthText(9.525, { volume: 'ml' })).toBe('9.53 mm');
});
