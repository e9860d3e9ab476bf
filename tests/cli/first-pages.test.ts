import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { renderedSite } from '../../src/cli/run-eleventy.ts';
import type { FirstFiles } from '../../src/eleventy/plugin.ts';
import type { SiteFile } from '../../src/output/site-file.ts';
import { treeHash } from '../folder-tree.ts';
import { SMALL_BOOK, smallBook } from '../small-book.ts';
import { leaveAsFound } from './leave-as-found.ts';
import { serve } from './serving.ts';

leaveAsFound();

const LOOKED = SMALL_BOOK['colours/bog-pool.md']!.replace(
  / {4}add:\n.*\n/,
  '    log:\n      - { add: { peat: 12 drops }, pour: 10 ml, seen: { over-white: "#8a6a3f" } }\n',
);
const PAGE = 'colours/bog-pool/index.html';

test('after another look the own page comes first; then all is as in a build from the beginning', async () => {
  const book = await smallBook({
    'colours/bog-pool.md': LOOKED,
    'colours/reed.md': LOOKED.replace('Bog Pool', 'Reed'),
  });
  const file = join(book, 'colours/bog-pool.md');
  const first: SiteFile[] = [];
  const onFirst = async ({ pages }: FirstFiles): Promise<void> => {
    first.push(...pages);
  };
  const rendered = () => renderedSite({ recipes: book, edition: 'mine', onFirst });
  const textOf = (files: readonly SiteFile[]): string => String(files.find(({ path }) => path === PAGE)!.content);
  const before = textOf((await rendered()).files);
  expect(first).toEqual([]);

  // Two edits, one after the other.
  for (const hex of ['#94703c', '#7d6138']) {
    writeFileSync(file, LOOKED.replace('#8a6a3f', hex));
    const { files } = await rendered();
    const own = first.splice(0);
    expect(own.map(({ path }) => path)).toEqual([PAGE]);
    expect(textOf(own)).toContain(hex);
    expect(before).not.toContain(hex);
    // Another book has no memory of this one.
    const clean = await smallBook({
      'colours/bog-pool.md': readFileSync(file, 'utf8'),
      'colours/reed.md': LOOKED.replace('Bog Pool', 'Reed'),
    });
    await renderedSite({ recipes: await smallBook(), edition: 'mine' });
    const anew = (await renderedSite({ recipes: clean, edition: 'mine' })).files;
    const texts = (all: readonly SiteFile[]) =>
      all.flatMap(({ path, content }) => (typeof content === 'string' ? [`${path}\n${content}`] : [])).sort();
    expect(texts(files)).toEqual(texts(anew));
    await rendered();
    first.splice(0);
  }

  // Words alone, and a mistake, take the usual way.
  writeFileSync(file, `${readFileSync(file, 'utf8')}More.\n`);
  await rendered();
  expect(first).toEqual([]);
  writeFileSync(file, LOOKED.replace('#8a6a3f', '#8a6a3'));
  await expect(rendered()).rejects.toThrow('The book has errors');
  expect(first).toEqual([]);
  // After a book with errors there is nothing to go on from.
  writeFileSync(file, LOOKED);
  await rendered();
  expect(first).toEqual([]);
});

test('what came first goes back if the book then has errors, and open pages are told of both', async () => {
  const { book, address, site, child, said } = await serve(
    await smallBook({
      'colours/bog-pool.md': LOOKED,
      'colours/hollow.md': LOOKED.replace('Bog Pool', 'Hollow Way').replace('pattern', 'publish: no\npattern'),
    }),
  );
  await expect.poll(said).toContain('The book is open at');
  const before = treeHash(site);
  const told: string[] = [];
  const stop = new AbortController();
  const { body } = await fetch(`${address}.serve/changes`, { signal: stop.signal });
  const follow = async (): Promise<void> => {
    for await (const part of body!.pipeThrough(new TextDecoderStream()))
      told.push(...(part.match(/^data: .*$/gm) ?? []));
  };
  follow().catch(() => undefined);
  await expect.poll(() => told.length).toBe(1);

  // Only the whole book knows that a name is not published.
  writeFileSync(
    join(book, 'colours/bog-pool.md'),
    LOOKED.replace('#8a6a3f', '#94703c').replace('Dark.', 'Darker than Hollow Way.'),
  );
  await expect.poll(said).toContain('publish/named');
  await expect.poll(() => told.length).toBe(3);
  expect(treeHash(site)).toBe(before);

  writeFileSync(join(book, 'colours/bog-pool.md'), LOOKED.replace('#8a6a3f', '#94703c'));
  await expect.poll(() => readFileSync(join(site, PAGE), 'utf8')).toContain('#94703c');
  stop.abort();
  child.kill('SIGINT');
});
