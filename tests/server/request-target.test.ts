import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readTarget } from '../../src/server/request-target.ts';

test.each([
  ['/', [], true, ''],
  ['/?tint=1', [], true, '?tint=1'],
  ['/book.json', ['book.json'], false, ''],
  ['/colours/bog-pool/', ['colours', 'bog-pool'], true, ''],
  ['/a%20b/%41', ['a b', 'A'], false, ''],
  ['/gr%C3%BCn', ['grün'], false, ''],
  ['/x#part', ['x'], false, ''],
  ['/x?a?b#c', ['x'], false, '?a?b#c'],
])('readTarget reads %s', (target, names, folder, query) => {
  expect(readTarget(target, '/')).toMatchObject({ names, folder, query });
});

test('readTarget takes the path that the site is served below', () => {
  expect(readTarget('/my/book/x', '/my/book/')).toMatchObject({ names: ['x'], folder: false });
  expect(readTarget('/my/book/', '/my/book/')).toMatchObject({ names: [], folder: true });
  expect(readTarget('/my/book', '/my/book/')).toBe(404);
  expect(readTarget('/my/bookish', '/my/book/')).toBe(404);
});

test.each([
  ['', 400],
  ['*', 400],
  ['book.json', 400],
  ['http://localhost/book.json', 400],
  ['localhost:80', 400],
  ['/a b', 400],
  ['/gr\u00fcn', 400],
  ['/a\u0000', 400],
  ['/%', 400],
  ['/%zz', 400],
  ['/%c3', 400],
  [`/${'a'.repeat(4096)}`, 414],
  ['//evil.example/x', 404],
  ['/a//b', 404],
  ['/..%2fx', 404],
  ['/%2e%2e%2fx', 404],
  ['/..%5cx', 404],
  ['/a%00.html', 404],
  ['/a%0d%0ab', 404],
  ['/a%1b[2J', 404],
  ['/a%c2%9b2J', 404],
  ['/index.html::$DATA', 404],
  ['/C:/x', 404],
  ['/..', 404],
  ['/a/../../x', 404],
  ['/index.html.', 404],
  ['/index.html%20', 404],
])('readTarget refuses %j', (target, status) => {
  expect(readTarget(target, '/')).toBe(status);
});

test('readTarget throws nothing, and no name that it returns leads out of its folder', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (text) => {
      const encoded = encodeURIComponent(text.replaceAll(/[\ud800-\udfff]/g, '')).replaceAll('%2F', '/');
      for (const target of [text, `/${text}`, `/${encoded}`, `/%${text}`]) {
        const read = readTarget(target, '/');
        if (typeof read === 'number') continue;
        for (const name of read.names) {
          expect(name).not.toMatch(/^$|^\.\.?$|[/\\\0]/);
        }
      }
    }),
  );
});
