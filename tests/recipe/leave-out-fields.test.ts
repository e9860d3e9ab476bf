import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseDocument, stringify } from 'yaml';
import { leaveOutFields } from '../../src/recipe/leave-out-fields.ts';

const PRIVATE = new Set(['price', 'stock', 'photo']);
const without = (text: string): string => leaveOutFields(text, (path) => PRIVATE.has(String(path.at(-1))), PRIVATE);

test('leaveOutFields(text) takes a field out with its line and its comments, and leaves the rest as it was written', () => {
  expect(
    without(
      [
        '---',
        'title:   Peat   # from the bog',
        '# What I paid, and where.',
        'price: 6.40     # a bottle',
        '                # it was 7.20 in spring',
        'pack: 30 ml',
        '# stock: 12 ml, before the flood',
        'stock: 3 ml',
        '',
        '# Twenty drops, weighed.',
        'drop: { count: 20, mass: 0.98 g }',
        '---',
        'Notes about its price: and stock.',
        '',
      ].join('\n'),
    ),
  ).toBe(
    [
      '---',
      'title:   Peat   # from the bog',
      'pack: 30 ml',
      '',
      '# Twenty drops, weighed.',
      'drop: { count: 20, mass: 0.98 g }',
      '---',
      'Notes about its price: and stock.',
      '',
    ].join('\n'),
  );
});

test.each([
  ['first, last and between', 'price: 1\ntitle: A\nstock: 2\npack: 3\nphoto: 4\n', 'title: A\npack: 3\n'],
  ['with CRLF', 'title: A\r\nprice: 1\r\npack: 3\r\n', 'title: A\r\npack: 3\r\n'],
  ['between braces', '{ price: 1, title: A, stock: 2, photo: 3 }\n', '{ title: A }\n'],
  ['in quotes', 'title: A\n"price": 1\n', 'title: A\n'],
  ['text over several lines', 'title: A\nphoto: |\n  one\n  two\npack: 3\n', 'title: A\npack: 3\n'],
  ['a list below its name', 'title: A\nphoto:\n- a.jpg\n- file: b.jpg\n  caption: B\npack: 3\n', 'title: A\npack: 3\n'],
  ['the only one inside another', 'title: A\nseen:\n  photo: a.jpg\npack: 3\n', 'title: A\nseen:\n  {}\npack: 3\n'],
  ['in a list', 'log:\n  - photo: a.jpg\n    price: 1\n    note: x\n    pour: 2\n', 'log:\n  - note: x\n    pour: 2\n'],
  ['the only one in a list', 'log:\n  - photo: a.jpg\n  - note: x\n', 'log:\n  - {}\n  - note: x\n'],
  [
    'inside braces in a list',
    'log:\n  - seen: { note: x, photo: a.jpg } # here\n',
    'log:\n  - seen: { note: x } # here\n',
  ],
])('leaveOutFields(text) takes fields out: %s', (_, yaml, left) => {
  const line = yaml.includes('\r') ? '\r\n' : '\n';
  expect(without(`---${line}${yaml}---${line}Notes.`)).toBe(`---${line}${left}---${line}Notes.`);
});

test('leaveOutFields(text) takes a field out whose name is written in escapes', () => {
  expect(without('---\ntitle: Peat\n"pr\\u0069ce": 6.40\n"\\x73tock": 3 ml\n---\nx\n')).toBe(
    '---\ntitle: Peat\n---\nx\n',
  );
});

test('leaveOutFields(text) leaves a text alone that has none of them', () => {
  const text = '---\ntitle:  A\n# a comment\n---\n';
  expect(without(text)).toBe(text);
  expect(without('---\ntitle: Priceless\n---\nprice: 1\n')).toBe('---\ntitle: Priceless\n---\nprice: 1\n');
});

test('law: what is left of a text means what was there without these fields, and none of their values is in it', () => {
  const leaf = fc.constantFrom('a', '1', 'x y', 3, true);
  const secret = fc.constantFrom('hush1', 'hush 2', ['hush3', 'hush4']);
  const { value } = fc.letrec<{ value: unknown }>((tie) => ({
    value: fc.oneof(
      { depthSize: 'small', withCrossShrink: true },
      leaf,
      fc.array(tie('value'), { maxLength: 3 }),
      fc
        .tuple(
          fc.dictionary(fc.constantFrom('one', 'two', 'three'), tie('value'), { maxKeys: 3 }),
          fc.option(secret),
          fc.option(secret),
        )
        .map(([rest, price, stock]) => ({
          ...(price === null ? {} : { price }),
          ...rest,
          ...(stock === null ? {} : { stock }),
        })),
    ),
  }));
  const stripped = (from: unknown): unknown =>
    Array.isArray(from)
      ? from.map(stripped)
      : typeof from === 'object' && from !== null
        ? Object.fromEntries(
            Object.entries(from).flatMap(([key, inside]) => (PRIVATE.has(key) ? [] : [[key, stripped(inside)]])),
          )
        : from;
  fc.assert(
    fc.property(
      fc.dictionary(fc.constantFrom('one', 'two', 'price'), value),
      fc.boolean(),
      fc.integer({ min: 1, max: 4 }),
      (data, flow, indent) => {
        const yaml = stringify(
          { title: 'A', ...data },
          { collectionStyle: flow ? 'flow' : 'any', indent, lineWidth: 0 },
        );
        const left = without(`---\n${yaml}---\nNotes.`);
        expect(left).not.toContain('hush');
        const [, front] = /^---\n([\s\S]*?)---\nNotes\.$/.exec(left)!;
        const again = parseDocument(front!);
        expect(again.errors).toEqual([]);
        expect(again.toJS()).toEqual(stripped({ title: 'A', ...data }));
      },
    ),
    { numRuns: 300 },
  );
});
