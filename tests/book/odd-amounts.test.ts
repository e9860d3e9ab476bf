import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { filesBelow } from '../folder-tree.ts';
import { compileWith, file, projectFile } from './sample.ts';

const amount = (least: number, most: number): fc.Arbitrary<string> =>
  fc
    .double({ min: Math.log10(least), max: Math.log10(most), noNaN: true })
    .map((exponent) => (10 ** exponent).toFixed(6).replace(/\.?0+$/, '') || '1');

const bench = fc.record({
  drops: fc.boolean(),
  scale: fc.constantFrom('0.001 g', '0.01 g', '0.1 g', '1 g', '1/8 oz'),
  spoons: fc.constantFrom('', ', spoons: []', ', spoons: [1 tsp]'),
});

test('compileBook(…) computes every small dose, whatever the scale, the share and the batch', () => {
  fc.assert(
    fc.property(
      bench,
      amount(0.01, 20),
      fc.constantFrom('100 ml', 'gal', '1 l'),
      fc.constantFrom('1%', '2%', '40%'),
      fc.integer({ min: 1, max: 40 }),
      ({ drops, scale, spoons }, drop, per, share, baits) => {
        const { book, diagnostics } = compileWith({
          'book.md': file(`title: T\ntools: { drops: ${drops}, scale: ${scale}${spoons} }`),
          'colours/smoke.md': file(
            [
              `title: Smoke\nmold: minnow\npattern: tipped\nbaits: ${baits}\ncups:`,
              `  body: { plastic: 120 ml, add: { peat: ${drop} drops per ${per}, frost: 0.01 % } }`,
              `  tip: { share: ${share}, plastic: 120 ml, add: { peat: ${drop} drops per ${per} } }`,
            ].join('\n'),
          ),
        });
        expect(diagnostics).toEqual([]);
        const { expected, bound } = book!.recipes[0]!.spread;
        expect(expected).toBeGreaterThan(0);
        expect(bound).toBeLessThan(150);
      },
    ),
    { numRuns: 40 },
  );
});

describe('numbers that no bench has', () => {
  const cup = (plastic: string, add: string): Readonly<Record<string, string>> => ({
    'colours/smoke.md': file(`title: Smoke\nmold: minnow\ncups: { body: { plastic: ${plastic}, add: { ${add} } } }`),
  });
  const peat = (look: string): Readonly<Record<string, string>> => ({
    'shelf/colorants/peat.md': file(`title: Peat\nlook: { ${look} }`),
  });
  test.each([
    ['an amount', cup('120 ml', 'peat: 100000 kg'), 'colours/smoke.md:4 field/quantity'],
    ['the plastic', cup('0.0000000000000001 ml', 'peat: 1 drop'), 'colours/smoke.md:4 field/quantity'],
    [
      'the body of a mold',
      { 'molds/minnow.md': file('title: M\ncavity: 3 ml\nbody: 100000000 in') },
      'molds/minnow.md:4 field/quantity',
    ],
    [
      'the dose of a look',
      peat('kind: pigment, colour: "#5b4327", dose: 0.000000001 g per l'),
      'shelf/colorants/peat.md:3 field/quantity',
    ],
    [
      'a number of baits',
      { 'colours/smoke.md': file('title: S\nbaits: 1e18\ncups: { body: { plastic: 90 ml } }') },
      'colours/smoke.md:3 field/type',
    ],
    [
      'a price',
      { 'shelf/plastics/supple.md': file('title: S\nprice: 1e300\npack: 1 l') },
      'shelf/plastics/supple.md:3 field/type',
    ],
    [
      'a density',
      {
        'shelf/powders/frost.md': file(
          'title: F\nlook: { kind: pearl, colour: "#e8e4da", dose: 1 % }\ndensity: 1000 g/ml',
        ),
      },
      'shelf/powders/frost.md:4 field/quantity',
    ],
  ])('%s beyond its bounds is told where it stands', (_, files, place) => {
    const { diagnostics } = compileWith(files);
    expect(diagnostics.map(({ file, start, code }) => `${file}:${start.line} ${code}`)).toEqual([place]);
  });
  test('a film of next to no thickness is told of', () => {
    const table = ['bare_white,86', 'film_on_white,61', 'bare_black,5', 'film_on_black,5.9'].map(
      (row) => `a,peat=1 %,1e-300,${row},70,70`,
    );
    const { diagnostics } = compileWith({
      ...peat('kind: measured'),
      'shelf/measurements.csv': ['# unit: percent', 'sample,composition,thickness,surface,400,500,600', ...table].join(
        '\n',
      ),
    });
    expect(diagnostics.map(({ code }) => code)).toEqual(table.map(() => 'shelf/measurements'));
  });
  test('a film on two cards that are alike is told of', () => {
    const table = ['bare_white', 'film_on_white', 'bare_black', 'film_on_black'].map(
      (row) => `a,peat=1 %,1,${row},100,100,100`,
    );
    const { diagnostics } = compileWith({
      ...peat('kind: measured'),
      'shelf/measurements.csv': ['# unit: percent', 'sample,composition,thickness,surface,400,500,600', ...table].join(
        '\n',
      ),
    });
    expect(diagnostics.map(({ code, start, found }) => `${code} ${start.line} ${found}`)).toEqual([
      'shelf/film 3 film `a` on cards that reflect 100 % and 100 %',
    ]);
  });
  test('a chip of a colour that no plastic shows is computed', () => {
    const chip =
      'chips: [{ dose: 1 %, thickness: 3 mm, over-white: { lab: [110, 200, -200] }, over-black: "#000000" }]';
    expect(() => compileWith(peat(chip))).not.toThrow();
  });
  test('what only together cannot be computed is told of the recipe, beside the mistakes of all other files', () => {
    const { diagnostics } = compileWith({
      ...peat('kind: pigment, colour: "#5b4327", dose: 0.1 mg per 1000 l'),
      ...cup('60 ml', 'peat: 60 g'),
      'colours/dusk.md': file('title: Dusk\ncups: { body: { plastic: 60 ml, add: { paet: 1 drop } } }'),
    });
    expect(diagnostics.map(({ file, code }) => `${file} ${code}`)).toEqual([
      'colours/dusk.md recipe/unknown-material',
      'colours/smoke.md file/not-computed',
      'colours/smoke.md recipe/too-much-together',
    ]);
  });
});

test('no cup of a batch is filled above its limit, whatever stays in it, and where nothing could be poured that is told', () => {
  const left = (text: string): ReturnType<typeof compileWith> =>
    compileWith({
      'book.md': file(`title: T\n${text}`),
      'colours/smoke.md': file('title: Smoke\nmold: minnow\nbaits: 60\ncups: { body: { plastic: 120 ml } }'),
    });
  for (const text of ['left-in-cup: 3 ml', 'left-in-cup: 100 ml', 'left-in-cup: 170 ml']) {
    const [cup] = left(text).book!.recipes[0]!.batch.cups;
    expect(cup!.volumeMl).toBeLessThanOrEqual(175 + 1e-9);
  }
  for (const text of ['left-in-cup: 180 ml', 'left-in-cup: 400 ml', 'left-in-cup: 175 ml']) {
    expect(left(text).diagnostics.map(({ code, start }) => `${code} ${start.line}`)).toEqual(['book/left-in-cup 3']);
  }
});

test('compileBook(…) throws for no number, unit or name that is put in the place of another', () => {
  const folder = 'tests/fixtures/two-families/recipes';
  const sources = filesBelow(folder).map((path) => ({ path, text: projectFile(`${folder}/${path}`) }));
  const odd = fc.constantFrom(
    ...[
      '0',
      '1e400',
      '.inf',
      '-3',
      '0.0001',
      '0x1F',
      '1/0',
      '99999999999999999999',
      '1000',
      '0.001',
      '1000000',
      '½',
      '',
    ],
  );
  const unit = fc.constantFrom(
    'ml',
    'l',
    'kg',
    'mg',
    'drops',
    'in',
    'mm',
    '%',
    '°F',
    'tsp',
    'gal',
    '',
    'constructor',
    '__proto__',
  );
  const change = fc.record({ source: fc.nat(), place: fc.nat(), what: fc.constantFrom('number', 'word'), odd, unit });
  fc.assert(
    fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
      const texts = sources.map(({ text }) => text);
      for (const { source, place, what, odd, unit } of changes) {
        const at = source % texts.length;
        const pattern = what === 'number' ? /\d+(?:\.\d+)?/g : /[a-z°%-]+/gi;
        const found = [...texts[at]!.matchAll(pattern)];
        const { index, 0: word } = found[place % found.length]!;
        texts[at] =
          texts[at]!.slice(0, index) + (what === 'number' ? odd : unit) + texts[at]!.slice(index + word.length);
      }
      const { diagnostics } = compileBook(sources.map(({ path }, index) => ({ path, text: texts[index]! })));
      expect(diagnostics.every(({ file, start }) => file !== '' && start.line > 0)).toBe(true);
    }),
    { numRuns: 120 },
  );
});
