import { readFileSync } from 'node:fs';
import { compileBook } from '../../src/book/compile-book.ts';
import type { Cup } from '../../src/book/model/cup.ts';
import type { Recipe } from '../../src/book/model/recipe.ts';
import type { Book } from '../../src/book/model.ts';
import { EXAMPLE_BOOK } from '../../src/diagnostics/examples.ts';

/** The example book with more files, or with others in their place. */
export function compileWith(
  files: Readonly<Record<string, string>>,
  photos: readonly string[] = [],
): ReturnType<typeof compileBook> {
  return compileBook(
    Object.entries({ ...EXAMPLE_BOOK, ...files }).map(([path, text]) => ({ path, text })),
    { photos },
  );
}

/** The same where no mistake is meant: any is an error of the test. */
export function bookWith(files: Readonly<Record<string, string>>, photos: readonly string[] = []): Book {
  const { complete, book, diagnostics } = compileWith(files, photos);
  if (!complete) throw new Error(diagnostics.map(({ file, code, found }) => `${file} ${code} ${found}`).join('\n'));
  return book;
}

/** A file with front matter. */
export function file(front: string, notes = ''): string {
  return `---\n${front.trim()}\n---\n${notes}`;
}

/** A recipe of a book. */
export function recipeOf(book: Book, id: string): Recipe {
  const found = book.recipes.find((recipe) => recipe.id === id);
  if (!found) throw new Error(`no recipe ${id}`);
  return found;
}

/** Grams per 100 ml of a material in a cup. */
export function dose(cup: Cup, material: string): number {
  return (cup.contents.find((content) => content.material === material)?.gramsPerMl ?? 0) * 100;
}

/** Text of a file of the project, from its root. */
export function projectFile(path: string): string {
  return readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
}
