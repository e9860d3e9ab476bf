import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { SiteFile } from '../../src/output/site-file.ts';
import { loadBook } from '../../src/shell/load-book.ts';
import { filesBelow } from '../folder-tree.ts';
import { ROOT, runCupbook } from '../run-cupbook.ts';
import { smallBook, temporaryFolder } from '../small-book.ts';
import { siteFiles } from './site-files.ts';

const hash = (bytes: string | Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const bytesOf = ({ content }: SiteFile): string | Uint8Array =>
  typeof content === 'string' || content instanceof Uint8Array ? content : readFileSync(content.copyOf);

test('siteFiles(book, edition) gives exactly what a build writes', async () => {
  const recipes = await smallBook();
  const output = join(temporaryFolder(), 'site');
  await runCupbook(['build', '--recipes', recipes, '--output', output]);
  const files = await siteFiles(loadBook(recipes).book!, 'shared', { root: ROOT, recipes, cache: temporaryFolder() });
  const written = filesBelow(output).filter((path) => path !== '.cupbook');
  expect(files.map(({ path }) => path).sort()).toEqual(written);
  expect(Object.fromEntries(files.map((file) => [file.path, hash(bytesOf(file))]))).toEqual(
    Object.fromEntries(written.map((path) => [path, hash(readFileSync(join(output, path)))])),
  );
});
