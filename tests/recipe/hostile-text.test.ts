import { describe, expect, test } from 'vitest';
import type { DiagnosticCode } from '../../src/diagnostics/catalogue.ts';
import { readThing } from '../../src/recipe/read-thing.ts';
import { compileWith, file } from '../book/sample.ts';

const recipe = (front: string): string => file(`title: Smoke\nmold: minnow\n${front}`);

/** Codes told of a recipe. Each of these took seconds to minutes, or ended the program: the test's patience ends before that. */
const told = (front: string): ReadonlySet<DiagnosticCode> =>
  new Set(compileWith({ 'colours/smoke.md': recipe(front) }).diagnostics.map(({ code }) => code));

describe('a text that was made to stall the build is refused at once', { timeout: 20_000 }, () => {
  test.each<[string, string, DiagnosticCode]>([
    ['an amount of 50 KB', `cups: { body: { plastic: '1${' x'.repeat(25_000)}' } }`, 'field/quantity'],
    [
      'a dose of 50 KB',
      `cups: { body: { plastic: 90 ml, add: { peat: '1${' per x'.repeat(9000)}' } } }`,
      'field/quantity',
    ],
    ['a price of digits', `streak: ${'1'.repeat(100_000)}`, 'field/quantity'],
    ['100 000 brackets', `cups: ${'['.repeat(100_000)}`, 'file/too-large'],
    ['100 000 braces', `cups: ${'{a: '.repeat(50_000)}`, 'file/too-large'],
    ['100 000 dashes', `tags:\n${'- '.repeat(100_000)}x`, 'file/too-large'],
    [
      '300 levels of fields',
      Array.from({ length: 300 }, (_, level) => `${' '.repeat(level)}a:`).join('\n'),
      'field/unknown',
    ],
    [
      '8000 unknown materials',
      `cups:\n  body:\n    plastic: 90 ml\n    add:\n${Array.from({ length: 8000 }, (_, i) => `      paet-${i}: 1 g`).join('\n')}`,
      'file/too-large',
    ],
    [
      '50 000 names of which one stands twice',
      `${Array.from({ length: 30_000 }, (_, i) => `a${i}:`).join('\n')}\na1:`,
      'file/too-large',
    ],
    ['30 000 lines of which the last is wrong', `${'a:\n'.repeat(30_000)}b: 'x`, 'file/too-large'],
    ['1600 fields of which the last is wrong', `${'a:\n'.repeat(1600)}b: 'x`, 'front-matter/syntax'],
    ['a long line of spaces', `a${' '.repeat(100_000)}b\nc: 'x`, 'front-matter/syntax'],
    ['a name of 100 KB', `${'m'.repeat(900)}: minnow`, 'field/unknown'],
  ])('%s', (_, front, code) => {
    expect([...told(front)]).toContain(code);
  });
});

describe('names that a program has for itself', () => {
  const colorant = file('title: C\nlook: { kind: pigment, colour: "#5b4327", dose: 24 drops per 100 ml }');
  const cup = (fields: string): string => recipe(`cups: { body: { ${fields} } }`);
  test('a material `constructor` is one like any other', () => {
    const { book, diagnostics } = compileWith({
      'shelf/colorants/constructor.md': colorant,
      'colours/smoke.md': cup('plastic: 100 ml, add: { constructor: 10 drops }'),
      'colours/dusk.md': file('title: Dusk\nfrom: smoke\ncups: { body: { set: { constructor: 20 drops } } }'),
    });
    expect(diagnostics).toEqual([]);
    expect(book!.recipes.map(({ cups }) => cups[0]!.contents)).toEqual([
      [{ material: 'constructor', gramsPerMl: 0.01 }],
      [{ material: 'constructor', gramsPerMl: 0.005 }],
    ]);
  });
  test('one that is not in the cup cannot be left out', () => {
    const { diagnostics } = compileWith({
      'shelf/colorants/constructor.md': colorant,
      'colours/dusk.md': file('title: Dusk\nfrom: smoke\ncups: { body: { without: constructor } }'),
    });
    expect(diagnostics.map(({ code }) => code)).toEqual(['recipe/not-in-cup']);
  });
  test.each(['add: { __proto__: 10 drops }', 'add: { toString: 10 drops }', '__proto__: { a: 1 }'])(
    '%s is told',
    (fields) => {
      expect(compileWith({ 'colours/smoke.md': cup(`plastic: 100 ml, ${fields}`) }).diagnostics).toHaveLength(1);
    },
  );
});

test('cups and parts named by numbers are refused, since their order would be lost', () => {
  const { diagnostics } = compileWith({
    'colours/smoke.md': recipe('cups:\n  2: { plastic: 60 ml }\n  1: { plastic: 60 ml }'),
    'targets/elver.md': file('title: E\nparts: { 2: { over-white: "#7a6a4c" }, a: { over-white: "#7a6a4c" } }'),
  });
  expect(diagnostics.map(({ file, start, code, fix }) => `${file}:${start.line} ${code} ${fix}`)).toEqual([
    'colours/smoke.md:5 file/name write `cup-2`',
    'colours/smoke.md:6 file/name write `cup-1`',
    'targets/elver.md:3 file/name write `part-2`',
  ]);
});

test.each([
  ['1.10', '1.10'],
  ['0.040', '0.040'],
  ['0x1F', '0x1F'],
  ['1e400', '1e400'],
  ['007', '007'],
  ['True', 'True'],
  ['"1.10"', '1.10'],
])('a title and a tag %s stay as they are written', (written, text) => {
  const thing = readThing('recipe', 'a', {
    path: 'a.md',
    text: `---\ntitle: ${written}\ntags: [${written}, dark]\n---\n`,
  });
  expect('kind' in thing && [thing.fields.title, thing.fields.tags]).toEqual([text, [text, 'dark']]);
});

describe('a cup that was poured empty', () => {
  const log = (steps: string): ReturnType<typeof compileWith> =>
    compileWith({
      'colours/smoke.md': recipe(
        `cups:\n  body:\n    plastic: 100 ml\n    log:\n      - add: { peat: 1 % }\n      - pour: 101.05 ml\n${steps}`,
      ),
    });
  test('takes nothing more, be it a part of the plastic or grams', () => {
    for (const amount of ['1 g', '1 %']) {
      const { diagnostics } = log(`      - add: { frost: ${amount} }`);
      expect(diagnostics.map(({ code, start }) => `${code} ${start.line}`)).toEqual(['recipe/empty-cup 10']);
    }
  });
  test('takes plastic, and what is added with it', () => {
    const { book, diagnostics } = log('      - { plastic: 50 ml, add: { frost: 1 g } }');
    expect(diagnostics).toEqual([]);
    expect(book!.recipes[0]!.cups[0]!.contents).toEqual([{ material: 'frost', gramsPerMl: 0.02 }]);
  });
});
