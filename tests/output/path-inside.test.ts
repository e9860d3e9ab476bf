import { posix, win32 } from 'node:path';
import { expect, test } from 'vitest';
import { pathInside } from '../../src/output/path-inside.ts';

test.each([
  ['/book', '/book', ''],
  ['/book', '/book/', ''],
  ['/book', '/book/colours/dusk.md', 'colours/dusk.md'],
  ['/book', '/book-2/dusk.md', undefined],
  ['/book', '/', undefined],
  ['/book', '/other', undefined],
  ['/book', '/book/..cache/x', '..cache/x'],
  ['/book', '/book/..', undefined],
  ['/book', '/book/a\\b', 'a\\b'],
  ['/Book', '/book/x', undefined],
  ['/', '/book', 'book'],
])('pathInside(%s, %s) is %s under POSIX', (folder, path, inside) => {
  expect(pathInside(folder, path, posix)).toBe(inside);
});

test.each([
  ['C:\\book', 'C:\\book', ''],
  ['C:\\book', 'C:\\book\\colours\\dusk.md', 'colours/dusk.md'],
  ['C:\\book', 'c:/BOOK/colours/dusk.md', 'colours/dusk.md'],
  ['C:\\book', 'C:\\book-2\\dusk.md', undefined],
  ['C:\\book', 'D:\\book\\colours', undefined],
  ['C:\\book', 'D:\\', undefined],
  ['C:\\book', 'C:\\', undefined],
  ['C:\\', 'C:\\book', 'book'],
  ['C:\\book', 'C:\\book\\..cache\\x', '..cache/x'],
  ['\\\\nas\\share\\book', '\\\\nas\\share\\book\\molds', 'molds'],
  ['\\\\nas\\share\\book', '\\\\nas\\other\\book', undefined],
  ['\\\\nas\\share\\book', 'C:\\book', undefined],
])('pathInside(%s, %s) is %s under Windows', (folder, path, inside) => {
  expect(pathInside(folder, path, win32)).toBe(inside);
});
