import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { LONGEST_TEXT } from '../../src/recipe/source.ts';
import { loadBook } from '../../src/shell/load-book.ts';
import { readBook } from '../../src/shell/read-book.ts';
import { SMALL_BOOK, smallBook, temporaryFolder } from '../small-book.ts';

const codes = (folder: string): readonly string[] =>
  readBook(folder).diagnostics.map(({ file, code }) => `${file} ${code}`);

test('readBook(folder) reads every Markdown file in the order of its path, and lists the photos', async () => {
  const folder = await smallBook({ 'photos/b.JPG': 'x', 'photos/a.webp': 'x', 'photos/notes.txt': 'x' });
  const { sources, photos, diagnostics } = readBook(folder);
  expect(sources.map(({ path }) => path)).toEqual(Object.keys(SMALL_BOOK).sort());
  expect(sources.find(({ path }) => path === 'book.md')?.text).toBe(SMALL_BOOK['book.md']);
  expect(photos).toEqual(['photos/a.webp', 'photos/b.JPG']);
  expect(diagnostics).toEqual([]);
});

test('readBook(folder) never follows a link, and says where one is', async () => {
  const folder = await smallBook();
  const secret = join(temporaryFolder(), 'secret.md');
  writeFileSync(secret, 'nobody may read this');
  symlinkSync(secret, join(folder, 'colours/stolen.md'));
  symlinkSync(join(secret, '..'), join(folder, 'shelf/powders'));
  expect(JSON.stringify(readBook(folder).sources)).not.toContain('nobody may read this');
  expect(codes(folder)).toEqual(['colours/stolen.md file/not-text', 'shelf/powders file/not-text']);
});

test('readBook(folder) refuses a file that is too large to be a recipe, before it reads it', async () => {
  const folder = await smallBook({ 'colours/huge.md': '-'.repeat(3 * LONGEST_TEXT + 1) });
  const { sources, diagnostics } = readBook(folder);
  expect(sources.some(({ path }) => path === 'colours/huge.md')).toBe(false);
  expect(diagnostics).toMatchObject([
    {
      code: 'file/too-large',
      severity: 'error',
      file: 'colours/huge.md',
      found: 'a file of 768 KiB',
      expected: 'at most 256 KiB',
    },
  ]);
});

test('readBook(folder) refuses bytes that are not UTF-8', async () => {
  const folder = await smallBook();
  writeFileSync(join(folder, 'colours/latin.md'), Buffer.from([0x2d, 0x0a, 0x2d, 0xe9, 0x2d]));
  expect(codes(folder)).toEqual(['colours/latin.md file/not-text']);
  expect(readBook(folder).diagnostics[0]!.start).toEqual({ line: 2, column: 2 });
});

test('readBook(folder) leaves hidden files and what is deeper than a book alone', async () => {
  const folder = await smallBook({
    '.git/config.md': 'x',
    'colours/.draft.md': 'x',
    'node_modules/a/readme.md': 'x',
    'a/b/c/too-deep.md': 'x',
    'a/b/one-too-deep.md': 'x',
  });
  const more = readBook(folder).sources.filter(({ path }) => !(path in SMALL_BOOK));
  expect(more.map(({ path }) => path)).toEqual(['a/b/one-too-deep.md']);
});

test('readBook(folder) hands on files with names that no id may have, so that they are reported', async () => {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'colours'));
  for (const name of ['Big.md', 'a b.md', 'line\nend.md', 'ü#?%.MD']) writeFileSync(join(folder, 'colours', name), '');
  expect(readBook(folder).sources.map(({ path }) => path)).toEqual([
    'colours/Big.md',
    'colours/a b.md',
    'colours/line\nend.md',
    'colours/ü#?%.MD',
  ]);
});

test('readBook(folder) hands on files that lie among the recipes with another ending, but not what is in them', async () => {
  const folder = await smallBook({
    'colours/dusk.markdown': 'x',
    'colours/Thumbs.db': 'x',
    'molds/big.docx': Buffer.from([0xff]).toString('latin1'),
    'shelf/films.xlsx': 'x',
    'readme.txt': 'x',
  });
  const more = readBook(folder).sources.filter(({ path }) => !(path in SMALL_BOOK));
  expect(more).toEqual(
    ['colours/dusk.markdown', 'molds/big.docx', 'shelf/films.xlsx'].map((path) => ({ path, text: '' })),
  );
});

test('loadBook(folder) does not propose to create a file that is there but is no text', async () => {
  const folder = await smallBook({ 'colours/dusk.md': '---\ntitle: Dusk\nfrom: latin\n---\n' });
  writeFileSync(join(folder, 'colours/latin.md'), Buffer.from([0xe9]));
  expect(loadBook(folder).diagnostics.map(({ code }) => code)).toEqual(['file/not-text']);
});

test('readBook(folder) names the folder that is not there', () => {
  expect(() => readBook('/no/such/book')).toThrow('There is no folder /no/such/book.');
});
