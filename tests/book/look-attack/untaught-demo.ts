import { compileBook } from '../../../src/book/compile-book.ts';
import type { Book } from '../../../src/book/model.ts';
import type { Source } from '../../../src/recipe/source.ts';
import { loadBook } from '../../../src/shell/load-book.ts';

/**
 * The demo book as it is by its labels alone. What published looks add to a colour everybody can reckon as well, so that an attacker takes
 * it off first: what is left to attack is this.
 */
export function untaughtSources(): { readonly sources: readonly Source[]; readonly photos: readonly string[] } {
  const { sources, photos } = loadBook('recipes');
  return { sources: sources.map((source) => (source.path === 'book.md' ? withoutLearning(source) : source)), photos };
}

function withoutLearning({ path, text }: Source): Source {
  return { path, text: text.replace(/^---\n/, '---\nlearn: false\n') };
}

const { sources, photos } = untaughtSources();
const compiled = compileBook(sources, { photos });
if (!compiled.complete) throw new Error('the demo book has errors: run `npm run check`');

/** See `untaughtSources`. */
export const UNTAUGHT_DEMO_BOOK: Book = compiled.book;
