import { expect, test } from 'vitest';
import { type CompileOptions, compileBook } from '../../src/book/compile-book.ts';
import { CompileMemory } from '../../src/book/compile-memory.ts';
import type { Book } from '../../src/book/model.ts';
import { EDITIONS } from '../../src/book/publish/editions.ts';
import { recipeAnew } from '../../src/book/recipe-anew.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import type { Source } from '../../src/recipe/source.ts';
import { loadBook } from '../../src/shell/load-book.ts';

const { sources, photos } = loadBook('recipes');
const memory = new CompileMemory();
const options: CompileOptions & { readonly memory: CompileMemory } = { photos, memory };
const shown = (): Book => EDITIONS.mine(compileBook(sources, options).book!);

/** A recipe with a cup that was looked at over white, by its file. */
const looked = sources.find(
  ({ path, text }) => path.startsWith('colours/') && /over-white: "#[0-9a-f]{6}"/.test(text),
)!;
const SEEN = /over-white: "#[0-9a-f]{6}"/;

const edited = (change: (text: string) => string, path = looked.path): readonly Source[] =>
  sources.map((source) => (source.path === path ? { path, text: change(source.text) } : source));
const seenAs = (hex: string): readonly Source[] => edited((text) => text.replace(SEEN, `over-white: "${hex}"`));

test('a recipe with another look is nearly as in the whole book, which then is what it is without', () => {
  const before = shown();
  // Two edits, one after the other, without a whole book between them.
  recipeAnew(seenAs('#e2cf90'), options, before);
  const now = seenAs('#d6c27c');
  const anew = recipeAnew(now, options, before)!;
  const whole = compileBook(now, { photos });
  expect(whole.complete).toBe(true);
  const of = ({ recipes }: Book) => recipes.find(({ source }) => source.path === looked.path)!;
  const [own, then, last] = [of(anew.book), of(whole.book!), of(before)];
  expect(anew.id).toBe(own.id);
  expect(anew.book.learned.data).toEqual(whole.book!.learned.data);
  expect(own.source.text).toBe(then.source.text);
  expect(Object.keys(own).sort()).toEqual(Object.keys(then).sort());
  for (const [i, { body }] of own.cups.entries())
    expect(deltaE00(body.overWhite.lab, then.cups[i]!.body.overWhite.lab)).toBeLessThan(0.1);
  expect(JSON.stringify(own.cups)).not.toBe(JSON.stringify(last.cups));
  // Nothing of what was only nearly learned is left for the compile of the whole.
  expect(JSON.stringify(compileBook(now, options))).toBe(JSON.stringify(whole));
});

test('what changes no look, more than a recipe, or has an error, waits for the whole book', () => {
  const before = shown();
  expect(recipeAnew(sources, options, before)).toBeUndefined();
  expect(
    recipeAnew(
      edited((text) => `${text}\nA word more.\n`),
      options,
      before,
    ),
  ).toBeUndefined();
  expect(
    recipeAnew(
      edited((text) => text.replace(SEEN, 'over-white: "#12345"')),
      options,
      before,
    ),
  ).toBeUndefined();
  expect(
    recipeAnew(
      edited((text) => text.replace('---', '--')),
      options,
      before,
    ),
  ).toBeUndefined();
  expect(recipeAnew(seenAs('#d6c27c').slice(1), options, before)).toBeUndefined();
  const shelf = sources.find(({ path }) => path.startsWith('shelf/'))!;
  expect(
    recipeAnew(
      edited((text) => `${text}\nMore.\n`, shelf.path),
      options,
      before,
    ),
  ).toBeUndefined();
  expect(recipeAnew(seenAs('#d6c27c'), { photos, memory: new CompileMemory() }, before)).toBeUndefined();
  const broken = edited((text) => text.replace('---', '--'));
  compileBook(broken, options);
  expect(recipeAnew(sources, options, before)).toBeUndefined();
});
