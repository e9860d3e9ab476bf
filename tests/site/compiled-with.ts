import { join } from 'node:path';
import { compileBook } from '../../src/book/compile-book.ts';
import type { Source } from '../../src/recipe/source.ts';
import { readBook } from '../../src/shell/read-book.ts';
import { ROOT } from '../run-cupbook.ts';

/** The demo book as its maker has it, with more files. */
export function compiledWith(...files: readonly Source[]): ReturnType<typeof compileBook> {
  const { sources, photos } = readBook(join(ROOT, 'recipes'));
  return compileBook([...sources, ...files], { photos });
}
