import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { publishedBook } from '../../src/book/published-book.ts';
import { EXAMPLE_BOOK } from '../../src/diagnostics/examples.ts';
import { bookWith, compileWith, dose, file, recipeOf } from './sample.ts';

const hidden = file(
  'title: Quaggle\nmold: minnow\npublish: no\nfrom: smoke\ncups:\n  body:\n    add: { frost: 2 % }',
  'Zanzibar notes.',
);
const shownOnly = file(
  'title: Snowveil\nmold: minnow\npublish: look\ncups:\n  body:\n    plastic: 90 ml supple\n    add: { frost: 3.21 % }',
  'Nobody reads this.',
);
const child = file(
  'title: Offspring\nmold: minnow\nfrom: quaggle\ncups:\n  body:\n    add: { peat: 1 drop per 100 ml }',
);

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
    expect(json).not.toMatch(/nobody reads|3\.21/i);
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
  test('publishedBook tells no dose of a look through what was derived from it', () => {
    const derived = publishedBook(
      bookWith({ 'colours/snowveil.md': shownOnly, 'colours/offspring.md': child.replace('quaggle', 'snowveil') }),
    );
    const offspring = recipeOf(derived, 'offspring');
    expect(offspring.parent).toBe('snowveil');
    expect(offspring.changes).toEqual([]);
    expect(derived.families.map(({ members }) => members)).toContainEqual(['offspring', 'snowveil']);
  });
  test('compileBook refuses a published text that names what is hidden, by title or by id, wherever it stands', () => {
    for (const notes of ['As dark as Quaggle.', 'See [that](quaggle.md).']) {
      const { diagnostics, book: none } = compileWith({
        'colours/quaggle.md': hidden,
        'molds/minnow.md': `${EXAMPLE_BOOK['molds/minnow.md']}${notes}`,
      });
      expect(diagnostics.map(({ code, file: path, start }) => [code, path, start.line])).toEqual([
        ['publish/named', 'molds/minnow.md', 7],
      ]);
      expect(none).toBeUndefined();
    }
  });
  test('book.md publish: sets the default of every recipe', () => {
    const secret = publishedBook(bookWith({ 'book.md': file('title: Mine\npublish: look') }));
    expect(secret.recipes).toEqual([]);
    expect(secret.looks.map(({ id }) => id)).toEqual(['smoke']);
  });
});
