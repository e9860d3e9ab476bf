import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { CompileMemory } from '../../src/book/compile-memory.ts';
import type { Compiled } from '../../src/book/compiled.ts';
import { EXAMPLE_BOOK } from '../../src/diagnostics/examples.ts';
import type { Source } from '../../src/recipe/source.ts';
import { mutatedBook } from '../hostile/mutated-book.ts';
import { generatedBook, idOf } from '../measure/generated-book.ts';

type Files = Readonly<Record<string, string>>;
const sourcesOf = (files: Files): readonly Source[] => Object.entries(files).map(([path, text]) => ({ path, text }));
const TIMES = Number(process.env.LAWS_TIMES ?? 1);

test('compileBook(…, { memory }) gives after any edits what a compile from the beginning gives, and tells the same', () => {
  fc.assert(
    fc.property(fc.array(mutatedBook, { minLength: 3, maxLength: 6 }), (books) => {
      const memory = new CompileMemory();
      // Back to an earlier state, too: as whoever undoes an edit.
      for (const files of [...books, ...books.slice(0, 2)]) {
        expect(compileBook(sourcesOf(files), { memory })).toEqual(compileBook(sourcesOf(files)));
      }
    }),
    { numRuns: 12 * TIMES },
  );
});

const edited = (sources: readonly Source[], path: string, edit: (text: string) => string): readonly Source[] =>
  sources.map((source) => (source.path === path ? { path, text: edit(source.text) } : { ...source }));

/** Recipes of which the batch, which takes most of the work, is not the one of before. */
function computedAnew(before: Compiled, after: Compiled): readonly string[] {
  const known = new Map(before.book!.recipes.map(({ id, batch }) => [id, batch]));
  return after.book!.recipes.flatMap(({ id, batch }) => (known.get(id) === batch ? [] : [id]));
}

const BOOK = generatedBook(24);
const FIRST = `colours/${idOf(0)}.md`;
const moreDrops = (text: string): string => text.replace(/(\d+) drops/, (_, drops) => `${Number(drops) + 1} drops`);

/** A book and what comes from a recipe, straight or through others. */
const descendants = ({ book }: Compiled, id: string): readonly string[] => [
  id,
  ...book!.recipes
    .filter(({ parent }) => parent === id)
    .flatMap((child) => descendants({ book } as Compiled, child.id)),
];

test('compileBook(…, { memory }) computes after an edit of a recipe it and what comes from it, and nothing else', () => {
  const memory = new CompileMemory();
  // Of a book that learns, all colours hang on what was in a cup that was looked at.
  const unlearning = edited(BOOK, 'book.md', (text) => text.replace(/^---\n/, '---\nlearn: false\n'));
  const before = compileBook(unlearning, { memory });
  expect(before.complete).toBe(true);
  expect(before.book!.recipes.some(({ parent }) => parent === idOf(0))).toBe(true);
  const sources = edited(unlearning, FIRST, moreDrops);
  const after = compileBook(sources, { memory });
  expect([...computedAnew(before, after)].sort()).toEqual([...descendants(before, idOf(0))].sort());
  expect(after).toEqual(compileBook(sources));
});

test('compileBook(…, { memory }) learns nothing anew after an edit that changes no look and no label', () => {
  const memory = new CompileMemory();
  const before = compileBook(BOOK, { memory });
  const noted = edited(BOOK, FIRST, (text) => `${text}One more word.\n`);
  const after = compileBook(noted, { memory });
  expect(after.book!.learned).toBe(before.book!.learned);
  expect([...computedAnew(before, after)].sort()).toEqual([...descendants(before, idOf(0))].sort());
  const dosed = compileBook(edited(BOOK, FIRST, moreDrops), { memory });
  expect(dosed.book!.learned).not.toEqual(before.book!.learned);
  expect(dosed).toEqual(compileBook(edited(BOOK, FIRST, moreDrops)));
});

test('compileBook(…, { memory }) computes after a note on a material the recipes that hold it', () => {
  const memory = new CompileMemory();
  const before = compileBook(BOOK, { memory });
  const sources = edited(BOOK, 'shelf/flakes/gold-hex-015.md', (text) => `${text}\nBought again in May.\n`);
  const after = compileBook(sources, { memory });
  const anew = computedAnew(before, after);
  const holds = after.book!.recipes.filter(({ facets }) => facets.materials.includes('gold-hex-015'));
  expect(anew.length).toBeGreaterThan(0);
  expect(anew.length).toBeLessThan(BOOK.length / 2);
  expect(holds.every(({ id }) => anew.includes(id))).toBe(true);
  expect(after).toEqual(compileBook(sources));
});

test('compileBook(…, { memory }) of what it was asked last is the same book, for both of its editions', () => {
  const memory = new CompileMemory();
  const sources = sourcesOf(EXAMPLE_BOOK);
  const before = compileBook(sources, { memory });
  expect(compileBook(sourcesOf(EXAMPLE_BOOK), { memory })).toBe(before);
  expect(compileBook(sources, { memory, today: '2020-01-01' })).not.toBe(before);
});
