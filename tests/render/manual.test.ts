import { existsSync, readdirSync } from 'node:fs';
import { join, posix } from 'node:path';
import { describe, expect, test } from 'vitest';
import { headingId } from '../../src/render/manual/manual-html.ts';
import { MANUAL } from '../../src/render/pages/manual.ts';
import { PAGES } from '../../src/render/pages.ts';
import { projectFile } from '../book/sample.ts';
import { ROOT } from '../run-cupbook.ts';
import { faultsOf } from './html-faults.ts';
import { MAKERS_BOOK, pageOf, SAMPLE_BOOK } from './sample-book.ts';

const TEXTS = ['README.md', ...MANUAL.map((name) => `site/manual/${name}.md`)];

/** A text without its examples. */
const proseOf = (path: string): string => projectFile(path).replace(/^ *```[\s\S]*?^ *```/gm, '');
const idsOf = (path: string): readonly string[] =>
  [...proseOf(path).matchAll(/^#+ (.+)$/gm)].map(([, heading]) => headingId(heading!));

test('the manual has the pages that are in its folder, and no other', () => {
  const files = readdirSync(join(ROOT, 'site/manual')).filter((name) => name.endsWith('.md'));
  expect(files.sort()).toEqual(MANUAL.map((name) => `${name}.md`).sort());
});

test.each(TEXTS)('every link of %s leads to a file that is there, and to a heading that it has', (path) => {
  const links = [...proseOf(path).matchAll(/\]\(([^)\s]+)\)/g)].map(([, href]) => href!);
  const wrong = links.filter((href) => {
    if (/^https?:/.test(href)) return false;
    const [file = '', fragment] = href.split('#');
    const target = file === '' ? path : posix.join(posix.dirname(path), file);
    if (!existsSync(join(ROOT, target))) return true;
    return fragment !== undefined && !idsOf(target).includes(fragment);
  });
  expect(wrong).toEqual([]);
});

test('the README is read in a few minutes, and leads to every page of the manual', () => {
  const readme = projectFile('README.md');
  expect(readme.split('\n').length).toBeLessThanOrEqual(150);
  expect(MANUAL.filter((name) => !readme.includes(`(site/manual/${name}.md)`))).toEqual([]);
});

describe('in a book', () => {
  const manualIn = (book: typeof SAMPLE_BOOK): readonly string[] =>
    PAGES.filter(({ kind }) => kind.startsWith('manual')).flatMap((page) => page.items(book).map(page.url));

  test('only the maker’s edition has the manual', async () => {
    expect(manualIn(SAMPLE_BOOK)).toEqual([]);
    expect(manualIn(MAKERS_BOOK)).toHaveLength(MANUAL.length + 1);
    expect(await pageOf('home', '', SAMPLE_BOOK)).not.toContain('Manual');
    expect(await pageOf('home', '', MAKERS_BOOK)).toContain('>Manual</a>');
  });

  test('a page links to other pages of the manual, to its headings, and to no file of the program', async () => {
    const page = await pageOf('manual-text', 'matching', MAKERS_BOOK);
    expect(page).toContain('href="../../manual/files/#targetsmd"');
    const ids = [...(await pageOf('manual-text', 'files', MAKERS_BOOK)).matchAll(/<h\d id="([^"]+)"/g)];
    expect(ids.map(([, id]) => id)).toContain('targetsmd');
    expect(await pageOf('manual-text', 'data', MAKERS_BOOK)).toContain('<span><code>src/book/model.ts</code></span>');
  });
});

test('an id of a heading is the one that a code host gives it', () => {
  expect(headingId('What a look keeps secret')).toBe('what-a-look-keeps-secret');
  expect(headingId('`colours/*.md`, the recipes')).toBe('coloursmd-the-recipes');
});

test.each(['manual', 'manual-text'])('pages of the kind %s are valid HTML', async (kind) => {
  const items = PAGES.find((page) => page.kind === kind)!.items(MAKERS_BOOK);
  for (const item of items) expect(await faultsOf(await pageOf(kind, item, MAKERS_BOOK)), item).toEqual([]);
});
