import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { bounded, faultsOf, faultsOfSite } from './judge.ts';
import { mutatedBook } from './mutated-book.ts';

/** How many times as many books as in `npm test`; `npm run laws` says. */
const TIMES = Number(process.env.LAWS_TIMES ?? 1);

test('whatever is changed in a book, what is told has its place, and what is built says nothing unmeant', async () => {
  let [books, built] = [0, 0];
  await fc.assert(
    fc.asyncProperty(mutatedBook, (files) =>
      bounded(async () => {
        const sources = Object.entries(files).map(([path, text]) => ({ path, text }));
        const tried = { ...compileBook(sources), sources };
        books++;
        if (tried.book) built++;
        expect(faultsOf(tried)).toEqual([]);
        // Every other one, since to render is half of the work.
        if (tried.book && built % 2 === 0) expect((await faultsOfSite(tried)).join('\n')).toBe('');
      }),
    ),
    { numRuns: 120 * TIMES },
  );
  // Were all refused at the first look, this would show nothing.
  expect(built / books).toBeGreaterThan(0.1);
}, 600_000);
