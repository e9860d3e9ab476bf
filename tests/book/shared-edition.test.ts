import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import type { Book } from '../../src/book/model.ts';
import { makersBook } from '../../src/book/publish/makers-book.ts';
import { publishedBook } from '../../src/book/publish/published-book.ts';
import { SHARED_FIELDS } from '../../src/book/publish/shared-fields.ts';
import { sharedSource } from '../../src/book/publish/shared-file-fields.ts';
import { EXAMPLE_BOOK } from '../../src/diagnostics/examples.ts';
import { kindOfPath } from '../../src/recipe/source.ts';
import { bookOf, SAMPLE_FILES } from '../render/sample-book.ts';
import { bookWith, dose, file, recipeOf } from './sample.ts';

const SECRET_AMOUNTS = {
  'shelf/colorants/peat.md': file(
    '# the shop by the bridge wants less\ntitle: Peat\nprice: 987.65 # too much\npack: 31 ml\nstock: 4.321 ml\nlook: { kind: pigment, colour: "#5b4327", dose: 12 drops per 100 ml }',
  ),
  'shelf/plastics/supple.md': file('title: Supple\nhighest: 185 °C\nprice: 876.54\npack: 1 l\nstock: 0.7654 l'),
};

/** Every name of a field in a value, and every text and number. */
function leaves(
  value: unknown,
  names: Set<string> = new Set(),
): { readonly names: Set<string>; readonly text: string } {
  JSON.stringify(value, (name, inside) => {
    names.add(name);
    return inside;
  });
  return { names, text: JSON.stringify(value) };
}

describe('the shared edition', () => {
  const book = bookWith(SECRET_AMOUNTS);
  const shared = publishedBook(book);

  test('has no price, no cost, no stock, and nothing reckoned from them, in no field and in no file', () => {
    const { names, text } = leaves(shared);
    expect([...names].filter((name) => /price|cost|stock|short|packs|next/i.test(name))).toEqual([]);
    expect(text).not.toMatch(/987\.65|876\.54|4\.321|0\.7654|too much/);
    const mine = leaves(makersBook(book));
    for (const name of ['price', 'stockGrams', 'cost', 'costPerBait', 'shortGrams', 'packs'])
      expect([...mine.names]).toContain(name);
  });
  test('has the file of a material as it was written, but for what is private', () => {
    expect(shared.materials.find(({ id }) => id === 'peat')!.source.text).toBe(
      '---\n# the shop by the bridge wants less\ntitle: Peat\npack: 31 ml\nlook: { kind: pigment, colour: "#5b4327", dose: 12 drops per 100 ml }\n---\n',
    );
  });
  test('has of a recipe’s file no photo, whose name may tell where it was taken', () => {
    const text = EXAMPLE_BOOK['colours/smoke.md']!.replace('mold:', 'photos: [behind-the-mill.jpg]\nmold:');
    const withPhoto = publishedBook(bookWith({ 'colours/smoke.md': text }, ['photos/behind-the-mill.jpg']));
    const smoke = recipeOf(withPhoto, 'smoke');
    expect(smoke.source.text).toBe(EXAMPLE_BOOK['colours/smoke.md']);
    // The build finds the picture by it.
    expect(smoke.photos).toEqual([{ file: 'photos/behind-the-mill.jpg' }]);
  });
  test('leaves out whatever the table does not name', () => {
    const grown = {
      ...book,
      diary: 'rain',
      recipes: book.recipes.map((recipe) => ({
        ...recipe,
        bagFor: 'my aunt',
        cups: recipe.cups.map((cup) => ({ ...cup, mood: 'cross' })),
      })),
    };
    expect(publishedBook(grown)).toEqual(shared);
  });
  test('leaves a field out of a file that the table does not name, wherever it stands', () => {
    const text =
      '---\ntitle: Smoke\nbag-for: my aunt\ncups:\n  body:\n    mood: cross\n    add: { peat: 1 drop }\n---\n';
    expect(sharedSource({ path: 'colours/smoke.md', text: `${text}photos: none` }).text).not.toMatch(/aunt|cross/);
  });
  test('has the materials and molds that a recipe in full is made with, and no others', () => {
    const more = bookWith({
      'colours/hush.md': file(
        'title: Hush Hush\npublish: no\nmold: leaf\ncups:\n  body:\n    plastic: 90 ml supple\n    add: { frost: 2 % }',
      ),
      'colours/veil.md': file(
        'title: Veil\npublish: look\nmold: leaf\ncups:\n  body:\n    plastic: 90 ml supple\n    add: { frost: 2 % }',
      ),
      'molds/leaf.md': EXAMPLE_BOOK['molds/minnow.md']!.replace('Minnow', 'Leaf'),
    });
    const { materials, molds } = publishedBook(more);
    expect([materials, molds].map((things) => things.map(({ id }) => id))).toEqual([['peat', 'supple'], ['minnow']]);
    const mine = makersBook(more);
    expect(Object.fromEntries([...mine.materials, ...mine.molds].map(({ id, shared: as }) => [id, as]))).toEqual({
      ...{ frost: 'no', peat: 'full', supple: 'full' },
      ...{ leaf: 'no', minnow: 'full' },
    });
    expect(mine.recipes.map(({ id }) => id)).toEqual(['hush', 'smoke', 'veil']);
  });
  test('keeps the materials of rounds and of what a recipe came from', () => {
    const more = publishedBook(
      bookWith({
        'colours/smoke.md': file(
          'title: Smoke\nmold: minnow\ncups:\n  body:\n    plastic: 120 ml supple\n    log: [{ add: { frost: 2 % } }, { pour: 118 ml }, { add: { peat: 1 drop } }]',
        ),
        'colours/mist.md': file('title: Mist\nfrom: smoke\ncups:\n  body: { without: [frost] }'),
      }),
    );
    expect(more.materials.map(({ id }) => id)).toEqual(['peat', 'supple', 'frost']);
  });
  test('names no plastic as the usual one that is in nothing published', () => {
    const settings = (colours: Readonly<Record<string, string>>): Book['settings'] =>
      publishedBook(
        bookWith({
          'book.md': file('title: Two Cups\nplastic: firm'),
          'shelf/plastics/firm.md': file('title: Firm'),
          ...colours,
        }),
      ).settings;
    expect(settings({})).not.toHaveProperty('plastic');
    expect(settings({ 'colours/smoke.md': EXAMPLE_BOOK['colours/smoke.md']!.replace(' supple', '') }).plastic).toBe(
      'firm',
    );
  });
  test('has a target whose file says so, or that a recipe in full is for, and no more than its file says', () => {
    const targets = (of: string, smoke: string): readonly string[] =>
      publishedBook(
        bookWith({
          'targets/elver.md': file(`title: Elver\nover-white: "#7a6a4c"\n${of}`),
          'colours/smoke.md': EXAMPLE_BOOK['colours/smoke.md']!.replace('mold:', `${smoke}\nmold:`),
        }),
      ).targets.map(({ publish }) => publish);
    expect(targets('', '')).toEqual([]);
    expect(targets('', 'for: elver')).toEqual(['full']);
    expect(targets('', 'for: elver\npublish: look')).toEqual([]);
    expect(targets('publish: full', '')).toEqual(['full']);
    expect(targets('publish: look', 'for: elver')).toEqual(['look']);
    expect(targets('publish: no', 'for: elver')).toEqual([]);
  });
  test('has the mold that a target in full was seen in; of a look of one, only if readers have it', () => {
    const seen = (publish: string): Book =>
      publishedBook(
        bookWith({
          'targets/elver.md': file(`title: Elver\nover-white: "#7a6a4c"\nmold: leaf\npublish: ${publish}`),
          'molds/leaf.md': EXAMPLE_BOOK['molds/minnow.md']!.replace('Minnow', 'Leaf'),
        }),
      );
    expect(seen('full').molds.map(({ id }) => id)).toEqual(['leaf', 'minnow']);
    expect(seen('look').molds.map(({ id }) => id)).toEqual(['minnow']);
    expect(seen('look').targets[0]).not.toHaveProperty('mold');
  });
});

describe('what is published in full of a recipe that comes from a hidden one', () => {
  const hidden = file(
    'title: Quaggle\nmold: minnow\npublish: no\ncups:\n  body:\n    plastic: 123 ml supple\n    add: { frost: 2 % }',
  );
  const family = (child: string, more: Readonly<Record<string, string>> = {}): Book =>
    publishedBook(
      bookWith({
        'colours/quaggle.md': hidden,
        'colours/offspring.md': file(
          `title: Offspring\nmold: minnow\nfrom: quaggle\npublish: full\ncups:\n  body:\n${child}`,
        ),
        ...more,
      }),
    );
  const again = (book: Book): Book => {
    const files = book.recipes.map(({ source }) => [source.path, source.text] as const);
    const { book: anew, diagnostics } = compileBook(
      Object.entries({ ...EXAMPLE_BOOK, ...Object.fromEntries(files) }).map(([path, text]) => ({ path, text })),
    );
    expect(diagnostics).toEqual([]);
    return anew!;
  };

  test('does not tell how much plastic the hidden cup had, nor amounts or rounds that would', () => {
    const silent = family(
      '    log: [{ add: { peat: 2 drops } }, { pour: 14 ml, seen: { over-white: "#b09468", note: thin } }, { add: { peat: 1 drop } }]',
    );
    const [cup] = recipeOf(silent, 'offspring').cups;
    expect(cup).toMatchObject({ startMl: 100, written: [], rounds: [] });
    expect(cup).not.toHaveProperty('naive');
    expect(cup).not.toHaveProperty('leftMl');
    const written = family('    add: { peat: 2 drops }');
    for (const book of [silent, written]) expect(JSON.stringify(book)).not.toMatch(/\b123\b|quaggle|: 2 drops/i);
  });
  test('tells the cup’s own plastic, and then its rounds', () => {
    const own = family(
      '    from: quaggle/body\n    plastic: 90 ml\n    log: [{ add: { peat: 2 drops } }, { pour: 14 ml, seen: { over-white: "#b09468", note: thin } }]',
    );
    const [cup] = recipeOf(own, 'offspring').cups;
    expect(cup!.startMl).toBe(90);
    expect(cup!.rounds.map(({ pouredMl }) => pouredMl)).toEqual([14]);
    expect(recipeOf(own, 'offspring').source.text).toContain('plastic: 90 ml supple');
  });
  test('has a file, and so has what comes from it, that means the same beside what else is published', () => {
    const child = file('title: Grandchild\nmold: minnow\nfrom: offspring\ncups:\n  body:\n    add: { peat: 3 drops }');
    const cousin = file(
      'title: Cousin\nmold: minnow\ncups:\n  body:\n    from: offspring/body\n    plastic: 90 ml\n    add: { peat: 3 drops }',
    );
    const book = family('    add: { peat: 2 drops }', { 'colours/grandchild.md': child, 'colours/cousin.md': cousin });
    const anew = again(book);
    for (const id of ['offspring', 'grandchild', 'cousin']) {
      const [before] = recipeOf(book, id).cups;
      const [after] = recipeOf(anew, id).cups;
      for (const material of ['peat', 'frost'])
        expect(dose(after!, material) / dose(before!, material), `${material} in ${id}`).toBeCloseTo(1, 3);
      expect(after!.startMl).toBeCloseTo(before!.startMl, 6);
    }
    expect(recipeOf(book, 'cousin').source.text).toBe(cousin);
    expect(JSON.stringify(book)).not.toMatch(/quaggle|123 ml/i);
  });
});

/** A book by what a draw of it says: recipes that come from each other, targets, molds and materials, published or not. */
const drawn = fc
  .record({
    ofBook: fc.constantFrom('full', 'full', 'look', 'no'),
    recipes: fc.array(
      fc.record({
        publish: fc.constantFrom(undefined, 'full', 'look', 'no', 'no'),
        from: fc.option(fc.nat(5), { nil: undefined }),
        cupFrom: fc.option(fc.nat(5), { nil: undefined }),
        mold: fc.nat(1),
        target: fc.option(fc.nat(1), { nil: undefined }),
        material: fc.constantFrom('peat', 'frost', 'bark'),
        log: fc.boolean(),
      }),
      { minLength: 2, maxLength: 6 },
    ),
    targets: fc.array(fc.constantFrom(undefined, 'full', 'look', 'no'), { minLength: 2, maxLength: 2 }),
  })
  .map(({ ofBook, recipes, targets }) => {
    const files: Record<string, string> = {
      ...Object.fromEntries(Object.entries(EXAMPLE_BOOK).filter(([path]) => !path.startsWith('colours/'))),
      'book.md': file(`title: Two Cups\npublish: ${ofBook}\ntools: { scale: 0.01 g }`),
      'shelf/colorants/bark.md': EXAMPLE_BOOK['shelf/colorants/peat.md']!.replace('Peat', 'Bark').replace(
        '#5b4327',
        '#7b3327',
      ),
      'molds/leaf.md': EXAMPLE_BOOK['molds/minnow.md']!.replace('Minnow', 'Leaf'),
    };
    const line = (name: string, value: string | undefined): string =>
      value === undefined ? '' : `${name}: ${value}\n`;
    for (const [index, publish] of targets.entries())
      files[`targets/goal-${'ab'[index]}.md`] = file(
        `title: Goal ${'AB'[index]}\nover-white: "#7a6a4c"\nover-black: "#504030"\n${line('publish', publish)}`,
      );
    for (const [index, recipe] of recipes.entries()) {
      // Only from those before it, so that there is no ring.
      const from = recipe.from === undefined || index === 0 ? undefined : `colour-x${recipe.from % index}`;
      const cupFrom =
        recipe.cupFrom === undefined || index === 0 || from !== undefined
          ? undefined
          : `colour-x${recipe.cupFrom % index}/body`;
      const dose = `{ ${recipe.material}: ${index + 2} ${recipe.material === 'frost' ? 'g' : 'drops'} }`;
      const own = from === undefined && cupFrom === undefined ? `    plastic: ${100 + index} ml supple\n` : '';
      files[`colours/colour-x${index}.md`] = file(
        `title: Colour X${index}\n${line('publish', recipe.publish)}${line('from', from)}${line('mold', ['minnow', 'leaf'][recipe.mold])}${line('for', recipe.target === undefined ? undefined : `goal-${'ab'[recipe.target]}`)}cups:\n  body:\n${own}${cupFrom === undefined ? '' : `    from: ${cupFrom}\n`}${recipe.log ? `    log: [{ add: ${dose} }, { pour: 9 ml, seen: { over-white: "#b09468" } }]` : `    add: ${dose}`}`,
      );
    }
    return files;
  });

test('law: deleting the unpublished files from which nothing published comes changes no byte of the shared edition', () => {
  let deleted = 0;
  fc.assert(
    fc.property(drawn, (files) => {
      const compiled = (from: Readonly<Record<string, string>>): Book => {
        const { complete, book, diagnostics } = compileBook(
          Object.entries(from).map(([path, text]) => ({ path, text })),
        );
        if (!complete) throw new Error(JSON.stringify(diagnostics, undefined, 1));
        return book;
      };
      const whole = compiled(files);
      const needed = neededBy(whole);
      const left = Object.fromEntries(
        Object.entries(files).filter(([path]) => {
          const { kind, id } = kindOfPath(path)!;
          return (kind !== 'recipe' && kind !== 'target') || needed.has(`${kind}/${id}`);
        }),
      );
      deleted += Object.keys(files).length - Object.keys(left).length;
      expect(JSON.stringify(publishedBook(compiled(left)))).toBe(JSON.stringify(publishedBook(whole)));
    }),
    { numRuns: 20 },
  );
  expect(deleted).toBeGreaterThan(15);
});

/** Recipes and targets that are published, and those that a published one names. */
function neededBy({ recipes, targets }: Book): ReadonlySet<string> {
  const needed = new Set<string>();
  const need = (id: string): void => {
    if (needed.has(`recipe/${id}`)) return;
    needed.add(`recipe/${id}`);
    const { parent, cups, target } = recipes.find((recipe) => recipe.id === id)!;
    if (target !== undefined) needed.add(`target/${target}`);
    for (const origin of [parent, ...cups.map(({ from }) => from?.recipe)]) if (origin !== undefined) need(origin);
  };
  for (const { id, publish } of recipes) if (publish !== 'no') need(id);
  for (const { id, publish } of targets) if (publish !== 'no') needed.add(`target/${id}`);
  return needed;
}

test('SHARED_FIELDS keeps private what a batch costs and what is left, and shares what a colour is', () => {
  const { batch } = SHARED_FIELDS.recipes as Extract<typeof SHARED_FIELDS.recipes, object>;
  expect(batch).toMatchObject({
    cost: 'private',
    costPerBait: 'private',
    unpriced: 'private',
    cups: { volumeMl: 'shared' },
  });
});

test('the files of the shared edition are a book by themselves, in which every cup is the same', () => {
  const shared = bookOf(SAMPLE_FILES);
  const things = [...shared.recipes, ...shared.materials, ...shared.molds, ...shared.targets];
  const { book, diagnostics } = compileBook([
    { path: 'book.md', text: SAMPLE_FILES['book.md']! },
    ...things.map(({ source }) => source),
  ]);
  expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
  for (const { id, cups } of shared.recipes) {
    const again = recipeOf(book!, id);
    for (const [index, cup] of cups.entries()) {
      for (const { material } of cup.contents)
        expect(dose(again.cups[index]!, material) / dose(cup, material), `${material} in ${id}`).toBeCloseTo(1, 3);
    }
  }
});
