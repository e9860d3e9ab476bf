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
        if (tried.complete) built++;
        expect(faultsOf(tried)).toEqual([]);
        // Half of them, since to render is most of the work; by what is in them, so that a failure comes again when it is made smaller.
        const weight = sources.reduce((sum, { path, text }) => sum + path.length + text.length, 0);
        if (weight % 2 === 0)
          expect((await faultsOfSite(tried, weight % 4 === 0 ? 'shared' : 'mine')).join('\n')).toBe('');
      }),
    ),
    { numRuns: 80 * TIMES },
  );
  // Were all refused at the first look, this would show nothing.
  expect(built / books).toBeGreaterThan(0.1);
}, 600_000);
