import { expect, test } from 'vitest';
import { loadBook } from '../../src/eleventy/load-book.ts';
import { temporaryFolder } from '../small-book.ts';
import { YAML_BOOKS } from './cases/yaml.ts';
import type { HostileBook } from './hostile-book.ts';
import { bounded, faultsOf, faultsOfSite } from './judge.ts';
import { writeBook } from './sound-book.ts';

const BOOKS: readonly HostileBook[] = [...YAML_BOOKS];

test.each(BOOKS)('%s', async (_, files, told) => {
  const folder = temporaryFolder();
  writeBook(folder, files);
  await bounded(async () => {
    const tried = loadBook(folder);
    expect([...new Set(tried.diagnostics.map(({ code }) => code))].sort()).toEqual(
      told === 'builds' ? [] : [...told].sort(),
    );
    expect(faultsOf(tried)).toEqual([]);
    expect(await faultsOfSite(tried)).toEqual([]);
  });
});
