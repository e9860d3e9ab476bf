import { expect, test } from 'vitest';
import { printable } from '../../src/shell/printable.ts';

test('printable(text) shows control characters instead of obeying them', () => {
  expect(printable('a\u001b[2Jb\u0000\u007f\u009b')).toBe('a␛[2Jb␀␡\ufffd');
});

test('printable(text) leaves line ends, tabs and every letter alone', () => {
  expect(printable('è\t½ → 色\n')).toBe('è\t½ → 色\n');
});
