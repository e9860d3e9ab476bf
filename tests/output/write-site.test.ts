import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Effects } from '../../src/output/effects.ts';
import { MARKER } from '../../src/output/mark.ts';
import { prepareOutput, putIntoSite, reserveFor, writeSite } from '../../src/output/write-site.ts';
import { filesBelow, treeHash } from '../folder-tree.ts';
import { temporaryFolder, writeFiles } from '../small-book.ts';
import { filesOf, outputAt, passingBelow, type Texts, textsBelow } from './sites.ts';
import { on, QUICK_DISK, refusingDisk, stoppedDisk } from './stopped-disk.ts';

const ONE: Texts = { 'index.html': 'one', 'colours/alder/index.html': 'one', 'colours/alder.md': 'one' };
const TWO: Texts = { 'index.html': 'two', 'colours/sedge/index.html': 'two' };

const site = (): string => join(temporaryFolder(), 'site');

test('writeSite() makes a folder, those that it lies in, and a mark that lists the files', async () => {
  const folder = join(temporaryFolder(), 'a/b/site');
  await writeSite(filesOf(ONE), outputAt(folder));
  expect(textsBelow(folder)).toEqual(ONE);
  expect(JSON.parse(readFileSync(join(folder, MARKER), 'utf8'))).toMatchObject({
    label: 'shared',
    files: Object.keys(ONE).sort(),
  });
});

test('writeSite() copies what lies ready elsewhere, and writes bytes as they are', async () => {
  const folder = site();
  const ready = join(temporaryFolder(), 'ready');
  writeFileSync(ready, 'lies ready');
  const bytes = new Uint8Array([0, 255, 10]);
  await writeSite(
    [
      { path: 'a.webp', content: { copyOf: ready } },
      { path: 'b.bin', content: bytes },
    ],
    outputAt(folder),
  );
  expect(readFileSync(join(folder, 'a.webp'), 'utf8')).toBe('lies ready');
  expect([...readFileSync(join(folder, 'b.bin'))]).toEqual([...bytes]);
});

test('putIntoSite() replaces files of a site, says what was there, and leaves all else as it is', async () => {
  const folder = site();
  const output = outputAt(folder, { served: true });
  await writeSite(filesOf(ONE), output);
  const mark = readFileSync(join(folder, MARKER), 'utf8');
  await writeFiles(folder, { 'thesis.txt': 'years' });
  const before = await putIntoSite(filesOf({ 'index.html': 'sooner', 'thesis.txt': 'x', 'new.html': 'x' }), output);
  expect(textsBelow(folder)).toEqual({ ...ONE, 'index.html': 'sooner', 'thesis.txt': 'years' });
  expect(before.map(({ path, content }) => [path, String(content)])).toEqual([['index.html', 'one']]);
  expect(readFileSync(join(folder, MARKER), 'utf8')).toBe(mark);
  await putIntoSite(before, output);
  expect(textsBelow(folder)).toEqual({ ...ONE, 'thesis.txt': 'years' });
  await putIntoSite(filesOf({ 'index.html': 'sooner' }), output);
  await writeSite(filesOf(TWO), output);
  expect(textsBelow(folder)).toEqual({ ...TWO, 'thesis.txt': 'years' });
});

test('putIntoSite() makes no site where there is none', async () => {
  const folder = site();
  expect(await putIntoSite(filesOf(ONE), outputAt(folder, { served: true }))).toEqual([]);
  expect(existsSync(folder)).toBe(false);
});

test('putIntoSite(), stopped anywhere, is not begun or is completed by the next', async () => {
  for (let n = 1; ; n += 1) {
    const folder = site();
    const output = outputAt(folder, { served: true });
    await writeSite(filesOf(ONE), output, on(QUICK_DISK));
    const stopped = stoppedDisk(n);
    await putIntoSite(
      filesOf({ 'index.html': 'sooner', 'colours/alder.md': 'sooner' }),
      output,
      on(stopped.disk),
    ).catch(() => undefined);
    await prepareOutput(output, on(QUICK_DISK));
    const { 'index.html': index, 'colours/alder.md': alder, ...others } = textsBelow(folder);
    expect(index).toBe(alder);
    expect(others).toEqual({ 'colours/alder/index.html': 'one' });
    if (!stopped.reached()) break;
  }
});

describe.each<{ readonly way: string; readonly served: boolean; readonly theirs: Texts }>([
  { way: 'whole', served: false, theirs: {} },
  { way: 'file by file', served: true, theirs: {} },
  {
    way: "among others' files",
    served: false,
    theirs: { '.git/HEAD': 'ref', CNAME: 'book.example', 'colours/sedge/mine.txt': 'x' },
  },
])('written $way', ({ served, theirs }) => {
  test('a site takes the place of the one before, and leaves nothing of it', async () => {
    const folder = site();
    const output = outputAt(folder, { served });
    await writeSite(filesOf(ONE), output);
    await writeFiles(folder, theirs);
    await writeSite(filesOf(TWO), output);
    expect(textsBelow(folder)).toEqual({ ...TWO, ...theirs });
    expect(passingBelow(join(folder, '..'))).toEqual([]);
    // No empty folder either.
    expect(readdirSync(join(folder, 'colours'))).toEqual(['sedge']);
  });

  test('the same site again changes no byte, and where it can no time', async () => {
    const folder = site();
    const output = outputAt(folder, { served });
    await writeFiles(folder, theirs['.git/HEAD'] ? { '.git/HEAD': 'ref' } : {});
    await writeSite(filesOf(ONE), output);
    const before = treeHash(folder);
    utimesSync(join(folder, 'index.html'), 1, 1);
    await writeSite(filesOf(ONE), output);
    expect(treeHash(folder)).toBe(before);
  });

  test('a site that is refused half way leaves the one before, and nothing beside it', async () => {
    const folder = site();
    const output = outputAt(folder, { served });
    await writeSite(filesOf(ONE), output);
    await writeFiles(folder, theirs);
    const before = treeHash(join(folder, '..'));
    const full = refusingDisk((name, path) =>
      name === 'make' && !path.endsWith('.lock') && !path.endsWith('index.html') && path.match(/\/(?:1|b\.css)$/)
        ? 'ENOSPC'
        : undefined,
    );
    await expect(writeSite(filesOf({ ...TWO, 'b.css': 'x' }), output, on(full))).rejects.toThrow(
      /^The disk of .* is full\. The last site stays as it was; make room/,
    );
    expect(treeHash(join(folder, '..'))).toBe(before);
  });
});

describe('what others have put into a site', () => {
  test('stays, whatever becomes of the site round it', async () => {
    const folder = site();
    const theirs: Texts = {
      '.well-known/x': '1',
      '.htaccess': '2',
      'my-thesis.txt': '3',
      'colours/alder/notes.txt': '4',
    };
    await writeSite(filesOf(ONE), outputAt(folder));
    await writeFiles(folder, theirs);
    for (const texts of [TWO, ONE, TWO]) {
      await writeSite(filesOf(texts), outputAt(folder));
      expect(textsBelow(folder)).toEqual({ ...texts, ...theirs });
    }
  });

  test('moves over when it came in the moment in which the site was replaced', async () => {
    const folder = site();
    await writeSite(filesOf(ONE), outputAt(folder));
    const late: Effects = {
      ...QUICK_DISK,
      async rename(from, to) {
        if (from === folder) await writeFiles(folder, { 'late.txt': 'late', 'colours/alder/late.txt': 'late' });
        await QUICK_DISK.rename(from, to);
      },
    };
    await writeSite(filesOf(TWO), outputAt(folder), on(late));
    expect(textsBelow(folder)).toEqual({ ...TWO, 'late.txt': 'late', 'colours/alder/late.txt': 'late' });
  });

  test('is not written over: a site that needs its place is refused', async () => {
    const folder = site();
    await writeSite(filesOf(ONE), outputAt(folder));
    await writeFiles(folder, { 'colours/sedge/index.html': 'theirs' });
    const before = treeHash(folder);
    await expect(writeSite(filesOf(TWO), outputAt(folder))).rejects.toThrow(
      /colours\/sedge\/index\.html was not written by a build of a book\. Move it away/,
    );
    expect(treeHash(folder)).toBe(before);
  });

  test('may be a link in the place of a folder: nothing is written or removed where it leads', async () => {
    const folder = site();
    const elsewhere = temporaryFolder();
    await writeFiles(elsewhere, { 'alder/index.html': 'theirs', 'alder.md': 'theirs' });
    await writeSite(filesOf(ONE), outputAt(folder));
    rmSync(join(folder, 'colours'), { recursive: true });
    symlinkSync(elsewhere, join(folder, 'colours'));
    await expect(writeSite(filesOf(TWO), outputAt(folder))).rejects.toThrow('was not written by a build of a book');
    await writeSite(filesOf({ 'index.html': 'alone' }), outputAt(folder));
    expect(textsBelow(elsewhere)).toEqual({ 'alder/index.html': 'theirs', 'alder.md': 'theirs' });
    expect(readlinkSync(join(folder, 'colours'))).toBe(elsewhere);
  });
});

describe('a folder that was never given to a site', () => {
  test('is refused where others keep files in it, and left as it is', async () => {
    const folder = temporaryFolder();
    await writeFiles(folder, { 'taxes.txt': 'years of work' });
    await expect(prepareOutput(outputAt(folder))).rejects.toThrow('holds files that no build of a book wrote');
    await expect(writeSite(filesOf(ONE), outputAt(folder))).rejects.toThrow('put an empty file .cupbook there');
    expect(textsBelow(folder)).toEqual({ 'taxes.txt': 'years of work' });
  });

  test('takes a site among the files when an empty mark says so', async () => {
    const folder = temporaryFolder();
    await writeFiles(folder, { 'taxes.txt': 'years of work', [MARKER]: '' });
    await writeSite(filesOf(ONE), outputAt(folder));
    expect(textsBelow(folder)).toEqual({ ...ONE, 'taxes.txt': 'years of work' });
  });

  test('takes a site where only a repository and what belongs beside a site are in it', async () => {
    const folder = temporaryFolder();
    const theirs: Texts = { '.git/HEAD': 'ref', '.nojekyll': '', CNAME: 'book.example', 'robots.txt': '' };
    await writeFiles(folder, theirs);
    await writeSite(filesOf(ONE), outputAt(folder));
    expect(textsBelow(folder)).toEqual({ ...ONE, ...theirs });
  });

  test('never takes a site that is to stay alone', async () => {
    const folder = temporaryFolder();
    await writeFiles(folder, { '.git/HEAD': 'ref' });
    const writing = writeSite(filesOf(ONE), outputAt(folder, { label: 'mine', alone: true }));
    await expect(writing).rejects.toThrow(/holds other files, and your own must not come to lie among/);
    expect(textsBelow(folder)).toEqual({ '.git/HEAD': 'ref' });
  });

  test('is refused when it is a file, or has a mark of another form', async () => {
    const parent = temporaryFolder();
    await writeFiles(parent, { site: '', [`old/${MARKER}`]: 'A build replaces everything in it.' });
    await expect(prepareOutput(outputAt(join(parent, 'site')))).rejects.toThrow('is a file');
    await expect(prepareOutput(outputAt(join(parent, 'site/below')))).rejects.toThrow('Name another folder');
    await expect(prepareOutput(outputAt(join(parent, 'old')))).rejects.toThrow('another version of Cupbook');
  });
});

describe('a folder that somebody else has made', () => {
  const OUTSIDE: Texts = { 'home/kept.txt': 'kept' };
  /** As a writer leaves it that was killed long ago, on another machine. */
  const LEFT = 'site/.cupbook-00000000-1-t0-1.tmp';

  async function made(files: Texts): Promise<{ readonly parent: string; readonly folder: string }> {
    const parent = temporaryFolder();
    await writeFiles(parent, { ...OUTSIDE, ...files });
    if (existsSync(join(parent, LEFT))) utimesSync(join(parent, LEFT), 0, 0);
    return { parent, folder: join(parent, 'site') };
  }

  test.each(['../home/kept.txt', 'a/../../home/kept.txt', '/home/kept.txt', '', '..'])(
    'has a mark that leads out of it refused: %s',
    async (path) => {
      const { parent, folder } = await made({ [`site/${MARKER}`]: JSON.stringify({ label: 'shared', files: [path] }) });
      await expect(writeSite(filesOf(ONE), outputAt(folder))).rejects.toThrow('has been changed');
      expect(readFileSync(join(parent, 'home/kept.txt'), 'utf8')).toBe('kept');
    },
  );

  test.each([
    { put: [{ path: '../home/kept.txt', fresh: false }], stale: [] },
    { put: [], stale: ['../home/kept.txt'] },
    { put: [{ path: 3, fresh: false }], stale: [] },
    { put: {}, stale: [] },
    [],
  ])('has a journal that leads out of it refused: %j', async (journal) => {
    const { parent, folder } = await made({
      [`${LEFT}/0`]: 'theirs',
      [`${LEFT}/mark`]: '',
      [`${LEFT}/journal.json`]: JSON.stringify(journal),
    });
    await expect(prepareOutput(outputAt(folder))).rejects.toThrow('was not left by a build of a book');
    expect(readFileSync(join(parent, 'home/kept.txt'), 'utf8')).toBe('kept');
  });

  test('has nothing written or removed behind a link in it', async () => {
    const { parent, folder } = await made({
      [`${LEFT}/0`]: 'theirs',
      [`${LEFT}/mark`]: '',
      [`${LEFT}/journal.json`]: JSON.stringify({ put: [{ path: 'a/new.txt', fresh: true }], stale: ['a/kept.txt'] }),
    });
    symlinkSync(join(parent, 'home'), join(folder, 'a'));
    utimesSync(join(parent, LEFT), 0, 0);
    await expect(prepareOutput(outputAt(folder))).rejects.toThrow('has been left alone');
    expect(readdirSync(join(parent, 'home'))).toEqual(['kept.txt']);
    writeFileSync(join(parent, LEFT, 'journal.json'), JSON.stringify({ put: [], stale: ['a/kept.txt'] }));
    utimesSync(join(parent, LEFT), 0, 0);
    await prepareOutput(outputAt(folder));
    expect(readdirSync(join(parent, 'home'))).toEqual(['kept.txt']);
  });
});

test('one site never takes the place of another', async () => {
  const folder = site();
  await writeSite(filesOf(ONE), outputAt(folder, { label: 'mine' }));
  await expect(writeSite(filesOf(TWO), outputAt(folder))).rejects.toThrow(
    /holds your own, and this would put the shared one in its place\. Name another folder with --output\.$/,
  );
  expect(textsBelow(folder)).toEqual(ONE);
});

describe('a folder that is named by a link', () => {
  test('is written to where the link leads, and the link stays', async () => {
    const parent = temporaryFolder();
    mkdirSync(join(parent, 'real'));
    symlinkSync(join(parent, 'real'), join(parent, 'current'));
    for (const texts of [ONE, TWO]) {
      await writeSite(filesOf(texts), outputAt(join(parent, 'current')));
      expect(readlinkSync(join(parent, 'current'))).toBe(join(parent, 'real'));
      expect(textsBelow(join(parent, 'real'))).toEqual(texts);
    }
  });

  test('is refused where the link leads nowhere, or back to itself', async () => {
    const parent = temporaryFolder();
    symlinkSync(join(parent, 'gone'), join(parent, 'current'));
    symlinkSync(join(parent, 'round'), join(parent, 'round'));
    await expect(prepareOutput(outputAt(join(parent, 'current')))).rejects.toThrow(
      'is a link to a folder that is not there',
    );
    await expect(prepareOutput(outputAt(join(parent, 'round')))).rejects.toThrow('leads back to itself');
  });

  test('is refused where it leads into the sources, as is a folder round them', async () => {
    const parent = temporaryFolder();
    await writeFiles(parent, { 'book/book.md': '' });
    symlinkSync(join(parent, 'book'), join(parent, 'lnk'));
    const sources = join(parent, 'book');
    for (const folder of ['lnk/site', 'lnk', 'book/site', '.', 'book']) {
      await expect(prepareOutput(outputAt(join(parent, folder), { sources })), folder).rejects.toThrow(
        'Name a folder apart from it',
      );
    }
    for (const folder of ['book-site', '..book', 'other/book']) {
      await expect(prepareOutput(outputAt(join(parent, folder), { sources })), folder).resolves.toBeUndefined();
    }
    expect(filesBelow(parent)).toEqual(['book/book.md']);
  });
});

describe('where the system will not', () => {
  test.each(['EBUSY', 'EXDEV', 'EACCES', 'EPERM'])(
    'rename a folder (%s), as at a mount point, it is written file by file',
    async (code) => {
      const folder = site();
      await writeSite(filesOf(ONE), outputAt(folder));
      const disk = refusingDisk((name, path) => (name === 'rename' && path === folder ? code : undefined));
      await writeSite(filesOf(TWO), outputAt(folder), on(disk));
      expect(textsBelow(folder)).toEqual(TWO);
      expect(passingBelow(join(folder, '..'))).toEqual([]);
    },
  );

  test.each(['EACCES', 'EROFS'])('make anything beside a folder (%s), it is written file by file', async (code) => {
    const folder = site();
    await writeSite(filesOf(ONE), outputAt(folder));
    const disk = refusingDisk((name, path) =>
      name === 'makeFolder' && !path.startsWith(`${folder}/`) ? code : undefined,
    );
    await writeSite(filesOf(TWO), outputAt(folder), on(disk));
    expect(textsBelow(folder)).toEqual(TWO);
  });

  test.each(['EACCES', 'EPERM'])(
    'look into the folder that a site lies in (%s), it is written all the same',
    async (code) => {
      const folder = site();
      const disk = refusingDisk((name, path) => (name === 'list' && path === dirname(folder) ? code : undefined));
      for (const texts of [ONE, TWO]) {
        await prepareOutput(outputAt(folder), on(disk));
        await writeSite(filesOf(texts), outputAt(folder), on(disk));
        expect(textsBelow(folder)).toEqual(texts);
      }
      expect(passingBelow(dirname(folder))).toEqual([]);
    },
  );

  test.each([
    ['EROFS', 'its disk is read-only'],
    ['EACCES', 'You may not write to'],
    ['EDQUOT', 'used up your share'],
    ['EXDEV', 'lies on another disk'],
  ])('write at all (%s), that is said, with the cure', async (code, said) => {
    const folder = site();
    const disk = refusingDisk((name) => (name === 'make' || name === 'makeFolder' ? code : undefined));
    await expect(writeSite(filesOf(ONE), outputAt(folder), on(disk))).rejects.toThrow(said);
    await expect(writeSite(filesOf(ONE), outputAt(folder), on(disk))).rejects.toThrow('--output');
  });
});

test.skipIf(process.getuid?.() === 0 || process.platform === 'win32')(
  'prepareOutput() says before anything is made that a folder cannot be written to (not asked of root, who may write anywhere)',
  async () => {
    const parent = temporaryFolder();
    chmodSync(parent, 0o500);
    await expect(prepareOutput(outputAt(join(parent, 'a/site')))).rejects.toThrow('You may not write to');
  },
);

describe('what killed writers have left', () => {
  const gone = (): string => {
    const { pid } = spawnSync(process.execPath, ['--version']);
    return `site.cupbook-${machine()}-${pid}-t0-1.tmp`;
  };
  /** Of this machine, as the names of writers have it. */
  let known: string | undefined;
  const machine = (): string => known ?? '';

  test('goes, but nothing of a running one, of another machine while it is touched, or of somebody else', async () => {
    const parent = temporaryFolder();
    await on(QUICK_DISK)(async ({ writer }) => {
      known = writer.machine;
      const { machine: here, pid, start, count } = writer;
      const names = {
        running: `site.cupbook-${here}-${pid}-${start}-${count}.tmp`,
        // The same number, given to another process since.
        reused: `site.cupbook-${here}-${pid}-t1-${count}.tmp`,
        dead: gone(),
        elsewhere: `site.cupbook-00000000-7-t1-1.tmp`,
        longAgo: `site.cupbook-00000000-8-t1-1.tmp`,
        otherSite: gone().replace('site', 'other'),
      };
      for (const name of Object.values(names)) mkdirSync(join(parent, name, 'next'), { recursive: true });
      utimesSync(join(parent, names.longAgo), 1, 1);
      await writeFiles(parent, { 'site.next-1.tmp/mine.txt': '' });
      await prepareOutput(outputAt(join(parent, 'site')));
      expect(readdirSync(parent).sort()).toEqual(
        [names.running, names.elsewhere, names.otherSite, 'site.next-1.tmp'].sort(),
      );
    });
  });
});

test('many writers at once end with the site of one of them, whole, and nothing beside it', async () => {
  const parent = temporaryFolder();
  const folder = join(parent, 'site');
  for (let round = 0; round < 6; round += 1) {
    const sites = Array.from({ length: 5 }, (_, index) =>
      Object.fromEntries(
        ['index.html', `page-${index}/index.html`, 'a/b/c.html'].map((path) => [path, `${round} ${index}`]),
      ),
    );
    const ended = await Promise.allSettled(
      sites.map((texts, index) =>
        writeSite(filesOf(texts), outputAt(folder, { served: index % 2 === 1 }), on(QUICK_DISK)),
      ),
    );
    expect(ended.filter(({ status }) => status === 'rejected')).toEqual([]);
    expect(sites).toContainEqual(textsBelow(folder));
    expect(passingBelow(parent)).toEqual([]);
  }
});

describe('reserveFor(paths)', () => {
  test('lists files before another program writes them, so that they are the site\u2019s', async () => {
    const folder = site();
    const output = outputAt(folder);
    await reserveFor(['index.html', 'colours/alder/index.html'], output);
    expect(readdirSync(join(folder, 'colours/alder'))).toEqual([]);
    await writeFiles(folder, { 'index.html': 'by itself', 'colours/alder/index.html': 'by itself' });
    await writeSite(filesOf({ 'index.html': 'by itself' }), { ...output, served: true });
    expect(textsBelow(folder)).toEqual({ 'index.html': 'by itself' });
  });

  test('refuses a folder with others\u2019 files in it', async () => {
    const folder = site();
    await writeSite(filesOf(ONE), outputAt(folder));
    await writeFiles(folder, { '.git/HEAD': 'ref' });
    await expect(reserveFor(['index.html'], outputAt(folder))).rejects.toThrow(/holds other files, such as \.git,/);
  });
});
