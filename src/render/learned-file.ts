/**
 * What the looks of a book have taught of its shelf, for the Match page: a script beside it, so that it is loaded from a folder on disk as
 * well, and only when a match asks what a cup will look like.
 *
 * @packageDocumentation
 */
import type { Book } from '../book/model.ts';
import { packedShelf } from '../learning/packed-shelf.ts';
import { shelfInFull } from '../learning/shelf-in-full.ts';
import { LEARNED_AS } from './learned-name.ts';
import { paths } from './links.ts';
import { stampedPath } from './stamped-path.ts';

/** What the file holds: it leaves a `PackedShelf` in the window. */
export function learnedText(book: Book): string {
  const known = texts.get(book);
  if (known !== undefined) return known;
  const text = `window.${LEARNED_AS}=${JSON.stringify(packedShelf(shelfInFull(book.learned)))};\n`;
  texts.set(book, text);
  return text;
}

// The file and the page that names it need it, and a book never changes.
const texts = new WeakMap<Book, string>();

/** Path of the file from the root, with its stamp. */
export function learnedPath(book: Book): string {
  return stampedPath(paths.learned, learnedText(book));
}
