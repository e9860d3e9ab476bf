import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { checkApart, claimOutput, MARKER, swapOutput, sweepOutput } from '../../src/output/output-folder.ts';
import { filesBelow, treeHash } from '../folder-tree.ts';
import { temporaryFolder, writeFiles } from '../small-book.ts';

describe('claimOutput(folder)', () => {
  test('makes and marks a folder that is not there, and takes it again', async () => {
    const folder = join(temporaryFolder(), 'a/site');
    await claimOutput(folder);
    await claimOutput(folder);
    expect(filesBelow(folder)).toEqual([MARKER]);
  });

  test('refuses a folder with anything else in it, and leaves it as it is', async () => {
    const folder = temporaryFolder();
    await writeFiles(folder, { 'taxes.txt': 'years of work' });
    const before = treeHash(folder);
    await expect(claimOutput(folder)).rejects.toThrow('holds files that no build of a book wrote');
    expect(treeHash(folder)).toBe(before);
  });

  test('refuses a file', async () => {
    const folder = temporaryFolder();
    await writeFiles(folder, { site: '' });
    await expect(claimOutput(join(folder, 'site'))).rejects.toThrow('is a file');
  });
});

describe('sweepOutput(folder, kept)', () => {
  test('removes what was not kept, and the folders that become empty', async () => {
    const folder = temporaryFolder();
    await claimOutput(folder);
    await writeFiles(folder, { 'index.html': '', 'old/page/index.html': '', 'new/index.html': '', 'new/old.json': '' });
    await sweepOutput(folder, (path) => path === 'index.html' || path === 'new/index.html');
    expect(filesBelow(folder)).toEqual([MARKER, 'index.html', 'new/index.html']);
    expect(existsSync(join(folder, 'old'))).toBe(false);
  });

  test('leaves a folder that is kept as it is, even empty', async () => {
    const folder = temporaryFolder();
    await claimOutput(folder);
    mkdirSync(join(folder, 'index.tmp/part'), { recursive: true });
    await writeFiles(folder, { 'index.tmp/one.bin': '' });
    await sweepOutput(folder, (path) => path === 'index.tmp');
    expect(readdirSync(join(folder, 'index.tmp'))).toEqual(['one.bin', 'part']);
  });

  test('never enters a folder through a link', async () => {
    const elsewhere = temporaryFolder();
    await writeFiles(elsewhere, { 'mine.txt': '' });
    const folder = temporaryFolder();
    await claimOutput(folder);
    symlinkSync(elsewhere, join(folder, 'link'));
    await sweepOutput(folder, () => false);
    expect(filesBelow(elsewhere)).toEqual(['mine.txt']);
    expect(existsSync(join(folder, 'link'))).toBe(false);
  });

  test('refuses a folder without the mark', async () => {
    const folder = temporaryFolder();
    await writeFiles(folder, { 'mine.txt': '' });
    await expect(sweepOutput(folder, () => false)).rejects.toThrow('holds files that no build of a book wrote');
    expect(filesBelow(folder)).toEqual(['mine.txt']);
  });
});

describe('swapOutput(output, write)', () => {
  test('puts the new site in the place of the old one, whole', async () => {
    const parent = temporaryFolder();
    const output = join(parent, 'site');
    await swapOutput(output, (aside) => writeFiles(aside, { 'old.html': 'old' }));
    await swapOutput(output, async (aside) => {
      await writeFiles(aside, { 'new.html': 'new' });
      expect(filesBelow(output)).toEqual([MARKER, 'old.html']);
    });
    expect(filesBelow(parent)).toEqual([`site/${MARKER}`, 'site/new.html']);
  });

  test('leaves the old site untouched when writing fails, and nothing beside it', async () => {
    const parent = temporaryFolder();
    const output = join(parent, 'site');
    await swapOutput(output, (aside) => writeFiles(aside, { 'old.html': 'old' }));
    const before = treeHash(parent);
    const failing = swapOutput(output, async (aside) => {
      await writeFiles(aside, { 'half.html': '' });
      throw new Error('stopped half way');
    });
    await expect(failing).rejects.toThrow('stopped half way');
    expect(treeHash(parent)).toBe(before);
  });

  test('removes what a killed build left, but nothing of a running build or of somebody else', async () => {
    const parent = temporaryFolder();
    const { pid: gone } = spawnSync(process.execPath, ['--version']);
    await claimOutput(join(parent, `site.next-${gone}.tmp`));
    await claimOutput(join(parent, `site.next-${process.ppid}.tmp`));
    await claimOutput(join(parent, `other.next-${gone}.tmp`));
    await writeFiles(parent, { [`site.last-${gone}.tmp/mine.txt`]: '' });
    await swapOutput(join(parent, 'site'), async () => undefined);
    const left = readdirSync(parent).sort();
    expect(left).toEqual(
      ['site', `site.next-${process.ppid}.tmp`, `other.next-${gone}.tmp`, `site.last-${gone}.tmp`].sort(),
    );
  });

  test('refuses an output that was filled by somebody else meanwhile', async () => {
    const parent = temporaryFolder();
    const output = join(parent, 'site');
    const swap = swapOutput(output, async () => {
      mkdirSync(output);
      writeFileSync(join(output, 'mine.txt'), '');
    });
    await expect(swap).rejects.toThrow('holds files that no build of a book wrote');
    expect(filesBelow(parent)).toEqual(['site/mine.txt']);
  });
});

test.each([
  ['/books/river', '/books/river'],
  ['/books/river', '/books/river/_site'],
  ['/books/river/recipes', '/books/river'],
])('checkApart(%s, %s) refuses', (recipes, output) => {
  expect(() => checkApart(recipes, output)).toThrow('Name a folder apart from it');
});

test.each([
  ['/books/river', '/books/river-site'],
  ['/books/recipes', '/books/_site'],
  ['/books/..recipes', '/books/_site'],
])('checkApart(%s, %s) allows', (recipes, output) => {
  expect(() => checkApart(recipes, output)).not.toThrow();
});
