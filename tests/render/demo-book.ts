import type { Book } from '../../src/book/model.ts';
import { publishedBook } from '../../src/book/publish/published-book.ts';
import { loadBook } from '../../src/shell/load-book.ts';

const { complete, book } = loadBook('recipes');
if (!complete) throw new Error('the demo book has errors: run `npm run check`');

/** The demo book, as its maker has it. It is compiled once for all files that a worker runs. */
export const WHOLE_DEMO_BOOK: Book = book;

/** The demo book, as published. */
export const DEMO_BOOK: Book = publishedBook(book);
