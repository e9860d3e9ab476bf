import { fileURLToPath } from 'node:url';
import { publishedBook } from '../../src/book/publish/published-book.ts';
import { loadBook } from '../../src/shell/load-book.ts';

const { complete, book } = loadBook(fileURLToPath(new URL('../../recipes', import.meta.url)));
if (!complete) throw new Error('the demo book has errors: run `npm run check`');

/** The demo book, as published. */
export const DEMO_BOOK: ReturnType<typeof publishedBook> = publishedBook(book);
