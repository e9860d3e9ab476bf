import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { searchIndexer, writeSearchIndex } from '../../src/eleventy/search-index.ts';
import type { SearchRecord } from '../../src/render/page.ts';
import { filesBelow } from '../folder-tree.ts';
import { temporaryFolder } from '../small-book.ts';

const record = (title: string): SearchRecord => ({
  url: `colours/${title}/`,
  content: `${title} of the river`,
  language: 'en',
  meta: { title },
  filters: { kind: ['recipe'] },
  sort: { title },
});

const fragments = (output: string): readonly string[] =>
  filesBelow(output)
    .filter((path) => path.endsWith('.pf_fragment'))
    .map((path) => gunzipSync(readFileSync(join(output, path))).toString());

test('writeSearchIndex(records) holds every record, and no interface of its own', async () => {
  const output = temporaryFolder();
  await writeSearchIndex([record('alder'), record('sedge')], output);
  const text = fragments(output).join('\n');
  expect(text).toContain('alder of the river');
  expect(text).toContain('sedge of the river');
  const files = filesBelow(output);
  expect(files).toContain('pagefind/pagefind.js');
  expect(files.filter((path) => /ui|highlight/.test(path))).toEqual([]);
});

test('writeSearchIndex(records) leaves nothing of the index that it replaces', async () => {
  const output = temporaryFolder();
  await writeSearchIndex([record('alder')], output);
  await writeSearchIndex([record('sedge')], output);
  expect(fragments(output).join('\n')).not.toContain('alder');
  expect(fragments(output)).toHaveLength(1);
});

test('writeSearchIndex(records) fails when a record is refused', async () => {
  const nameless = { ...record('alder'), language: undefined as unknown as string };
  await expect(writeSearchIndex([nameless], temporaryFolder())).rejects.toThrow('missing field `language`');
});

test('searchIndexer() writes the first index at once, later ones only for other records and after a pause', async () => {
  const output = temporaryFolder();
  const errors: unknown[] = [];
  const indexer = searchIndexer(1500, (error) => errors.push(error));
  indexer.update([record('alder')], output);
  await indexer.first;
  const before = fragments(output).join('\n');
  expect(before).toContain('alder');

  indexer.update([record('sedge')], output);
  indexer.update([record('willow')], output);
  await indexer.first;
  expect(fragments(output).join('\n')).toBe(before);
  // Until the swap the next index stands beside the one that it replaces.
  await expect.poll(() => fragments(output)).toEqual([expect.stringContaining('willow')]);
  expect(errors).toEqual([]);
});
