import { expect, test } from 'vitest';
import { inheritedFields } from '../../src/book/read/inherited-field.ts';
import type { Thing } from '../../src/recipe/read-thing.ts';

const recipes = (fields: Readonly<Record<string, object>>): ReadonlyMap<string, Thing<'recipe'>> =>
  new Map(Object.entries(fields).map(([id, each]) => [id, { id, kind: 'recipe', fields: each } as Thing<'recipe'>]));

test('a field is that of the nearest recipe above that has one', () => {
  const all = recipes({
    a: { mold: 'grub', baits: 9 },
    b: { from: 'a' },
    c: { from: 'b', mold: 'craw' },
    d: { from: 'c' },
  });
  const inherited = inheritedFields(all);
  expect(['d', 'b', 'c', 'a'].map((id) => inherited(all.get(id)!, 'mold'))).toEqual(['craw', 'grub', 'craw', 'grub']);
  expect(['d', 'b'].map((id) => inherited(all.get(id)!, 'baits'))).toEqual([9, 9]);
  expect(inherited(all.get('d')!, 'streak')).toBeUndefined();
});

test('a ring has none, and a line of 50,000 is read once', () => {
  const ring = recipes({ a: { from: 'b' }, b: { from: 'a' } });
  expect(inheritedFields(ring)(ring.get('a')!, 'mold')).toBeUndefined();
  const line = recipes(
    Object.fromEntries(
      Array.from({ length: 50_000 }, (_, at) => [`n${at}`, at === 0 ? { mold: 'grub' } : { from: `n${at - 1}` }]),
    ),
  );
  const inherited = inheritedFields(line);
  expect(new Set([...line.values()].map((each) => inherited(each, 'mold')))).toEqual(new Set(['grub']));
});
