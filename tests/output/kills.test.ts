import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { MARKER } from '../../src/output/mark.ts';
import { prepareOutput, writeSite } from '../../src/output/write-site.ts';
import { temporaryFolder, writeFiles } from '../small-book.ts';
import { filesOf, outputAt, passingBelow, type Texts, textsBelow } from './sites.ts';
import { Killed, on, QUICK_DISK, stoppedDisk } from './stopped-disk.ts';

const OLD: Texts = {
  'a.css': 'old',
  'index.html': 'old',
  'gone/index.html': 'old',
  'both/x.html': 'same',
  turned: 'file',
};
const NEW: Texts = {
  'a.css': 'new style',
  'both/x.html': 'same',
  'fresh/deep/index.html': 'new page',
  'turned/index.html': 'now a folder',
  'index.html': 'new page',
};
const NEXT: Texts = { 'index.html': 'after that', 'a.css': 'after that' };
const THEIRS: Texts = {
  '.git/config': 'theirs',
  CNAME: 'book.example',
  'both/notes.txt': 'theirs',
  'thesis.txt': 'years',
};

interface Case {
  readonly what: string;
  readonly before: Texts | undefined;
  readonly theirs: Texts;
  readonly served?: boolean;
}

const CASES: readonly Case[] = [
  { what: 'a site in a folder of its own', before: OLD, theirs: {} },
  { what: 'the first site', before: undefined, theirs: {} },
  { what: "a site among others' files", before: OLD, theirs: THEIRS },
  { what: "the first site among others' files", before: undefined, theirs: { '.git/config': 'theirs', CNAME: 'x' } },
  { what: 'a site that is served', before: OLD, theirs: {}, served: true },
  { what: 'the first site that is served', before: undefined, theirs: {}, served: true },
];

/** A folder with a site in it as a case begins. */
async function begun({ before, theirs }: Case): Promise<{ readonly parent: string; readonly folder: string }> {
  const parent = temporaryFolder();
  const folder = join(parent, 'site');
  if (before) await writeSite(filesOf(before), outputAt(folder), on(QUICK_DISK));
  if (Object.keys(theirs).length > 0) mkdirSync(folder, { recursive: true });
  await writeFiles(folder, theirs);
  return { parent, folder };
}

/** What is in the folder besides the last site or the new one; its files as the mark lists them. */
function siteIn(folder: string, theirs: Texts): Texts {
  const all = textsBelow(folder);
  return Object.fromEntries(Object.entries(all).filter(([path]) => !(path in theirs)));
}

const listed = (folder: string): readonly string[] =>
  existsSync(join(folder, MARKER))
    ? (JSON.parse(readFileSync(join(folder, MARKER), 'utf8')) as { files: string[] }).files
    : [];

describe.each(CASES)('a run that is killed while it writes $what', (one) => {
  const { before, theirs, served = false } = one;

  test('at any step loses nothing: the next one finds the old site or the new one, whole', async () => {
    let steps = 0;
    const seen = new Set<string>();
    for (let n = 1; ; n += 1) {
      const { parent, folder } = await begun(one);
      const output = outputAt(folder, { served });
      const { disk, reached } = stoppedDisk(n);
      await writeSite(filesOf(NEW), output, on(disk)).catch((error: unknown) => {
        if (!(error instanceof Killed)) throw error;
      });
      for (const [path, text] of Object.entries(theirs))
        expect(textsBelow(folder)[path], `${path}, step ${n}`).toBe(text);
      await prepareOutput(output, on(QUICK_DISK));
      const site = siteIn(folder, theirs);
      const which = site['index.html'] === NEW['index.html'] ? 'new' : 'old';
      seen.add(which);
      expect(site, `after step ${n}`).toEqual(which === 'new' ? NEW : (before ?? {}));
      expect(listed(folder), `after step ${n}`).toEqual(Object.keys(site).sort());
      expect(textsBelow(folder)).toMatchObject(theirs);
      expect(passingBelow(parent), `after step ${n}`).toEqual([]);

      await writeSite(filesOf(NEXT), output, on(QUICK_DISK));
      expect(siteIn(folder, theirs)).toEqual(NEXT);
      expect(textsBelow(folder)).toMatchObject(theirs);
      if (!reached()) break;
      steps = n;
    }
    // Else nothing was killed, or never late enough.
    expect(steps).toBeGreaterThan(15);
    expect([...seen].sort()).toEqual(['new', 'old']);
  });
});

test.each([CASES[0]!, CASES[2]!])(
  'a run that is killed while it writes $what, and killed again while it is put in order, loses nothing',
  async (one) => {
    const { before, theirs, served = false } = one;
    for (let n = 2; ; n += 4) {
      const { disk, reached } = stoppedDisk(n);
      let again = true;
      for (let m = 1; again; m += 3) {
        const { parent, folder } = await begun(one);
        const output = outputAt(folder, { served });
        await writeSite(filesOf(NEW), output, on(m === 1 ? disk : stoppedDisk(n).disk)).catch(() => undefined);
        const second = stoppedDisk(m);
        await prepareOutput(output, on(second.disk)).catch((error: unknown) => {
          if (!(error instanceof Killed)) throw error;
        });
        await prepareOutput(output, on(QUICK_DISK));
        const site = siteIn(folder, theirs);
        const which = site['index.html'] === NEW['index.html'] ? NEW : (before ?? {});
        expect(site, `after steps ${n} and ${m}`).toEqual(which);
        expect(textsBelow(folder)).toMatchObject(theirs);
        expect(passingBelow(parent)).toEqual([]);
        again = second.reached();
      }
      if (!reached()) break;
    }
  },
);
