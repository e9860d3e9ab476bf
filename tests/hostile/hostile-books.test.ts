import { expect, test } from 'vitest';
import { comparableName, unportable } from '../../src/recipe/portable-name.ts';
import { loadWholeBook } from '../../src/shell/load-book.ts';
import { photoOpener } from '../../src/shell/open-photos.ts';
import { temporaryFolder } from '../small-book.ts';
import { FILE_BOOKS, LINK_BOOKS } from './cases/files.ts';
import { MARKUP_BOOKS } from './cases/markup.ts';
import { NAME_BOOKS } from './cases/names.ts';
import { NUMBER_BOOKS } from './cases/numbers.ts';
import { PICTURE_BOOKS } from './cases/pictures.ts';
import { RING_BOOKS } from './cases/rings.ts';
import { YAML_BOOKS } from './cases/yaml.ts';
import type { HostileBook } from './hostile-book.ts';
import { bounded, faultsOf, faultsOfSite } from './judge.ts';
import { type HostileFiles, writeBook } from './sound-book.ts';

/** Those of which every page is rendered, too, where they build; in `npm run laws` it is all of them. */
const RENDERED: ReadonlySet<string> = new Set(MARKUP_BOOKS.map(([name]) => name));

const ALL = process.env.LAWS_SEED !== undefined;

async function tryBook(name: string, files: HostileFiles, told: HostileBook[2]): Promise<void> {
  const folder = temporaryFolder();
  writeBook(folder, files);
  await bounded(async () => {
    const tried = await loadWholeBook(folder, photoOpener());
    expect([...new Set(tried.diagnostics.map(({ code }) => code))].sort().join()).toBe(
      told === 'builds' ? '' : [...told].sort().join(),
    );
    expect(faultsOf(tried)).toEqual([]);
    if (ALL || RENDERED.has(name)) expect((await faultsOfSite(tried, 'shared')).join('\n')).toBe('');
    if (ALL) expect((await faultsOfSite(tried, 'mine')).join('\n')).toBe('');
  });
}

const BOOKS: readonly HostileBook[] = [
  ...YAML_BOOKS,
  ...MARKUP_BOOKS,
  ...NAME_BOOKS,
  ...NUMBER_BOOKS,
  ...RING_BOOKS,
  ...PICTURE_BOOKS,
  ...FILE_BOOKS,
];

/** Whether a disk of Windows can hold the files of a book. */
function fitsWindows(files: HostileFiles): boolean {
  const paths = Object.keys(files);
  return (
    new Set(paths.map(comparableName)).size === paths.length &&
    paths.every((path) => path.split('/').every((name) => unportable(name) === undefined))
  );
}

if (process.platform === 'win32') {
  test.each(BOOKS.filter(([, files]) => fitsWindows(files)))('%s', tryBook);
  test.skip('links and pipes (skipped: on Windows only an administrator makes them)', () => {});
  test.skip('names that Windows cannot hold (skipped: no disk here holds them)', () => {});
} else test.each([...BOOKS, ...LINK_BOOKS])('%s', tryBook);
