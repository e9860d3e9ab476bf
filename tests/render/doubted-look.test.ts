import { expect, test } from 'vitest';
import { EXAMPLE_BOOK, EXAMPLES } from '../../src/diagnostics/examples.ts';
import { documentOf, wordsIn } from '../page-dom.ts';
import { bookOf, pageOf } from './sample-book.ts';

const { bad, good } = EXAMPLES['log/does-not-fit'];
const files = (changes: typeof bad): Readonly<Record<string, string>> =>
  ({ ...EXAMPLE_BOOK, ...changes }) as Readonly<Record<string, string>>;
const words = async (changes: typeof bad, edition: 'mine' | 'shared'): Promise<string> =>
  wordsIn(documentOf(await pageOf('recipe', 'smoke', bookOf(files(changes), edition))));

test('a look that does not fit is asked about in its round, with how far it is believed, and of the maker alone', async () => {
  const round = (await words(bad, 'mine')).split('Round 2')[1]!;
  expect(round).toContain('This look doesn’t fit what the log says');
  expect(round).toContain('Did the 12 drops of Rust go in?');
  expect(round).toMatch(/write checked: true in the look\. Until then it counts for little: \d+ %\./);
  expect((await words(bad, 'mine')).split('Round 2')[0]).not.toContain('doesn’t fit');
  expect(await words(bad, 'shared')).not.toMatch(/doesn’t fit|counts for little/);
});

test('nothing is asked where all looks fit', async () => {
  expect(await words(good, 'mine')).not.toMatch(/doesn’t fit|counts for little/);
});

test('a look that is hardly believed says so, though no log is to blame', async () => {
  const book = bookOf(files(good), 'mine');
  const doubted = [{ of: 'recipe', id: 'smoke', at: { cup: 'body', round: 1 }, weight: 0.31 }] as const;
  const page = wordsIn(documentOf(await pageOf('recipe', 'smoke', { ...book, doubted })));
  expect(page).toContain('This look counts for little in what the book has learned (31 %)');
});
