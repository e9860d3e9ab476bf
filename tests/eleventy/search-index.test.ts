import { gunzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { searchIndex } from '../../src/eleventy/search-index.ts';
import type { SiteFile } from '../../src/output/site-file.ts';
import type { SearchRecord } from '../../src/render/page.ts';

const record = (title: string): SearchRecord => ({
  url: `colours/${title}/`,
  content: `${title} of the river`,
  language: 'en',
  meta: { title },
  filters: { kind: ['recipe'] },
  sort: { title },
});

const fragments = (files: readonly SiteFile[]): readonly string[] =>
  files
    .filter(({ path }) => path.endsWith('.pf_fragment'))
    .map(({ content }) => gunzipSync(content as Uint8Array).toString());

test('searchIndex(records) holds every record, and no interface of its own', async () => {
  const files = await searchIndex([record('alder'), record('sedge')]);
  const text = fragments(files).join('\n');
  expect(text).toContain('alder of the river');
  expect(text).toContain('sedge of the river');
  const paths = files.map(({ path }) => path);
  expect(paths).toContain('pagefind/pagefind.js');
  expect(paths.filter((path) => /ui|highlight/.test(path))).toEqual([]);
});

test('searchIndex(records) gives the file by which a search begins last', async () => {
  expect((await searchIndex([record('alder')])).at(-1)!.path).toBe('pagefind/pagefind-entry.json');
});

test('searchIndex(records) knows nothing of the records of before', async () => {
  await searchIndex([record('alder')]);
  const after = await searchIndex([record('sedge')]);
  expect(fragments(after).join('\n')).not.toContain('alder');
  expect(fragments(after)).toHaveLength(1);
});

test('searchIndex(records) fails when a record is refused', async () => {
  const nameless = { ...record('alder'), language: undefined as unknown as string };
  await expect(searchIndex([nameless])).rejects.toThrow('missing field `language`');
});
