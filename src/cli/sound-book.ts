import { compileSound } from '../book/compile-sound.ts';
import type { Book } from '../book/model.ts';
import { Refusal } from '../diagnostics/refusal.ts';
import { type LoadedBook, loadBook } from '../eleventy/load-book.ts';
import { printable } from '../eleventy/printable.ts';
import { reportText } from '../eleventy/report.ts';

/** What can be worked with of a book, whatever is wrong elsewhere in it. */
export interface SoundBook {
  readonly book: Book;
  /** Paths of the files that were left out: they have errors, or need one that has. */
  readonly leftOut: readonly string[];
  /** The book as it is. */
  readonly loaded: LoadedBook;
}

/**
 * The book of a folder without what has errors and without what needs it: a cup that is hot cannot wait until another recipe is
 * mended. What was left out is said on the error output.
 *
 * Throws: Refusal where nothing is left, since `book.md` itself has errors; the errors are shown first.
 */
export function soundBook(folder: string): SoundBook {
  const loaded = loadBook(folder);
  if (loaded.book) return { book: loaded.book, leftOut: [], loaded };
  const sound = compileSound(loaded.sources, loaded.photos, loaded.diagnostics);
  if (!sound) {
    console.error(reportText(loaded));
    throw new Refusal('The book has errors, and nothing can be worked out from it. Mend what is listed above.');
  }
  if (sound.leftOut.length > 0) console.error(leftOutText(sound.faulty, sound.leftOut));
  return { book: sound.book, leftOut: sound.leftOut, loaded };
}

function leftOutText(faulty: readonly string[], leftOut: readonly string[]): string {
  const needing = leftOut.filter((path) => !faulty.includes(path));
  const besides = needing.length === 0 ? '' : `, and with it what needs it: ${[...needing].sort().join(', ')}`;
  return printable(
    `Left out for errors, which npx cupbook check shows: ${[...new Set(faulty)].sort().join(', ')}${besides}.`,
  );
}
