import { execFile, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, renameSync, symlinkSync, writeFileSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { describe, expect, test } from 'vitest';
import { asWriter, passingName } from '../../src/output/writer.ts';
import { filesBelow, treeHash } from '../folder-tree.ts';
import { ROOT, runCupbook } from '../run-cupbook.ts';
import { SMALL_BOOK, smallBook, temporaryFolder, writeFiles } from '../small-book.ts';
import { leaveAsFound } from './leave-as-found.ts';
import { runHere } from './run-here.ts';

leaveAsFound();

const BOG_POOL = SMALL_BOOK['colours/bog-pool.md']!;
const STACK = /^\s+at /m;

describe('cupbook build', () => {
  test('writes a book that is not in the project, from any folder, and says so in one line', async () => {
    const book = await smallBook();
    const from = temporaryFolder();
    const { code, stdout, stderr } = await runCupbook(['build', '--recipes', book, '--output', 'my site'], from);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toMatch(/^1 recipe, 2 materials → my site in \d+\.\d s\n$/);
    expect(filesBelow(from)).toEqual(
      expect.arrayContaining([
        'my site/index.html',
        'my site/colours/bog-pool/index.html',
        'my site/book.json',
        'my site/404.html',
      ]),
    );
    expect(filesBelow(from).every((path) => path.startsWith('my site/'))).toBe(true);
  });

  test('replaces the last site: a removed recipe leaves nothing', async () => {
    const book = await smallBook({ 'colours/reed.md': BOG_POOL.replace('Bog Pool', 'Reed Bed') });
    const output = join(temporaryFolder(), 'site');
    await runHere(['build', '--recipes', book, '--output', output]);
    expect(existsSync(join(output, 'colours/reed/index.html'))).toBe(true);
    await rm(join(book, 'colours/reed.md'));
    await runHere(['build', '--recipes', book, '--output', output]);
    expect(
      filesBelow(output).filter(
        (path) => /reed/i.test(path) || /Reed Bed/.test(readFileSync(join(output, path), 'latin1')),
      ),
    ).toEqual([]);
    expect(existsSync(join(output, 'colours/bog-pool/index.html'))).toBe(true);
  });

  test('leaves the last good site as it was when the book has errors, and shows all of them', async () => {
    const book = await smallBook();
    const parent = temporaryFolder();
    const output = join(parent, 'site');
    await runHere(['build', '--recipes', book, '--output', output]);
    const before = treeHash(parent);
    await writeFiles(book, {
      'colours/one.md': BOG_POOL.replace('Bog Pool', 'One').replace('peat', 'paet'),
      'colours/two.md': BOG_POOL.replace('Bog Pool', 'Two').replace('12 drops', 'some'),
    });
    const { code, stdout, stderr } = await runHere(['build', '--recipes', book, '--output', output]);
    expect({ code, stdout }).toEqual({ code: 1, stdout: '' });
    expect(stderr).toContain('colours/one.md:9:7 error recipe/unknown-material');
    expect(stderr).toContain('fix: write `peat`');
    expect(stderr).toContain('colours/two.md:9:13 error field/quantity');
    expect(stderr).toMatch(/2 errors in 7 files\nThe book has errors, so nothing was written\. .*\n$/);
    expect(stderr).not.toMatch(STACK);
    expect(treeHash(parent)).toBe(before);
  });

  test('leaves the last good site as it was when a photo cannot be read, and names it', async () => {
    const book = await smallBook();
    const parent = temporaryFolder();
    const output = join(parent, 'site');
    await runHere(['build', '--recipes', book, '--output', output]);
    const before = treeHash(parent);
    await writeFiles(book, {
      'colours/bog-pool.md': BOG_POOL.replace('pattern', 'photos: [bait.jpg]\npattern'),
      'photos/bait.jpg': 'no picture',
    });
    const { code, stderr } = await runHere(['build', '--recipes', book, '--output', output]);
    expect(code).toBe(1);
    expect(stderr).toContain('error photo/unreadable\n  Unexpected photo `bait.jpg`, a file that is no picture');
    expect(treeHash(parent)).toBe(before);
  });

  test('shows warnings and goes on', async () => {
    const book = await smallBook({ 'photos/unused.jpg': '' });
    const { code, stderr } = await runHere(['build', '--recipes', book, '--output', join(temporaryFolder(), 'site')]);
    expect(code).toBe(0);
    expect(stderr).toContain('photos/unused.jpg:1:1 warning photo/unused');
    expect(stderr).toContain('no errors and 1 warning');
  });

  test('leaves what others have put into the site: a repository, a name, a thesis', async () => {
    const book = await smallBook();
    const output = join(temporaryFolder(), 'site');
    await runHere(['build', '--recipes', book, '--output', output]);
    const theirs = {
      '.git/HEAD': 'ref',
      '.well-known/x': '1',
      '.htaccess': '2',
      CNAME: 'book.example',
      'my-thesis.txt': 'years',
      'colours/notes.txt': '3',
    };
    await writeFiles(output, theirs);
    await rm(join(book, 'colours/bog-pool.md'));
    await writeFiles(book, { 'colours/reed.md': BOG_POOL });
    expect(await runHere(['build', '--recipes', book, '--output', output])).toMatchObject({ code: 0, stderr: '' });
    for (const [path, text] of Object.entries(theirs)) expect(readFileSync(join(output, path), 'utf8')).toBe(text);
    expect(existsSync(join(output, 'colours/bog-pool'))).toBe(false);
    expect(existsSync(join(output, 'colours/reed/index.html'))).toBe(true);
  });

  test('puts the last good site back after a kill between two renames, before a book with errors stops it', async () => {
    const book = await smallBook({ 'colours/one.md': BOG_POOL });
    const parent = temporaryFolder();
    const output = join(parent, 'site');
    await runHere(['build', '--recipes', book, '--output', output]);
    const before = treeHash(parent);
    const { pid } = spawnSync(process.execPath, ['--version']);
    await asWriter(async (writer) => {
      const work = join(parent, passingName('site', { ...writer, pid, count: 1 }, 'tmp'));
      mkdirSync(join(work, 'next'), { recursive: true });
      renameSync(output, join(work, 'last-0'));
    });
    await writeFiles(book, { 'colours/one.md': BOG_POOL.replace('peat', 'paet') });
    const { code, stderr } = await runHere(['build', '--recipes', book, '--output', output]);
    expect(code).toBe(1);
    expect(stderr).toContain('nothing was written');
    expect(treeHash(parent)).toBe(before);
  });

  test('with --mine writes all of the book, to a folder that a plain build refuses, and the other way round', async () => {
    const book = await smallBook({ 'colours/reed.md': BOG_POOL.replace('pattern', 'publish: no\npattern') });
    const [mine, shared] = [join(temporaryFolder(), 'mine'), join(temporaryFolder(), 'shared')];
    await runHere(['build', '--mine', '--recipes', book, '--output', mine]);
    await runHere(['build', '--recipes', book, '--output', shared]);
    expect(existsSync(join(mine, 'colours/reed/index.html'))).toBe(true);
    expect(existsSync(join(shared, 'colours/reed'))).toBe(false);
    const before = [treeHash(mine), treeHash(shared)];
    const plain = await runHere(['build', '--recipes', book, '--output', mine]);
    const own = await runHere(['build', '--mine', '--recipes', book, '--output', shared]);
    expect([plain.code, own.code]).toEqual([1, 1]);
    expect(plain.stderr).toMatch(/holds your own edition of a book, and this would put the shared edition .*\n$/);
    expect([treeHash(mine), treeHash(shared)]).toEqual(before);
  });

  test('refuses a folder with other things in it', async () => {
    const output = temporaryFolder();
    await writeFiles(output, { 'mine.txt': '' });
    const { code, stderr } = await runHere(['build', '--recipes', await smallBook(), '--output', output]);
    expect(code).toBe(1);
    expect(stderr).toMatch(/holds files that no build of a book wrote.*\n$/);
    expect(filesBelow(output)).toEqual(['mine.txt']);
  });
});

describe('npx eleventy', () => {
  /** Runs Eleventy's own command in the project, as somebody does who knows Eleventy. */
  async function eleventy(recipes: string, output: string): Promise<{ readonly code: number; readonly said: string }> {
    const command = join(ROOT, 'node_modules/@11ty/eleventy/cmd.cjs');
    const env = { ...process.env, CUPBOOK_RECIPES: recipes };
    return new Promise((done) => {
      execFile(
        process.execPath,
        [command, `--output=${relative(ROOT, output)}`],
        { cwd: ROOT, env },
        (error, stdout, stderr) => done({ code: error === null ? 0 : Number(error.code), said: stdout + stderr }),
      );
    });
  }

  test('writes the same site, and removes what an earlier build left', async () => {
    const book = await smallBook({ 'colours/reed.md': BOG_POOL.replace('Bog Pool', 'Reed Bed') });
    const output = join(temporaryFolder(), 'site');
    expect((await eleventy(book, output)).code).toBe(0);
    expect(existsSync(join(output, 'colours/reed/index.html'))).toBe(true);
    await rm(join(book, 'colours/reed.md'));
    expect((await eleventy(book, output)).code).toBe(0);

    const other = join(temporaryFolder(), 'site');
    await runHere(['build', '--recipes', book, '--output', other]);
    expect(filesBelow(output)).toEqual(filesBelow(other));
    expect(treeHash(output)).toBe(treeHash(other));
  });

  test('fails for a book with errors, and leaves the site as it was', async () => {
    const book = await smallBook();
    const output = join(temporaryFolder(), 'site');
    await runHere(['build', '--recipes', book, '--output', output]);
    const before = treeHash(output);
    await writeFiles(book, { 'colours/reed.md': BOG_POOL.replace('peat', 'paet') });
    const { code, said } = await eleventy(book, output);
    expect(code).toBe(1);
    expect(said).toContain('colours/reed.md:9:7 error recipe/unknown-material');
    expect(said).not.toMatch(/^\S*\s+at /m);
    expect(treeHash(output)).toBe(before);
  });

  test('refuses a folder with other things in it', async () => {
    const output = temporaryFolder();
    await writeFiles(output, { 'mine.txt': '' });
    const { code, said } = await eleventy(await smallBook(), output);
    expect(code).toBe(1);
    expect(said).toContain('holds files that no build of a book wrote');
    expect(filesBelow(output)).toEqual(['mine.txt']);
  });

  test('refuses a site that holds other files, which Eleventy might overwrite', async () => {
    const book = await smallBook();
    const output = join(temporaryFolder(), 'site');
    await runHere(['build', '--recipes', book, '--output', output]);
    await writeFiles(output, { '.git/HEAD': 'ref' });
    const before = treeHash(output);
    const { code, said } = await eleventy(book, output);
    expect(code).toBe(1);
    expect(said).toContain('holds other files, such as');
    expect(treeHash(output)).toBe(before);
  });
});

describe('a recipe from a stranger', () => {
  /** Every one of these runs code, reads files or writes elsewhere where recipes are templates. */
  const HOSTILE: Readonly<Record<string, readonly [text: string, code: string]>> = {
    'front matter that is a program': [
      `---js\n{ title: require('fs').writeFileSync('SPOILED', '') }\n---\n`,
      'front-matter/language',
    ],
    'another spelling of it': [
      `---javascript\nrequire('fs').writeFileSync('SPOILED', '')\n---\n`,
      'front-matter/language',
    ],
    'a path to write to': [BOG_POOL.replace('pattern', 'permalink: ../../SPOILED\npattern'), 'field/unknown'],
    'another template language': [
      `${BOG_POOL.replace('pattern', 'templateEngineOverride: njk,md\npattern')}{{ constructor }}`,
      'field/unknown',
    ],
    'a key of every object': [BOG_POOL.replace('pattern', '__proto__: { polluted: true }\npattern'), 'field/unknown'],
    'a layout and computed data': [
      BOG_POOL.replace('pattern', 'layout: x\neleventyComputed: { a: b }\npattern'),
      'field/unknown',
    ],
    'aliases that grow': [BOG_POOL.replace('pattern', 'tags: [&a x, *a, *a]\npattern'), 'front-matter/alias'],
    'a tag that makes a function': [
      BOG_POOL.replace('Bog Pool', '!!js/function "function () {}"'),
      'front-matter/syntax',
    ],
    'a character zero': [BOG_POOL.replace('Dark', '\0'), 'file/not-text'],
    'a file of megabytes': [`---\ntitle: ${'x'.repeat(2_000_000)}\n---\n`, 'file/too-large'],
  };

  test('is stopped with its place, and does nothing', async () => {
    const names = Object.keys(HOSTILE).map((what) => what.replaceAll(' ', '-'));
    const book = await smallBook(
      Object.fromEntries(Object.values(HOSTILE).map(([text], at) => [`colours/${names[at]}.md`, text])),
    );
    const parent = temporaryFolder();
    const { code, stdout, stderr } = await runCupbook(
      ['build', '--recipes', book, '--output', join(parent, 'site')],
      parent,
    );
    expect({ code, stdout }).toEqual({ code: 1, stdout: '' });
    for (const [at, [, diagnostic]] of Object.values(HOSTILE).entries()) {
      expect.soft(stderr).toMatch(new RegExp(`^colours/${names[at]}\\.md:\\d+:\\d+ error ${diagnostic}$`, 'm'));
    }
    expect(stderr).not.toMatch(STACK);
    expect(filesBelow(parent)).toEqual([]);
    expect(filesBelow(book).filter((path) => path.includes('SPOILED'))).toEqual([]);
  });

  test('names that no id may have are reported, and a link is not followed', async () => {
    const book = await smallBook({ 'colours/Big Name.md': BOG_POOL, 'colours/a\u001b[2Jb.md': BOG_POOL });
    const secret = join(temporaryFolder(), 'secret.md');
    writeFileSync(secret, BOG_POOL.replace('Dark', 'nobody may read this'));
    symlinkSync(secret, join(book, 'colours/stolen.md'));
    const { code, stderr } = await runHere(['build', '--recipes', book, '--output', join(temporaryFolder(), 'site')]);
    expect(code).toBe(1);
    expect(stderr).toContain('colours/Big Name.md:1:1 error file/name');
    expect(stderr).toContain('colours/a␛[2Jb.md:1:1 error file/name');
    expect(stderr).toContain('colours/stolen.md:1:1 error file/not-text');
    expect(stderr).not.toContain('\u001b');
    expect(stderr).not.toContain('nobody may read this');
  });

  test('a title and notes that are programs come out as text', async () => {
    const attack = `<script>alert(1)</script> {{ 7 * 7 }} {% include "x" %} <img src=x onerror=alert(1)> [a](javascript:alert(1)) \${7*7}`;
    const book = await smallBook({
      'colours/stranger.md': BOG_POOL.replace('Bog Pool', JSON.stringify(attack)).replace('Dark.', attack),
    });
    const output = join(temporaryFolder(), 'site');
    expect((await runHere(['build', '--recipes', book, '--output', output])).code).toBe(0);
    const page = readFileSync(join(output, 'colours/stranger/index.html'), 'utf8');
    expect(page).toContain('{{ 7 * 7 }}');
    for (const path of filesBelow(output).filter((file) => file.endsWith('.html'))) {
      const html = readFileSync(join(output, path), 'utf8');
      expect(html, path).not.toContain('<script>alert');
      // What a picture is called stands in its `alt`, between quotes.
      expect(html.replace(/"[^"]*"/g, '""'), path).not.toMatch(/<img[^>]*onerror/);
      expect(html, path).not.toMatch(/href="?javascript:/i);
    }
  });

  test('a template in the folder of recipes is never run', async () => {
    const book = await smallBook({
      'colours/colours.11tydata.js': 'throw new Error("it ran")',
      'colours/page.11ty.js': 'throw new Error("it ran")',
      'colours/page.njk': '{{ constructor.constructor("throw 1")() }}',
    });
    const { code, stderr } = await runHere(['build', '--recipes', book, '--output', join(temporaryFolder(), 'site')]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  });
});
