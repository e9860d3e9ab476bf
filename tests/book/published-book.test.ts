import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { publishedBook } from '../../src/book/publish/published-book.ts';
import { EXAMPLE_BOOK } from '../../src/diagnostics/examples.ts';
import { bookWith, compileWith, dose, file, recipeOf } from './sample.ts';

const hidden = file(
  'title: Quaggle\nmold: minnow\npublish: no\nfrom: smoke\ncups:\n  body:\n    add: { frost: 2 % }',
  'Zanzibar notes.',
);
const shownOnly = file(
  'title: Snowveil\nmold: minnow\npublish: look\ncups:\n  body:\n    plastic: 90 ml supple\n    add: { frost: 1.2187 % }',
  'Nobody reads this.',
);
const child = file(
  'title: Offspring\nmold: minnow\nfrom: quaggle\npublish: full\ncups:\n  body:\n    add: { peat: 1 drop per 100 ml }',
);
/** The same by a maker who says nothing of publishing. */
const quietChild = child.replace('publish: full\n', '');

describe('publishedBook', () => {
  const book = bookWith({
    'colours/quaggle.md': hidden,
    'colours/snowveil.md': shownOnly,
    'colours/offspring.md': child,
  });
  const published = publishedBook(book);
  const json = JSON.stringify(published);

  test('publishedBook leaves no trace of what is not published', () => {
    expect(json).not.toMatch(/quaggle|zanzibar/i);
    expect(JSON.stringify(book)).toMatch(/quaggle/);
  });
  test('publishedBook tells of a look only its name and its colours', () => {
    expect(published.looks.map(({ id, title }) => [id, title])).toEqual([['snowveil', 'Snowveil']]);
    expect(json).not.toMatch(/nobody reads|1\.2187/i);
    for (const told of [/nobody reads/i, /1\.2187/]) expect(JSON.stringify(book)).toMatch(told);
    expect(published.materials.find(({ id }) => id === 'frost')!.usedIn.map(({ recipe }) => recipe)).not.toContain(
      'snowveil',
    );
    expect(Object.keys(published.looks[0]!)).not.toContain('cups');
  });
  test('publishedBook gives a recipe whose parent is hidden a file that stands by itself and means the same', () => {
    const offspring = recipeOf(published, 'offspring');
    expect(offspring.parent).toBeUndefined();
    const again = compileBook(
      Object.entries({ ...EXAMPLE_BOOK, 'colours/offspring.md': offspring.source.text }).map(([path, text]) => ({
        path,
        text,
      })),
    );
    expect(again.diagnostics).toEqual([]);
    const [before] = offspring.cups;
    const [after] = recipeOf(again.book!, 'offspring').cups;
    for (const { material } of before!.contents)
      expect(dose(after!, material) / dose(before!, material)).toBeCloseTo(1, 3);
  });
  test('publishedBook tells of no round of a cup whose rounds tell how much was in a hidden one', () => {
    const log = '    log: [{ add: { peat: 1 drop per 100 ml }, pour: 6 ml, seen: { over-white: "#8a6a44" } }]';
    const bait = 'seen: { over-white: "#8a6a44", rounds: { body: 1 }, note: a little dull }';
    const front = (from: string): string =>
      file(`title: Offspring\nmold: minnow\nfrom: ${from}\npublish: full\ncups:\n  body:\n${log}\n${bait}`);
    const lookOf = (from: string): unknown => {
      const own = hidden.replace('    add', '    plastic: 77 ml supple\n    add');
      const files = { 'colours/quaggle.md': own, 'colours/offspring.md': front(from) };
      const { cups, seen } = recipeOf(publishedBook(bookWith(files)), 'offspring');
      return [cups[0]!.rounds.length, seen![0]!.note, seen![0]!.rounds];
    };
    expect(lookOf('smoke')).toEqual([1, 'a little dull', [{ cup: 'body', number: 1 }]]);
    expect(lookOf('quaggle')).toEqual([0, 'a little dull', undefined]);
  });
  test('publishedBook gives it in the book’s measures: for 4 fl oz, in drops and spoons where it is so many', () => {
    const ounces = {
      'book.md': file('title: Back Shed\nunits: { volume: fl oz }'),
      'colours/quaggle.md': hidden,
      'colours/offspring.md': child.replace('peat: 1 drop per 100 ml', 'frost: 1 %'),
      'colours/anew.md': file(
        'title: Anew\nmold: minnow\nfrom: quaggle\npublish: full\ncups:\n  body:\n    plastic: 6 fl oz\n    from: smoke/body\n    without: [peat]\n    add: { peat: 9 drops, frost: 3/16 tsp }',
      ),
    };
    const shared = publishedBook(bookWith(ounces));
    const { text } = recipeOf(shared, 'anew').source;
    expect(text).toContain('\n    plastic: 6 fl oz supple\n');
    expect(text).toContain('\n    add: { frost: 1/8 tsp per 4 fl oz, peat: 6 drops per 4 fl oz }\n');
    expect(recipeOf(shared, 'offspring').source.text).toMatch(/ frost: [\d.]+ g per 4 fl oz[ ,]/);
  });
  test('publishedBook tells no dose of a look through what was derived from it', () => {
    const derived = publishedBook(
      bookWith({ 'colours/snowveil.md': shownOnly, 'colours/offspring.md': quietChild.replace('quaggle', 'snowveil') }),
    );
    expect(derived.looks.map(({ id }) => id)).toEqual(['offspring', 'snowveil']);
    expect(derived.recipes.map(({ id }) => id)).toEqual(['smoke']);
    expect(derived.families.map(({ members }) => members)).toContainEqual(['offspring', 'snowveil']);
    expect(JSON.stringify(derived)).not.toMatch(/3\.21|frost: /);
    expect(derived.materials.map(({ id }) => id)).toEqual(['peat', 'supple']);
  });
  test('publishedBook tells nothing of what comes from a hidden recipe, whole, by a cup, or in the second generation', () => {
    const cupOnly = file(
      'title: Cupling\nmold: minnow\ncups:\n  body:\n    from: quaggle/body\n    plastic: 60 ml supple',
    );
    const hiddenFamily = publishedBook(
      bookWith({
        'colours/quaggle.md': hidden,
        'colours/offspring.md': quietChild,
        'colours/grandchild.md': quietChild.replace('Offspring', 'Grandchild').replace('quaggle', 'offspring'),
        'colours/cupling.md': cupOnly,
      }),
    );
    expect(hiddenFamily.recipes.map(({ id }) => id)).toEqual(['smoke']);
    expect(hiddenFamily.looks).toEqual([]);
    expect(JSON.stringify(hiddenFamily)).not.toMatch(/quaggle|offspring|grandchild|cupling/i);
  });
  test('publish: full in the file of what is derived publishes its own doses, and not what it comes from', () => {
    const derived = publishedBook(
      bookWith({ 'colours/snowveil.md': shownOnly, 'colours/offspring.md': child.replace('quaggle', 'snowveil') }),
    );
    const offspring = recipeOf(derived, 'offspring');
    expect(offspring.parent).toBeUndefined();
    expect(offspring.changes).toEqual([]);
    expect(offspring.source.text).not.toContain('from:');
  });
  test('a target with publish: look shows its colours, without notes, photo or file', () => {
    const target = (publish: string): string =>
      file(
        `title: Elver\nover-white: "#7a6a4c"\nphoto: { file: elver.jpg, caption: Below the weir }\npublish: ${publish}`,
        'Caught below the weir.',
      );
    const published = (publish: string): ReturnType<typeof publishedBook> =>
      publishedBook(bookWith({ 'targets/elver.md': target(publish) }, ['photos/elver.jpg']));
    expect(JSON.stringify(published('full'))).toMatch(/below the weir.*elver\.jpg/i);
    const [look] = published('look').targets;
    expect(look!.parts[0]!.overWhite.hex).toBe('#7a6a4c');
    expect(JSON.stringify(look)).not.toMatch(/below the weir|elver\.jpg/i);
    expect(published('no').targets).toEqual([]);
  });
  test('compileBook refuses a published text that names what is hidden, by title or by id, wherever it stands', () => {
    for (const notes of ['As dark as Quaggle.', 'See [that](quaggle.md).']) {
      const { diagnostics, complete, leftOut } = compileWith({
        'colours/quaggle.md': hidden,
        'molds/minnow.md': `${EXAMPLE_BOOK['molds/minnow.md']}${notes}`,
      });
      expect(diagnostics.map(({ code, file: path, start }) => [code, path, start.line])).toEqual([
        ['publish/named', 'molds/minnow.md', 7],
      ]);
      // No amount is wrong for it: the commands of the bench go on, and no page is built.
      expect([complete, leftOut]).toEqual([false, []]);
    }
  });
  test('book.md publish: sets the default of every recipe', () => {
    const secret = publishedBook(bookWith({ 'book.md': file('title: Mine\npublish: look') }));
    expect(secret.recipes).toEqual([]);
    expect(secret.looks.map(({ id }) => id)).toEqual(['smoke']);
  });

  describe('compileBook looks for the names of what is hidden', () => {
    const ghost = hidden.replace('Quaggle', 'Grey Ghost');
    const found = (files: Readonly<Record<string, string>>): readonly string[] =>
      compileWith({ 'colours/grey-ghost.md': ghost, ...files }).diagnostics.map(
        ({ code, file: path, start }) => `${code} ${path}:${start.line}:${start.column}`,
      );
    const minnow = EXAMPLE_BOOK['molds/minnow.md']!;

    test.each(['Like grey ghost.', 'GREY GHOST', 'Grey\nGhost', '*Grey* Ghost'])('in notes: %j', (notes) => {
      expect(found({ 'molds/minnow.md': `${minnow}${notes}` })[0]).toMatch(/^publish\/named molds\/minnow\.md:7:/);
    });
    test('in tags, captions, titles, notes of rounds, the name of the book, and the title of a look', () => {
      const smoke = (front: string): string => EXAMPLE_BOOK['colours/smoke.md']!.replace('mold:', `${front}\nmold:`);
      expect(found({ 'colours/smoke.md': smoke('tags: [Grey_Ghost]') })).toEqual([
        'publish/named colours/smoke.md:3:8',
      ]);
      expect(found({ 'book.md': file('title: The Grey Ghost Book') })).toEqual(['publish/named book.md:2:12']);
      expect(found({ 'book.md': file('title: Ours\naddress: https://book.example/grey-ghost') })).toEqual([
        'publish/named book.md:3:31',
      ]);
      const look = shownOnly.replace('Snowveil', 'Not a grey ghost');
      expect(found({ 'colours/snowveil.md': look })).toEqual(['publish/named colours/snowveil.md:2:14']);
      const log = 'cups:\n  body:\n    log: [{ add: { peat: 1 drop }, seen: { note: near the grey ghost } }]';
      const derived = file(`title: Open\npublish: full\nfrom: grey-ghost\n${log}`);
      expect(found({ 'colours/open.md': derived })).toEqual(['publish/named colours/open.md:7:59']);
      expect(found({ 'colours/open.md': derived.replace('the grey ghost', 'it') })).toEqual([]);
    });
    test('a single word in lower case is a warning, and none within the name of something published', () => {
      const files = (notes: string): Readonly<Record<string, string>> => ({
        'colours/haze.md': hidden.replace('Quaggle', 'Haze').replace('from: smoke', 'from: deep-haze'),
        'colours/deep-haze.md': EXAMPLE_BOOK['colours/smoke.md']!.replace('Smoke', 'Deep Haze'),
        'molds/minnow.md': `${minnow}${notes}`,
      });
      const own = 'publish/word colours/deep-haze.md:2:13';
      expect(found(files('For Deep Haze and deep-haze.'))).toEqual([own]);
      expect(found(files('In the morning haze.'))).toEqual([own, 'publish/word molds/minnow.md:7:16']);
      expect(found(files('In the Haze.'))).toEqual([own, 'publish/named molds/minnow.md:7:8']);
    });
    test('in the names of published files, wherever their title says nothing of it', () => {
      const base = EXAMPLE_BOOK['shelf/colorants/peat.md']!.replace('Peat', 'Base');
      const smoke = EXAMPLE_BOOK['colours/smoke.md']!;
      const used = smoke.replace('peat: 12 drops', 'grey-ghost-base: 12 drops');
      expect(found({ 'shelf/colorants/grey-ghost-base.md': base, 'colours/smoke.md': used })).toContain(
        'publish/named shelf/colorants/grey-ghost-base.md:1:1',
      );
      // It is the maker's alone where nothing published is made with it.
      expect(found({ 'shelf/colorants/grey-ghost-base.md': base })).toEqual([]);
      for (const name of ['grey-ghost-two', 'greyghost', 'ghost-grey', 'the-grey-ghosts'])
        expect(found({ [`colours/${name}.md`]: smoke.replace('Smoke', 'Two') }), name).toEqual([
          `publish/named colours/${name}.md:1:1`,
        ]);
      const oneWord = {
        'colours/grey-ghost.md': ghost.replace('Grey Ghost', 'Zqghost'),
        'colours/zqghost-two.md': smoke.replace('Smoke', 'Two'),
      };
      expect(found(oneWord)).toEqual(['publish/named colours/zqghost-two.md:1:1']);
    });
    test.each([
      'G**rey** Ghost',
      'Gr&#101;y Ghost',
      'Grey Ghosts',
      'Ghost, Grey',
      'Grey.Ghost',
      'the greyghost',
      '[Grey](minnow.md) Ghost',
    ])('in other spellings: %j', (notes) => {
      expect(found({ 'molds/minnow.md': `${minnow}As ${notes} is.` })).toEqual([
        expect.stringMatching(/^publish\/named molds\/minnow\.md:7:[4578]$/),
      ]);
    });
    test('a published material of the same name may be named', () => {
      const files = {
        'colours/frost.md': hidden.replace('Quaggle', 'Frost'),
        'colours/rime.md': EXAMPLE_BOOK['colours/smoke.md']!.replace('Smoke', 'Rime')
          .replace('peat', 'frost')
          .replace('12 drops', '1 g'),
      };
      expect(found({ ...files, 'molds/minnow.md': `${minnow}Frost shows here, so does frost.` })).toEqual([]);
      expect(found({ ...files, 'molds/minnow.md': `${minnow}[it](../colours/frost.md)` })).toEqual([
        'publish/named molds/minnow.md:7:17',
      ]);
    });
  });
});
