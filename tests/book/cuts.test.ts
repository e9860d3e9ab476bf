import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { CompileMemory } from '../../src/book/compile-memory.ts';
import type { Cup } from '../../src/book/model/cup.ts';
import { publishedBook } from '../../src/book/publish/published-book.ts';
import type { Batch } from '../../src/cup/batch.ts';
import { EXAMPLE_BOOK } from '../../src/diagnostics/examples.ts';
import { readThing, type Thing } from '../../src/recipe/read-thing.ts';
import { writeThing } from '../../src/recipe/write-thing.ts';
import { bookWith, compileWith, dose, file, recipeOf } from './sample.ts';

const SOFTENER = file('title: Softener\ndensity: 0.9 g/ml');
const PEAT = file(
  'title: Peat\ndensity: 1.2 g/ml\nprice: 6\npack: 30 ml\nhighest: 190 °C\nlook: { kind: dye, colour: "#6b4a2b", dose: 10 drops per 100 ml, thickness: 3 mm }',
);
const SHELF = {
  'shelf/additives/softener.md': SOFTENER,
  'shelf/colorants/peat.md': PEAT,
  'shelf/colorants/peat-cut.md': file('title: Peat Cut\ncut: { of: peat, with: softener, one-in: 10 }', 'Shake it.'),
  'shelf/colorants/peat-thin.md': file('title: Peat Thin\ncut: { of: peat, with: supple, one-in: 4 }'),
};
const cupOf = (inside: string, more = ''): string =>
  file(`title: Pool\nmold: minnow\n${more}cups:\n  body:\n${inside.replace(/^/gm, '    ')}`);
const poolWith = (inside: string, files: Readonly<Record<string, string>> = {}): Cup =>
  recipeOf(bookWith({ ...SHELF, 'colours/pool.md': cupOf(inside), ...files }), 'pool').cups[0]!;
const plasticMl = (cup: Cup): number => cup.rounds.at(-1)!.cup.plastics.supple!;
const faultsOf = (cut: string, files: Readonly<Record<string, string>> = {}) =>
  compileWith({ ...SHELF, 'shelf/colorants/peat-cut.md': file(`title: Peat Cut\n${cut}`), ...files })
    .diagnostics.filter(({ file: path }) => path === 'shelf/colorants/peat-cut.md')
    .map(({ code, found, fix = '', start }) => ({ code, found, fix, line: start?.line }));

describe('a cut', () => {
  test('compileBook of 10 drops of one in ten counts 1 drop of the bottle and 9 of the softener, each of 0.05 ml', () => {
    const cup = poolWith('plastic: 100 ml supple\nadd: { peat-cut: 10 drops }');
    expect(dose(cup, 'peat')).toBeCloseTo(0.05 * 1.2, 12);
    expect(dose(cup, 'softener')).toBeCloseTo(9 * 0.05 * 0.9, 12);
    expect(cup.contents.map(({ material }) => material)).toEqual(['peat', 'softener']);
    expect(cup.written).toEqual([{ material: 'peat-cut', dose: '10 drops' }]);
  });

  test('compileBook of a cut with plastic counts its plastic as plastic: 8 ml of one in four is 2 ml of the bottle and 6 ml', () => {
    const cup = poolWith('plastic: 94 ml supple\nlog: [{ add: { peat-thin: 8 ml } }]');
    expect(plasticMl(cup)).toBeCloseTo(100, 12);
    expect(dose(cup, 'peat')).toBeCloseTo(2 * 1.2, 12);
    // Poured in by hand was none.
    expect(cup.rounds[0]!.plasticAddedMl).toBe(0);
  });

  test('compileBook of a cut with a drop of its own takes that: 20 drops that weigh 1 g', () => {
    const cup = poolWith('plastic: 100 ml supple\nadd: { peat-cut: 20 drops }', {
      'shelf/colorants/peat-cut.md': file(
        'title: Peat Cut\ncut: { of: peat, with: softener, one-in: 2 }\ndrop: { count: 20, mass: 1 g }',
      ),
    });
    expect(dose(cup, 'peat') + dose(cup, 'softener')).toBeCloseTo(1, 12);
    expect(dose(cup, 'peat') / dose(cup, 'softener')).toBeCloseTo(1.2 / 0.9, 12);
  });

  test('compileBook(a recipe with cut doses) is the same as with the parts written out: contents, colour, cost, heat', () => {
    const amount = fc.integer({ min: 1, max: 400 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(
        amount,
        amount,
        fc.integer({ min: 2, max: 40 }),
        fc.integer({ min: 1, max: 60 }),
        fc.constantFrom('softener', 'supple'),
        (first, second, oneIn, pour, diluent) => {
          const pool = (id: string, log: string): readonly [string, string] => [
            `colours/${id}.md`,
            file(`title: ${id}\nmold: minnow\ncups:\n  body:\n    plastic: 90 ml supple\n    log:\n${log}`),
          ];
          const step = (grams: number): string => {
            // By hand: a part of 1.2 g/ml in so many, the others of the softener's 0.9 or the plastic's 1 g/ml.
            const other = diluent === 'supple' ? 1 : 0.9;
            const ml = grams / ((1.2 + (oneIn - 1) * other) / oneIn);
            const thinned = (ml * (oneIn - 1)) / oneIn;
            const peat = `peat: ${(1.2 * ml) / oneIn} g`;
            return diluent === 'supple'
              ? `      - { add: { ${peat} } }\n      - { plastic: ${thinned} ml supple }\n`
              : `      - { add: { ${peat}, softener: ${thinned * 0.9} g } }\n`;
          };
          const cutStep = (grams: number): string => `      - { add: { peat-cut: ${grams} g } }\n`;
          const poured = `      - { pour: ${pour} ml }\n`;
          const book = bookWith({
            ...SHELF,
            'shelf/plastics/supple.md': file('title: Supple\ndensity: 1 g/ml\nhighest: 185 °C\nprice: 9\npack: 1 l'),
            'shelf/colorants/peat-cut.md': file(`title: C\ncut: { of: peat, with: ${diluent}, one-in: ${oneIn} }`),
            ...Object.fromEntries([
              pool('cut', `${cutStep(first)}${poured}${cutStep(second)}`),
              pool('parts', `${step(first)}${poured}${step(second)}`),
            ]),
          });
          const [cut, parts] = ['cut', 'parts'].map((id) => recipeOf(book, id));
          for (const { material } of parts!.cups[0]!.contents)
            expect(dose(cut!.cups[0]!, material)).toBeCloseTo(dose(parts!.cups[0]!, material), 5);
          expect(cut!.cups[0]!.leftMl).toBeCloseTo(parts!.cups[0]!.leftMl!, 4);
          expect(cut!.cups[0]!.limit).toEqual(parts!.cups[0]!.limit);
          expect(cut!.body.overBlack.lab.L).toBeCloseTo(parts!.body.overBlack.lab.L, 3);
          expect((cut!.batch as Batch).cost).toBeCloseTo((parts!.batch as Batch).cost, 3);
        },
      ),
      { numRuns: 25 },
    );
  });

  test('compileBook of a cup that comes from one with a cut takes back with `set` and `without` what the cut brought', () => {
    const parent = cupOf('plastic: 100 ml supple\nadd: { peat-cut: 10 drops, softener: 1 ml }');
    const child = (change: string): Cup => {
      const text = file(`title: Child\nmold: minnow\nfrom: pool\ncups:\n  body:\n    ${change}`);
      return recipeOf(bookWith({ ...SHELF, 'colours/pool.md': parent, 'colours/child.md': text }), 'child').cups[0]!;
    };
    const amounts = (cup: Cup): readonly number[] => [dose(cup, 'peat'), dose(cup, 'softener')];
    const near = (drops: number, of: number): unknown => expect.closeTo(0.05 * drops * of, 10);
    expect(amounts(child('set: { peat-cut: 20 drops }'))).toEqual([near(2, 1.2), near(18 + 20, 0.9)]);
    expect(amounts(child('set: { peat: 2 drops }'))).toEqual([near(2, 1.2), near(20, 0.9)]);
    expect(amounts(child('set: { peat-thin: 4 drops }'))[0]).toBeGreaterThan(0.05);
    expect(amounts(child('without: peat'))).toEqual([0, near(20, 0.9)]);
    const plain = bookWith({
      ...SHELF,
      'colours/pool.md': cupOf('plastic: 100 ml supple\nadd: { peat-cut: 7 drops }'),
      'colours/child.md': file('title: Child\nmold: minnow\nfrom: pool\ncups:\n  body: { without: peat-cut }'),
    });
    expect(recipeOf(plain, 'child').cups[0]!.contents).toEqual([]);
    expect(amounts(child('without: peat-cut'))).toEqual([0, near(20, 0.9)]);
  });

  test('compileBook tells no change of dose where a child writes 10 drops of a cut for a drop and nine of softener', () => {
    const book = bookWith({
      ...SHELF,
      'colours/pool.md': cupOf('plastic: 100 ml supple\nadd: { peat: 1 drop, softener: 9 drops }'),
      'colours/child.md': file(
        'title: Child\nmold: minnow\nfrom: pool\ncups:\n  body:\n    plastic: 100 ml supple\n    from: pool\n    without: [peat, softener]\n    add: { peat-cut: 10 drops }',
      ),
    });
    expect(recipeOf(book, 'child').changes[0]!.change.doses).toEqual([]);
  });

  test('compileBook has a cut with its bottle and among no materials', () => {
    const { materials } = bookWith(SHELF);
    expect(materials.map(({ id }) => id)).not.toContain('peat-cut');
    const { cuts = [] } = materials.find(({ id }) => id === 'peat')!;
    expect(cuts.map(({ id, oneIn, with: diluent, notes }) => [id, oneIn, diluent, notes])).toEqual([
      ['peat-cut', 10, 'softener', 'Shake it.'],
      ['peat-thin', 4, 'supple', ''],
    ]);
  });

  test('publishedBook has of cuts those that a recipe in full names, and nothing of others', () => {
    const files = {
      ...SHELF,
      'shelf/colorants/peat-faint.md': file('title: Peat Faint\ncut: { of: peat, with: supple, one-in: 100 }'),
      'colours/pool.md': cupOf('plastic: 100 ml supple\nadd: { peat-cut: 10 drops }'),
    };
    const book = bookWith(files);
    const measured = book.recipes.flatMap(({ batch }) =>
      batch.cups.flatMap(({ amounts }) => amounts.flatMap(({ cut }) => cut?.id ?? [])),
    );
    const peat = publishedBook(book).materials.find(({ id }) => id === 'peat')!;
    expect(peat.cuts!.map(({ id }) => id)).toEqual([...new Set(['peat-cut', ...measured])].sort());
    expect(peat.cuts!.map(({ id }) => id)).not.toContain('peat-faint');
    const hidden = publishedBook(
      bookWith({
        ...files,
        'colours/pool.md': cupOf('plastic: 100 ml supple\nadd: { peat-cut: 10 drops }', 'publish: no\n'),
      }),
    );
    expect(JSON.stringify(hidden)).not.toMatch(/peat-cut|Peat Cut|softener/i);
  });

  test('publishedBook names no cut that only a hidden recipe is mixed with, in the rounds of what comes from it', () => {
    const child = 'plastic: 120 ml\nfrom: pool\nlog: [{ add: { peat: 60 drops } }, { pour: 10 ml }]';
    const book = bookWith({
      ...SHELF,
      'colours/pool.md': cupOf('plastic: 100 ml supple\nadd: { peat-cut: 10 drops }', 'publish: no\n'),
      'colours/child.md': file(
        `title: Child\nmold: minnow\npublish: full\ncups:\n  body:\n${child.replace(/^/gm, '    ')}`,
      ),
    });
    expect(recipeOf(book, 'child').cups[0]!.rounds[0]!.cup.cuts).toEqual({ 'peat-cut': expect.any(Number) });
    const shared = JSON.stringify(publishedBook(book));
    expect(shared).toContain('"softener":');
    expect(shared).not.toMatch(/peat-cut|Peat Cut/i);
  });
});

describe('the file of a cut', () => {
  test('writeThing is the inverse of readThing', () => {
    const ratio = fc.oneof(fc.integer({ min: 2, max: 1000 }), fc.double({ min: 2, max: 99, noNaN: true }));
    fc.assert(
      fc.property(ratio, fc.option(fc.constantFrom('0.04 ml', '{ count: 20, mass: 1 g }')), (oneIn, drop) => {
        const text = file(
          `title: Peat Cut\ncut: { of: peat, with: softener, one-in: ${oneIn} }${drop === null ? '' : `\ndrop: ${drop}`}`,
          'Shake it.',
        );
        const path = 'shelf/colorants/peat-cut.md';
        const thing = readThing('colorant', 'peat-cut', { path, text }) as Thing<'colorant'>;
        expect(thing.fields.cut).toEqual({ of: 'peat', with: 'softener', 'one-in': oneIn });
        const again = readThing('colorant', 'peat-cut', {
          path,
          text: writeThing('colorant', thing.fields, thing.notes),
        }) as Thing<'colorant'>;
        expect([again.fields, again.notes]).toEqual([thing.fields, thing.notes]);
      }),
      { numRuns: 50 },
    );
  });

  test.each([
    ['cut: { of: paet, with: softener, one-in: 10 }', 'material/cut', 'colorant `paet`', 'write `peat`'],
    ['cut: { of: peat, with: sofener, one-in: 10 }', 'material/cut', '`sofener`', 'write `softener`'],
    ['cut: { of: frost, with: softener, one-in: 10 }', 'material/cut', 'powder `frost`', 'weigh it'],
    ['cut: { of: softener, with: softener, one-in: 10 }', 'material/cut', 'additive `softener`', 'name of a colorant'],
    ['cut: { of: peat, with: frost, one-in: 10 }', 'material/cut', 'powder `frost`', 'softener'],
    ['cut: { of: peat, with: peat, one-in: 10 }', 'material/cut', 'colorant `peat`', 'softener'],
    ['cut: { of: peat, with: salt, one-in: 10 }', 'material/cut', 'additive `salt`', 'softener'],
    [
      'cut: { of: peat-thin, with: softener, one-in: 10 }',
      'material/cut',
      '`peat-thin`, which is a cut',
      '`one-in: 40`',
    ],
    ['cut: { of: peat, with: peat-thin, one-in: 10 }', 'material/cut', '`peat-thin`, which is a cut', 'softener'],
    ['cut: { of: peat-cut, with: softener, one-in: 10 }', 'material/cut', 'a cut itself', 'name of the bottle'],
    ['cut: { of: peat, with: softener, one-in: 1 }', 'field/value', '`1`', 'correct the number'],
    ['cut: { of: peat, with: softener, one-in: 0.1 }', 'field/value', '`0.1`', 'write `10`'],
    ['cut: { of: peat, with: softener, one-in: "1:9" }', 'field/value', '`1:9`', 'write `10`'],
    ['cut: { of: peat, with: softener, one-in: 1 in 10 }', 'field/value', '`1 in 10`', 'write `10`'],
    ['cut: { of: peat, with: softener, one-in: 10% }', 'field/value', '`10%`', 'write `10`'],
    ['cut: { of: peat, with: softener, one-in: 5000 }', 'field/value', '`5000`', 'correct the number'],
    [
      'cut: { of: peat, with: softener }',
      'field/missing',
      '`cut` without `one-in`',
      'write `one-in: …` into its braces',
    ],
    ['cut: peat', 'field/type', '`peat`', ''],
    [
      'cut: { of: peat, with: softener, one-in: 10 }\nprice: 4',
      'material/cut-beside',
      '`price` beside `cut`',
      'remove',
    ],
    ['cut: { of: peat, with: softener, one-in: 10 }\nstock: 30 ml', 'material/cut-beside', '`stock`', 'remove'],
    ['cut: { of: peat, with: softener, one-in: 10 }\nhighest: 180 °C', 'material/cut-beside', '`highest`', 'remove'],
    ['cut: { of: peat, with: softener, one-in: 10 }\nmost: 1 %', 'material/cut-beside', '`most`', 'remove'],
    [
      'cut: { of: peat, with: softener, one-in: 10 }\nlook: { kind: dye, colour: "#6b4a2b", dose: 1 drop per 100 ml, thickness: 3 mm }',
      'material/cut-beside',
      '`look` beside `cut`',
      'remove',
    ],
    ['drop: 0.04 ml', 'field/missing', 'without `look`', 'add a line `look: …`'],
  ])('%s: %s', (front, code, found, fix) => {
    const told = faultsOf(front, {
      'shelf/additives/salt.md': file('title: Salt\npack: 1 kg'),
    });
    expect(told).toEqual([
      { code, found: expect.stringContaining(found), fix: expect.stringContaining(fix), line: expect.any(Number) },
    ]);
  });

  test('compileBook of two cuts of each other tells both, and once of each', () => {
    const told = faultsOf('cut: { of: peat-thin, with: softener, one-in: 10 }', {
      'shelf/colorants/peat-thin.md': file('title: Thin\ncut: { of: peat-cut, with: softener, one-in: 10 }'),
    });
    expect(told.map(({ code }) => code)).toEqual(['material/cut']);
  });

  test('compileBook tells of a look that is missing with the other faults of its file', () => {
    expect(
      faultsOf('density: heavy')
        .map(({ code }) => code)
        .sort(),
    ).toEqual(['field/missing', 'field/quantity']);
  });

  test('compileBook leaves a cut out, and what is mixed with it, while its bottle waits to be filled in', () => {
    const { leftOut, diagnostics } = compileWith({
      ...SHELF,
      'shelf/colorants/peat.md': file('title: Peat\nlook:'),
      'colours/pool.md': cupOf('plastic: 100 ml supple\nadd: { peat-cut: 10 drops }'),
    });
    expect(leftOut.map(({ path, why }) => `${path} ${why}`)).toEqual(
      expect.arrayContaining(['shelf/colorants/peat-cut.md to-fill-in', 'colours/pool.md to-fill-in']),
    );
    expect(diagnostics.map(({ severity }) => severity)).not.toContain('error');
  });

  test('compileBook tells of too much of a bottle, or of what it is cut with, at the dose of the cut', () => {
    const told = (dose: string): readonly string[] =>
      compileWith({
        ...SHELF,
        'shelf/colorants/peat.md': PEAT.replace('highest', 'most: 1 drop per 100 ml\nhighest'),
        'colours/pool.md': cupOf(`plastic: 100 ml supple\nlog:\n  - add: { peat-cut: ${dose} }`),
      }).diagnostics.flatMap(({ file: path, code, start }) =>
        path === 'colours/pool.md' ? [`${code} ${start.line}`] : [],
      );
    expect(told('9 drops')).toEqual([]);
    expect(told('12 drops')).toEqual(['recipe/overloaded 8']);
    expect(new Set(told('150 ml'))).toContain('recipe/overloaded 8');
    expect(told('150 ml').join()).not.toContain('recipe/more-than-plastic');
  });

  test('compileBook tells of a name that is nearly that of a cut, and of plastic that is none', () => {
    const told = (inside: string): readonly (string | undefined)[] =>
      compileWith({ ...SHELF, 'colours/pool.md': cupOf(inside) }).diagnostics.map(({ fix }) => fix);
    expect(told('plastic: 100 ml supple\nadd: { peat-ctu: 10 drops }')).toContain('write `peat-cut`');
    expect(told('plastic: 100 ml peat-cut')).toHaveLength(1);
  });

  test('compileBook(…, { memory }) after an edit of a cut, or of what it is cut with, is a compile from the beginning', () => {
    const files = (oneIn: number, density: string): Readonly<Record<string, string>> => ({
      ...EXAMPLE_BOOK,
      ...SHELF,
      'colours/pool.md': cupOf('plastic: 100 ml supple\nadd: { peat-cut: 10 drops }'),
      'shelf/colorants/peat-cut.md': file(`title: Cut\ncut: { of: peat, with: softener, one-in: ${oneIn} }`),
      'shelf/additives/softener.md': file(`title: Softener\ndensity: ${density} g/ml`),
    });
    const memory = new CompileMemory();
    for (const [oneIn, density] of [
      [10, '0.9'],
      [5, '0.9'],
      [5, '1'],
      [1, '1'],
      [5, '1'],
    ] as const) {
      const sources = Object.entries(files(oneIn, density)).map(([path, text]) => ({ path, text }));
      expect(compileBook(sources, { memory })).toEqual(compileBook(sources));
    }
  });
});
