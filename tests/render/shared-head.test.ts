import { describe, expect, test } from 'vitest';
import { shortDescription } from '../../src/render/short-description.ts';
import { bookOf, readPage, SAMPLE_FILES } from './sample-book.ts';

const ADDRESS = 'https://book.example/deep/';
const metaOf = (page: Document, property: string): string | undefined =>
  page.querySelector(`meta[property="og:${property}"]`)?.getAttribute('content') ?? undefined;
const canonicalOf = (page: Document): string | undefined =>
  page.querySelector('link[rel="canonical"]')?.getAttribute('href') ?? undefined;
const hasAddress = (page: Document): boolean =>
  page.querySelector('meta[property^="og:"], link[rel="canonical"]') !== null;

describe('a page of a book that has an address', () => {
  test('says what a shared link shows: its address, name, sentence and, of a colour, its picture', async () => {
    const page = await readPage('recipe', 'weir-foam');
    expect(canonicalOf(page)).toBe(`${ADDRESS}colours/weir-foam/`);
    expect(metaOf(page, 'url')).toBe(`${ADDRESS}colours/weir-foam/`);
    expect(metaOf(page, 'title')).toBe('Weir Foam');
    expect(metaOf(page, 'description')).toBe('Foam below the weir.');
    expect(metaOf(page, 'image')).toBe(`${ADDRESS}colours/weir-foam/shared.jpg`);
    expect(metaOf(await readPage('recipe', 'hush'), 'image')).toBe(`${ADDRESS}colours/hush/shared.jpg`);
  });

  test('has no picture where there is no one colour, and no address where it stands at any', async () => {
    const home = await readPage('home');
    expect(canonicalOf(home)).toBe(ADDRESS);
    expect(metaOf(home, 'image')).toBeUndefined();
    expect([hasAddress(home), hasAddress(await readPage('not-found'))]).toEqual([true, false]);
  });
});

test('a book without an address has nothing of it', async () => {
  const without = bookOf({ ...SAMPLE_FILES, 'book.md': '---\ntitle: Nowhere\n---\n' });
  expect(hasAddress(await readPage('recipe', 'weir-foam', without))).toBe(false);
});

describe('shortDescription(text)', () => {
  const long = 'We looked for it all winter, in jars and in ditches and once in a bucket. Took two tries. ';

  test('keeps what is short', () => {
    expect(shortDescription('Took two tries.')).toBe('Took two tries.');
  });

  test('ends with a sentence where one ends in time', () => {
    expect(
      shortDescription(`${long}And then it stood on the shelf for the whole of a year, forgotten by all of us.`),
    ).toBe(long.trim());
  });

  test('else ends with a word and an ellipsis', () => {
    const words = shortDescription(`Peat, ${'and straw and copper, '.repeat(12)}`);
    expect(words).toMatch(/^Peat, .*(?:and|straw|copper)…$/);
    expect(words.length).toBeLessThanOrEqual(155);
  });
});
