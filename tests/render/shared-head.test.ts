import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { iconFiles } from '../../src/eleventy/icons.ts';
import { FILES } from '../../src/render/data-files.ts';
import { shortDescription } from '../../src/render/short-description.ts';
import { ROOT } from '../run-cupbook.ts';
import { bookOf, readPage, SAMPLE_BOOK, SAMPLE_FILES } from './sample-book.ts';

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
    expect(metaOf(await readPage('target', 'rack'), 'image')).toBe(`${ADDRESS}targets/rack/shared.jpg`);
  });

  test('has the picture of the book where there is no one colour, and no address where it stands at any', async () => {
    const home = await readPage('home');
    expect(canonicalOf(home)).toBe(ADDRESS);
    for (const page of [home, await readPage('families')]) expect(metaOf(page, 'image')).toBe(`${ADDRESS}shared.jpg`);
    expect(home.querySelector('meta[name="twitter:card"]')?.getAttribute('content')).toBe('summary_large_image');
    expect([hasAddress(home), hasAddress(await readPage('not-found'))]).toEqual([true, false]);
  });
});

test('a book without an address has nothing of it', async () => {
  const without = bookOf({ ...SAMPLE_FILES, 'book.md': '---\ntitle: Nowhere\n---\n' });
  expect(hasAddress(await readPage('recipe', 'weir-foam', without))).toBe(false);
});

test('a home screen has the name, the icons and the ground of the book', async () => {
  const page = await readPage('recipe', 'weir-foam');
  const manifest = FILES.find(({ kind }) => kind === 'manifest')!;
  expect(page.querySelector('link[rel="manifest"]')?.getAttribute('href')).toBe('../../manifest.webmanifest');
  const said = JSON.parse(manifest.text(SAMPLE_BOOK, '', {})) as { name: string; icons: readonly { src: string }[] };
  expect(said.name).toBe(SAMPLE_BOOK.title);
  expect(said.icons.map(({ src }) => src)).toEqual((await iconFiles(ROOT)).map(({ path }) => path));
  const ground = readFileSync(join(ROOT, 'site/assets/base.css'), 'utf8').match(/--ground: light-dark\((\S+), (\S+)\)/);
  const colours = [...page.querySelectorAll('meta[name="theme-color"]')].map((meta) => meta.getAttribute('content'));
  expect(colours).toEqual(ground!.slice(1));
});

test('iconFiles(root) are as large as they are called', async () => {
  for (const { path, content } of await iconFiles(ROOT)) {
    const { width, height, hasAlpha } = await sharp(content as Uint8Array).metadata();
    expect([`icon-${width}.png`, height, hasAlpha]).toEqual([path, width, false]);
  }
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
