import { expect, test } from 'vitest';
import { comparableName, isDeviceName, unportable } from '../../src/recipe/portable-name.ts';
import { slugOf } from '../../src/recipe/source.ts';

test.each(['con', 'CON.md', 'aux', 'nul.tar.gz', 'prn', 'com1', 'lpt9.md', 'com¹', 'con .md'])(
  'isDeviceName(%s): Windows has no such file',
  (name) => expect([isDeviceName(name), unportable(name) !== undefined]).toEqual([true, true]),
);

test.each(['conch', 'con-2', 'icon', 'com10', 'lpt', 'auxin.md', 'com'])('%s is a name for every system', (name) =>
  expect([isDeviceName(name), unportable(name)]).toEqual([false, undefined]),
);

test.each(['a:b', 'a?', 'a*', 'a|b', 'a<b', 'a"', 'a\\b', 'a\nb', 'a.', 'a '])('unportable(%j) says why', (name) =>
  expect(unportable(name)).toMatch(/Windows/),
);

test('comparableName(…) is one for names that two systems take for one', () => {
  expect(comparableName('Moor\u00e9.JPG')).toBe(comparableName('moore\u0301.jpg'));
  expect(comparableName('moor.jpg')).not.toBe(comparableName('moore.jpg'));
});

test('slugOf(title) is never the name of a device', () => {
  expect([slugOf('Con'), slugOf('NUL!'), slugOf('Lpt 1'), slugOf('Con Brio')]).toEqual([
    'con-2',
    'nul-2',
    'lpt-1',
    'con-brio',
  ]);
});
