import { mkdirSync, mkdtempSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { DISK, type Effects } from '../../src/output/effects.ts';
import { writeNewFile } from '../../src/shell/write-new-file.ts';
import { filesBelow } from '../folder-tree.ts';

const folder = (): string => mkdtempSync(join(tmpdir(), 'cupbook-test-'));

test('writeNewFile(recipes, path, text) makes the folders on the way and leaves nothing but the file', async () => {
  const recipes = folder();
  await writeNewFile(recipes, 'shelf/flakes/rust.md', 'rust');
  await writeNewFile(recipes, 'book.md', 'book');
  expect(filesBelow(recipes)).toEqual(['book.md', 'shelf/flakes/rust.md']);
  expect(readFileSync(join(recipes, 'shelf/flakes/rust.md'), 'utf8')).toBe('rust');
});

test('it never writes over a file, even one that came in the meantime', async () => {
  const recipes = folder();
  await writeNewFile(recipes, 'molds/craw.md', 'first');
  await expect(writeNewFile(recipes, 'molds/craw.md', 'second')).rejects.toMatchObject({ code: 'EEXIST' });
  const faster: Effects = {
    ...DISK,
    async make(file, content) {
      await DISK.make(file, content);
      if (content === 'mine') writeFileSync(join(recipes, 'molds/grub.md'), 'theirs');
    },
  };
  await expect(writeNewFile(recipes, 'molds/grub.md', 'mine', faster)).rejects.toMatchObject({ code: 'EEXIST' });
  expect(['craw', 'grub'].map((name) => readFileSync(join(recipes, `molds/${name}.md`), 'utf8'))).toEqual([
    'first',
    'theirs',
  ]);
  expect(filesBelow(recipes)).toEqual(['molds/craw.md', 'molds/grub.md']);
});

test.each(['make', 'rename'] as const)('a disk that fails at %s is left as it was', async (step) => {
  const recipes = folder();
  const full: Effects = {
    ...DISK,
    [step]: async (file: string, ...rest: never[]) => {
      if (step === 'make') await DISK.make(file, rest[0] as unknown as string);
      throw Object.assign(new Error('no space'), { code: 'ENOSPC' });
    },
  };
  await expect(writeNewFile(recipes, 'book.md', 'book', full)).rejects.toMatchObject({ code: 'ENOSPC' });
  expect(filesBelow(recipes)).toEqual([]);
});

test('nothing is written through a link that leads out of the book', async () => {
  const [recipes, elsewhere] = [folder(), folder()];
  mkdirSync(join(recipes, 'shelf'));
  symlinkSync(elsewhere, join(recipes, 'shelf/flakes'));
  await expect(writeNewFile(recipes, 'shelf/flakes/rust.md', 'rust')).rejects.toThrow(
    /flakes is a link, and nothing behind a link is read, so that no file was written there\./,
  );
  expect(filesBelow(elsewhere)).toEqual([]);
});

test('a folder that somebody else makes meanwhile is taken as it is', async () => {
  const recipes = folder();
  const faster = {
    ...DISK,
    async makeFolder(path: string) {
      mkdirSync(path);
      await DISK.makeFolder(path);
    },
  };
  await writeNewFile(recipes, 'targets/pike.md', 'pike', faster);
  expect(readFileSync(join(recipes, 'targets/pike.md'), 'utf8')).toBe('pike');
});
