import { expect, test } from 'vitest';
import { deltaEText } from '../../src/render/difference-text.ts';

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
