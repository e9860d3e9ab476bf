import type { Edition } from '../model/publish.ts';
import type { Book } from '../model.ts';
import { makersBook } from './makers-book.ts';
import { publishedBook } from './published-book.ts';

/** How each edition is made from the compiled book. A site is rendered from one of them, never from the compiled book. */
export const EDITIONS: Readonly<Record<Edition, (book: Book) => Book>> = { shared: publishedBook, mine: makersBook };
