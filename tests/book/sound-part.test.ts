import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import type { Compiled } from '../../src/book/compiled.ts';
import { type LeftOut, leftOut } from '../../src/book/left-out.ts';
import { kindOfPath } from '../../src/recipe/source.ts';
import { mutatedBook } from '../hostile/mutated-book.ts';
import { SOUND_BOOK } from '../hostile/sound-book.ts';
import { FILMS, MEASURED, table } from './measured-shelf.ts';
import { compileWith, file } from './sample.ts';

/** How many times as many books as in `npm test`; `npm run laws` says. */
const TIMES = Number(process.env.LAWS_TIMES ?? 1);

type Files = Readonly<Record<string, string>>;

const compiled = (files: Files): Compiled => compileBook(Object.entries(files).map(([path, text]) => ({ path, text })));

/** A book without the files, and the lines of files, that were left out of it. */
function without(files: Files, gone: readonly LeftOut[]): Files {
  return Object.fromEntries(
    Object.entries(files).flatMap(([path, text]) => {
      const out = gone.find((each) => each.path === path);
      if (out === undefined) return [[path, text]];
      const { lines } = out;
      return lines
        ? [
            [
              path,
              text
                .split('\n')
                .filter((_line, index) => !lines.includes(index + 1))
                .join('\n'),
            ],
          ]
        : [];
    }),
  );
}

/** Files of things that are neither in what is sound of a book nor left out of it. */
function lost(files: Files, { book, leftOut: gone }: Compiled): readonly string[] {
  if (!book) return [];
  const kept = [...book.recipes, ...book.materials, ...book.molds, ...book.targets].map(({ source }) => source.path);
  const told = new Set([...kept, ...gone.map(({ path }) => path), 'book.md']);
  return Object.keys(files).filter((path) => kindOfPath(path) !== undefined && !told.has(path));
}

/** Checks a book against its compile without what was left out; says whether anything of it was sound. */
function isAsWithout(files: Files): boolean {
  const whole = compiled(files);
  expect(lost(files, whole)).toEqual([]);
  if (!whole.book) return false;
  const rest = compiled(without(files, whole.leftOut));
  expect(rest.leftOut).toEqual([]);
  expect(JSON.stringify(rest.book)).toBe(JSON.stringify(whole.book));
  return !whole.complete;
}

/** A book with most that one file can need of another: families, cups of others, measured materials, a target, two molds. */
const TIED: Files = {
  ...SOUND_BOOK,
  ...MEASURED,
  'shelf/measurements.csv': table(FILMS),
  'molds/grub.md': file('title: Grub\ncavity: 4 ml\nbody: 8 mm\nthin: 3 mm'),
  'colours/reedy.md': file('title: Reedy\nmold: grub\ncups: { body: { plastic: 90 ml supple, add: { reed: 0.1 % } } }'),
  'colours/clayey.md': file('title: Clayey\nfrom: reedy\nfor: reed\ncups: { body: { add: { clay: 0.2 % } } }'),
  'colours/both.md': file(
    'title: Both\nmold: minnow\npattern: laminate\ncups: { back: { from: clayey/body }, belly: { from: dawn/back } }',
  ),
};

const BREAKS: readonly ((text: string) => string | undefined)[] = [
  () => undefined,
  (text) => text.replace('---\n', '---\nno-such-field: 3\n'),
  (text) => text.replace('---\n', '---\nhighest: 900 °C\n'),
  (text) => text.replace('---\n', '---\n]: [\n'),
  (text) => text.replace('title: ', 'titel: '),
];

const broken: fc.Arbitrary<Files> = fc
  .uniqueArray(fc.tuple(fc.constantFrom(...Object.keys(TIED)), fc.constantFrom(...BREAKS)), {
    minLength: 1,
    maxLength: 3,
    selector: ([path]) => path,
  })
  .map((breaks) =>
    breaks.reduce<Files>((files, [path, change]) => {
      const { [path]: text = '', ...others } = files;
      const changed = change(text);
      return changed === undefined ? others : { ...others, [path]: changed };
    }, TIED),
  );

/** A line with a field that has a value. */
const FILLED = /^(?:\s|- )*[\w-]+: *\S/;

/** The same without films, which take long to fit. */
const KNIT: Files = {
  ...SOUND_BOOK,
  'molds/grub.md': file('title: Grub\ncavity: 4 ml\nbody: 8 mm\nthin: 3 mm'),
  'colours/reedy.md': file(
    'title: Reedy\nmold: grub\ncups:\n  body:\n    plastic: 90 ml supple\n    add: { frost: 0.1 % }',
  ),
  'colours/clayey.md': file('title: Clayey\nfrom: reedy\nfor: reed\ncups:\n  body:\n    add: { peat: 0.2 % }'),
  'colours/both.md': file(
    'title: Both\nmold: minnow\npattern: laminate\ncups:\n  back: { from: clayey/body }\n  belly: { from: dawn/back }',
  ),
};

/** Files of the book in which some fields are still empty. */
const emptied: fc.Arbitrary<Files> = fc
  .array(fc.tuple(fc.constantFrom(...Object.keys(KNIT).filter((path) => path !== 'book.md')), fc.nat()), {
    minLength: 1,
    maxLength: 3,
  })
  .map((places) =>
    places.reduce<Files>(
      (files, [path, number]) => {
        const lines = (files[path] ?? '').split('\n');
        const filled = lines.flatMap((line, at) => (FILLED.test(line) && !line.includes('publish') ? [at] : []));
        const at = filled[number % Math.max(1, filled.length)];
        if (at === undefined) return files;
        const empty = lines.with(at, lines[at]!.replace(/:.*/, ':'));
        return Object.assign(files, { [path]: empty.join('\n') });
      },
      { ...KNIT },
    ),
  );

describe('what is sound of a book', () => {
  test.each([
    ['that lacks files or has faults in them', broken, 25 * TIMES],
    ['in which anything is changed', mutatedBook, 40 * TIMES],
  ] as const)('is the book without the files left out: of one %s', (_words, books, numRuns) => {
    let tried = 0;
    fc.assert(
      fc.property(books, (files) => {
        if (isAsWithout(files)) tried++;
      }),
      { numRuns },
    );
    // Were there never anything sound, or never a fault, this would show nothing.
    expect(tried).toBeGreaterThan(numRuns / 4);
  });

  test('is all of a book that has no errors', () => {
    const { complete, leftOut: gone, diagnostics } = compiled(TIED);
    expect([complete, gone, diagnostics.filter(({ severity }) => severity === 'error')]).toEqual([true, [], []]);
  });

  test('lacks what has errors, and all that needs it, in any number of steps, with the reason', () => {
    const needs = (from: string): string => file(`title: ${from}ling\nfrom: ${from}`);
    const {
      complete,
      book,
      leftOut: gone,
    } = compileWith({
      'colours/broken.md': file('title: Broken\nmold: minow\ncups:\n  body:\n    plastic: 90 ml supple'),
      'colours/child.md': needs('broken'),
      'colours/grandchild.md': needs('child'),
    });
    expect(complete).toBe(false);
    expect(gone).toEqual([
      { path: 'colours/broken.md', needs: [], why: 'errors' },
      { path: 'colours/child.md', needs: ['colours/broken.md', 'molds/minow.md'], why: 'errors' },
      { path: 'colours/grandchild.md', needs: ['colours/child.md', 'molds/minow.md'], why: 'errors' },
    ]);
    expect(book!.recipes.map(({ id }) => id)).toEqual(['smoke']);
    expect([...book!.materials, ...book!.molds].map(({ id }) => id).sort()).toEqual([
      'frost',
      'minnow',
      'peat',
      'supple',
    ]);
  });

  test('has a recipe whose photo is not there', () => {
    const photo = file('title: Smoke\nphotos: [smoke.jpg]\nmold: minnow\ncups: { body: { plastic: 90 ml supple } }');
    const { complete, book, leftOut: gone } = compileWith({ 'colours/smoke.md': photo });
    expect([complete, gone, book!.recipes.map(({ id }) => id)]).toEqual([false, [], ['smoke']]);
  });

  test('is nothing where book.md itself has errors, or names a plastic that does', () => {
    expect(compileWith({ 'book.md': file('titel: Mine') }).book).toBeUndefined();
    const stout = { 'shelf/plastics/stout.md': file('titel: Stout') };
    const { book, leftOut: gone } = compileWith({ 'book.md': file('title: Mine\nplastic: stout'), ...stout });
    expect([book, gone[0]]).toEqual([
      undefined,
      { path: 'book.md', needs: ['shelf/plastics/stout.md'], why: 'errors' },
    ]);
  });

  test('lacks a recipe that names no mold or no plastic, where one of them has errors and may be meant', () => {
    const unnamed = {
      'colours/unmolded.md': file('title: Unmolded\ncups: { body: { plastic: 90 ml supple } }'),
      'colours/unplastic.md': file('title: Unplastic\nmold: minnow\ncups: { body: { plastic: 90 ml } }'),
    };
    expect(compileWith(unnamed).complete).toBe(true);
    const out = (path: string): readonly LeftOut[] => compileWith({ ...unnamed, [path]: file('titel: Other') }).leftOut;
    expect(out('molds/grub.md')).toEqual([
      { path: 'colours/unmolded.md', needs: ['molds/grub.md'], why: 'errors' },
      { path: 'molds/grub.md', needs: [], why: 'errors' },
    ]);
    expect(out('shelf/plastics/stout.md')).toEqual([
      { path: 'colours/unplastic.md', needs: ['shelf/plastics/stout.md'], why: 'errors' },
      { path: 'shelf/plastics/stout.md', needs: [], why: 'errors' },
    ]);
  });

  test('has neither of two materials of one name', () => {
    const { leftOut: gone } = compileWith({
      'shelf/powders/peat.md': file('title: Peat\nlook: { kind: pearl, colour: "#e8e4da", dose: 1 % }'),
    });
    expect(gone.filter(({ needs }) => needs.length === 0).map(({ path }) => path)).toEqual([
      'shelf/colorants/peat.md',
      'shelf/powders/peat.md',
    ]);
  });

  test('has measured materials by the films without what has errors', () => {
    const clay = { 'shelf/colorants/clay.md': file('title: Clay\nhighest: 900 °C\nlook: { kind: measured }') };
    const { book, leftOut: gone } = compiled({ ...TIED, ...clay });
    expect(book!.materials.find(({ id }) => id === 'reed')!.fit!.films).toBe(2);
    expect(gone.find(({ lines }) => lines)!.path).toBe('shelf/measurements.csv');
    expect(gone.map(({ path }) => path)).not.toContain('colours/reedy.md');
    expect(gone.map(({ path }) => path)).toContain('colours/clayey.md');
  });

  test('takes no text to be read again, however many recipes come from the faulty one', () => {
    const readsOf = (files: Files): number => {
      let reads = 0;
      const sources = Object.entries(files).map(([path, text]) => ({
        path,
        get text() {
          if (path === 'shelf/colorants/peat.md') reads++;
          return text;
        },
      }));
      compileBook(sources);
      return reads;
    };
    const chain = Object.fromEntries(
      Array.from({ length: 5 }, (_, index) => [
        `colours/step-${index + 1}.md`,
        file(`title: Step ${index + 1}\nfrom: step-${index}`),
      ]),
    );
    const first = (mold: string): Files => ({
      ...SOUND_BOOK,
      ...chain,
      'colours/step-0.md': file(`title: Step 0\nmold: ${mold}\ncups: { body: { plastic: 90 ml } }`),
    });
    expect(readsOf(first('minow'))).toBeLessThanOrEqual(readsOf(first('minnow')));
  });
});

test('leftOut is a list of all that needs what is gone, in rings too, and of nothing else', () => {
  const needs = new Map([
    ['a', ['b']],
    ['b', ['a', 'gone']],
    ['c', []],
    ['d', ['b', 'c']],
  ]);
  expect([...leftOut(needs, []).keys()].sort()).toEqual(['a', 'b', 'd']);
  expect(leftOut(needs, ['c']).get('d')!.needs).toEqual(['b', 'c']);
  expect(leftOut(new Map([['c', []]]), []).size).toBe(0);
});

describe('a book with files that wait to be filled in', () => {
  test('is complete, and is the book without them and what needs them', () => {
    let waited = 0;
    fc.assert(
      fc.property(emptied, (files) => {
        const { complete, leftOut: gone, diagnostics } = compiled(files);
        expect([complete, diagnostics.filter(({ severity }) => severity === 'error')]).toEqual([true, []]);
        expect(gone.filter(({ why }) => why !== 'to-fill-in')).toEqual([]);
        for (const { path, needs, lines } of gone) {
          const code = needs.length === 0 ? 'field/to-fill-in' : 'field/waits-for';
          if (lines === undefined)
            expect(diagnostics.map((each) => `${each.file} ${each.code}`)).toContain(`${path} ${code}`);
        }
        isAsWithout(files);
        if (gone.some(({ needs }) => needs.length > 0)) waited++;
      }),
      { numRuns: 12 * TIMES },
    );
    expect(waited).toBeGreaterThan(2);
  });

  test('tells a file that waits where it names the other, not where a title, a tag or a cup has the same name', () => {
    const placesIn = (front: string): readonly unknown[] =>
      compileWith({
        'molds/grub.md': file('title: Grub\ncavity:\nbody: 8 mm'),
        'shelf/colorants/straw.md': file('title: Straw\nlook:'),
        'colours/dusk.md': file(front),
      }).diagnostics.flatMap(({ file: path, start }) => (path === 'colours/dusk.md' ? [start.line] : []));
    const cups = 'cups: { straw: { plastic: 90 ml } }';
    expect(placesIn(`title: grub\ntags: [grub]\n${cups}\nmold: grub`)).toEqual([5]);
    expect(
      placesIn('title: straw\nmold: minnow\ncups:\n  straw:\n    plastic: 90 ml\n    add:\n      straw: 2 drops'),
    ).toEqual([8]);
  });

  test('tells each empty field at its place, with what to write, and each file that waits where it names another', () => {
    const {
      book,
      leftOut: gone,
      diagnostics,
    } = compileWith({
      'molds/minnow.md': file('title: Minnow\ncavity:  # of one bait\nbody:\nthin: 2 mm\nlength: ""'),
      'colours/dusk.md': file('title: Dusk\nfrom: smoke'),
      'colours/night.md': file('title: Night\nmold: grub\ncups: { body: { from: dusk } }'),
      'molds/grub.md': file('title: Grub\ncavity: 4 ml\nbody: 8 mm'),
    });
    expect(
      diagnostics.map(({ code, file: path, start, found, fix }) => [code, path, start.line, start.column, found, fix]),
    ).toEqual([
      [
        'field/waits-for',
        'colours/dusk.md',
        3,
        7,
        '`molds/minnow.md`, which waits to be filled in',
        'fill in `molds/minnow.md`',
      ],
      [
        'field/waits-for',
        'colours/night.md',
        4,
        23,
        '`colours/dusk.md`, which waits for `molds/minnow.md`',
        'fill in `molds/minnow.md`',
      ],
      [
        'field/waits-for',
        'colours/smoke.md',
        3,
        7,
        '`molds/minnow.md`, which waits to be filled in',
        'fill in `molds/minnow.md`',
      ],
      ['field/to-fill-in', 'molds/minnow.md', 3, 1, 'empty `cavity`', 'write it after `cavity:`'],
      ['field/to-fill-in', 'molds/minnow.md', 4, 1, 'empty `body`', 'write it after `body:`'],
      [
        'field/to-fill-in',
        'molds/minnow.md',
        6,
        1,
        'empty `length`',
        'write it after `length:`, or remove the line if it is not needed',
      ],
    ]);
    expect([book!.recipes, gone.map(({ why }) => why)]).toEqual([
      [],
      ['to-fill-in', 'to-fill-in', 'to-fill-in', 'to-fill-in'],
    ]);
  });

  test('has measured materials by the films without what waits', () => {
    const {
      complete,
      book,
      leftOut: gone,
    } = compiled({
      ...TIED,
      'shelf/colorants/clay.md': file('title: Clay\nhighest:\nlook: { kind: measured }'),
    });
    expect([complete, book!.materials.find(({ id }) => id === 'reed')!.fit!.films]).toEqual([true, 2]);
    expect(new Set(gone.map(({ why }) => why))).toEqual(new Set(['to-fill-in']));
  });

  test('tells an empty field beside errors, and leaves out for errors what has both', () => {
    const {
      complete,
      leftOut: gone,
      diagnostics,
    } = compileWith({
      'molds/minnow.md': file('title: Minnow\ncavity: 3 lbs\nbody:'),
    });
    expect(diagnostics.map(({ code }) => code)).toEqual(['field/quantity', 'field/to-fill-in']);
    expect([complete, gone.map(({ why }) => why)]).toEqual([false, ['errors', 'errors']]);
  });

  test.each([
    [
      'a colour that YAML takes for a comment',
      {
        'shelf/colorants/peat.md': file('title: Peat\nlook: { kind: dye }').replace(
          '{ kind: dye }',
          '\n  colour: #5b4327',
        ),
      },
    ],
    [
      'what is published of a recipe',
      { 'colours/smoke.md': file('title: Smoke\npublish:\nmold: minnow\ncups: { body: { plastic: 90 ml } }') },
    ],
    ['a field of book.md', { 'book.md': file('title: Mine\nmaker:') }],
  ])('does not have for one that waits a file without %s', (_what, files) => {
    const { complete, diagnostics } = compileWith(files);
    expect([complete, diagnostics.map(({ code }) => code).includes('field/to-fill-in')]).toEqual([false, false]);
  });

  test('goes on with the plastic and the mold that are there, until another is filled in', () => {
    const { complete, book } = compileWith({
      'colours/smoke.md': file('title: Smoke\ncups: { body: { plastic: 90 ml } }'),
      'shelf/plastics/stout.md': file('title: Stout\nhardness:'),
      'molds/grub.md': file('title: Grub\nbody:'),
    });
    expect([complete, book!.recipes.map(({ id, mold }) => [id, mold])]).toEqual([true, [['smoke', 'minnow']]]);
  });

  test('is there without the plastic that it names, as long as that waits', () => {
    const { complete, book } = compileWith({
      'book.md': file('title: Mine\nplastic: supple'),
      'shelf/plastics/supple.md': file('title: Supple\nhardness:'),
    });
    expect([complete, book!.recipes, book!.settings.plastic]).toEqual([true, [], undefined]);
  });

  test('tells nothing of one that is not published either', () => {
    const { diagnostics } = compileWith({
      'colours/quaggle.md': file('title: Quaggle Forty\npublish: no\nmold:\ncups: { body: { plastic: 90 ml } }'),
      'colours/smoke.md': `${file('title: Smoke\nmold: minnow\ncups: { body: { plastic: 90 ml } }')}Paler than Quaggle Forty.`,
    });
    expect(diagnostics.map(({ code, file: path }) => `${path} ${code}`)).toContain('colours/smoke.md publish/named');
  });
});
