import type { LeftOut } from '../book/left-out.ts';
import type { Book } from '../book/model.ts';
import { Refusal } from '../diagnostics/refusal.ts';
import { type LoadedBook, loadBook } from '../shell/load-book.ts';
import { printable } from '../shell/printable.ts';
import { reportText } from '../shell/report.ts';

/** What can be worked with of a book, whatever is wrong elsewhere in it. */
export interface SoundBook {
  readonly book: Book;
  /** The files that were left out: they have errors, or wait to be filled in, or need one that does. */
  readonly leftOut: readonly LeftOut[];
  /** The book as it is. */
  readonly loaded: LoadedBook;
}

/**
 * The book of a folder without what has errors and without what needs it: a cup that is hot cannot wait until another recipe is
 * mended, or filled in. What was left out is said on the error output.
 *
 * Throws: Refusal where nothing is left, since `book.md` itself has errors; the errors are shown first.
 */
export function soundBook(folder: string): SoundBook {
  const loaded = loadBook(folder);
  const { book, leftOut } = loaded;
  if (!book) {
    console.error(reportText(loaded));
    throw new Refusal('The book has errors, so nothing can be worked out from it. Fix what is listed above.');
  }
  for (const line of leftOutLines(leftOut)) console.error(printable(line));
  return { book, leftOut, loaded };
}

/** What was left out, a sentence for each reason. */
function leftOutLines(leftOut: readonly LeftOut[]): readonly string[] {
  const line = (why: LeftOut['why'], reason: string): readonly string[] => {
    const whole = leftOut.filter((each) => each.lines === undefined && each.why === why);
    if (whole.length === 0) return [];
    const paths = (needing: boolean): readonly string[] =>
      whole.flatMap(({ path, needs }) => (needs.length > 0 === needing ? [path] : []));
    const besides = paths(true).length === 0 ? '' : `, and with it what needs it: ${paths(true).join(', ')}`;
    return [`Left out ${reason}, which npx cupbook check shows: ${paths(false).join(', ')}${besides}.`];
  };
  return [...line('errors', 'for errors'), ...line('to-fill-in', 'for fields that are still empty')];
}
