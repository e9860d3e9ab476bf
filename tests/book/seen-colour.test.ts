import { describe, expect, test } from 'vitest';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { labFromHex } from '../../src/optics/display.ts';
import { bookWith, compileWith, file, recipeOf } from './sample.ts';

const target = (colour: string): string => file(`title: Old lure\nover-white: ${colour}\nover-black: "#4e3d27"`);

const overWhite = (colour: string): { readonly L: number; readonly a: number; readonly b: number } =>
  bookWith({ 'targets/lure.md': target(colour) }).targets[0]!.parts[0]!.overWhite.lab;

describe('a colour of a target', () => {
  test('may be what an instrument says, in Lab or XYZ under its light: the same colour each time', () => {
    // #a4814f by an independent library: culori 4.0.2, lab65, lab (D50, Bradford) and xyz65.
    const screen = labFromHex('#a4814f');
    expect(deltaE00(overWhite('"#a4814f"'), screen)).toBe(0);
    expect(deltaE00(overWhite('{ lab: [56.25, 7.11, 32.08] }'), screen)).toBeLessThan(0.05);
    expect(deltaE00(overWhite('{ lab: [56.56, 9.28, 32.34], light: D50 }'), screen)).toBeLessThan(0.35);
    expect(deltaE00(overWhite('{ xyz: [24.57, 24.16, 10.77] }'), screen)).toBeLessThan(0.1);
  });

  test('is not cut to what a screen shows', () => {
    const { parts } = bookWith({ 'targets/lure.md': target('{ lab: [60, 90, 60] }') }).targets[0]!;
    expect(parts[0]!.overWhite).toMatchObject({ lab: { L: 60, a: 90, b: 60 }, mapped: true });
  });

  test.each([
    ['{ lab: [56, 8] }', 'a colour whose three numbers are not there or out of range'],
    ['{ lab: [.nan, 8, 3] }', 'a colour whose three numbers are not there or out of range'],
    ['{ lab: [56, 8, 3], xyz: [1, 2, 3] }', '`lab` and `xyz` together'],
    ['{ lab: [56, 8, 3], light: D55 }', 'light `D55`'],
    ['{ lab: [56, 8, 3], observer: 10 }', '`observer` in a colour'],
  ])('refuses %s, with its place', (colour, found) => {
    const { diagnostics } = compileWith({ 'targets/lure.md': target(colour) });
    expect(diagnostics).toMatchObject([
      { code: 'field/colour', file: 'targets/lure.md', start: { line: 3, column: 1 }, found },
    ]);
  });
});

test('chips by an instrument give the material that the same chips on a screen give', () => {
  const chip = (white: string, black: string): string =>
    file(
      `title: Peat\nlook:\n  chips:\n    - { dose: 1 %, thickness: 3 mm, over-white: ${white}, over-black: ${black} }`,
    );
  const peat = (text: string): readonly number[] =>
    bookWith({ 'shelf/colorants/peat.md': text }).materials.find(({ id }) => id === 'peat')!.constants!.absorption;
  const screen = peat(chip('"#a4814f"', '"#4e3d27"'));
  const black = labFromHex('#4e3d27');
  const instrument = peat(chip('{ lab: [56.25, 7.11, 32.08] }', `{ lab: [${black.L}, ${black.a}, ${black.b}] }`));
  for (let band = 5; band < 30; band++)
    expect(Math.abs(Math.log(instrument[band]! / screen[band]!))).toBeLessThan(0.02);
});

test('a round may be seen by an instrument', () => {
  const recipe = file(
    'title: Pool\nmold: minnow\ncups:\n  body:\n    plastic: 100 ml\n    log:\n      - add: { peat: 10 drops }\n      - pour: 10 ml\n        seen: { over-white: { lab: [56.25, 7.11, 32.08] } }',
  );
  const book = bookWith({ 'colours/pool.md': recipe });
  expect(recipeOf(book, 'pool').cups[0]!.rounds[0]!.seen[0]!.overWhite).toMatchObject({
    lab: { L: 56.25, a: 7.11, b: 32.08 },
    hex: '#a4814f',
  });
});

test('what is lighter over black than over white is told where it stands, in a round and in a part of a target', () => {
  const { diagnostics } = compileWith({
    'colours/smoke.md': file(
      'title: Smoke\nmold: minnow\ncups:\n  body:\n    plastic: 100 ml\n    log:\n      - add: { peat: 9 drops }\n      - pour: 14 ml\n        seen: { over-white: "#000000", over-black: "#ffffff" }\n      - pour: 14 ml\n        seen: { over-white: "#4a3a2c", over-black: "#4b3b2d" }',
    ),
    'targets/elver.md': file(
      'title: Elver\nparts:\n  back: { over-white: "#202020", over-black: "#d0d0d0" }\n  belly: { over-white: "#d0d0d0", over-black: "#202020" }',
    ),
  });
  expect(diagnostics.map(({ code, file: path, start }) => [code, path, start.line])).toEqual([
    ['seen/reversed', 'colours/smoke.md', 10],
    ['seen/reversed', 'targets/elver.md', 4],
  ]);
});
