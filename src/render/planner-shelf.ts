/**
 * What the planners of all recipes have in common, as a script beside the pages: loaded once for all of them, from a folder on disk as well.
 *
 * @packageDocumentation
 */
import type { Book } from '../book/model.ts';
import { paths } from './links.ts';
import { PLANNER_SHELF, plannerShelf } from './planner-data.ts';
import { stampedPath } from './stamped-path.ts';

/** What the file holds: it leaves a `PlannerShelf` in the window. */
export function plannerShelfText(book: Book): string {
  const known = texts.get(book);
  if (known !== undefined) return known;
  const text = `window.${PLANNER_SHELF}=${JSON.stringify(plannerShelf(book))};\n`;
  texts.set(book, text);
  return text;
}

// The file and every page that names it need it, and a book never changes.
const texts = new WeakMap<Book, string>();

/** Path of the file from the root, with its stamp. */
export function plannerShelfPath(book: Book): string {
  return stampedPath(paths.plannerShelf, plannerShelfText(book));
}
