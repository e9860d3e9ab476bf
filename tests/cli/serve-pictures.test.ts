import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { filesBelow } from '../folder-tree.ts';
import { smallBook, temporaryFolder } from '../small-book.ts';
import { leaveAsFound } from './leave-as-found.ts';
import { runHere } from './run-here.ts';
import { get, serve } from './serving.ts';

leaveAsFound();

const PICTURE = 'colours/bog-pool/bait.webp';

test('serve draws a picture when it is asked for, as a build has it, and anew after an edit', async () => {
  const cache = temporaryFolder();
  const { book, address, site, said } = await serve(await smallBook(), [], undefined, cache);
  await expect.poll(said).toContain('The book is open at');
  const kept = join(cache, 'cupbook/pictures');
  expect(filesBelow(site).filter((path) => path.endsWith('.webp'))).toEqual([]);
  expect(readdirSync(kept)).toEqual([]);

  const fetched = async (etag?: string) => {
    const response = await fetch(address + PICTURE, {
      // As a browser asks; else `fetch` would say that it takes nothing old.
      headers: etag === undefined ? {} : { 'if-none-match': etag, 'cache-control': 'max-age=0' },
    });
    return { response, bytes: Buffer.from(await response.arrayBuffer()) };
  };
  const { response, bytes } = await fetched();
  expect([response.status, response.headers.get('content-type')]).toEqual([200, 'image/webp']);
  // It is asked for again at each load: what has changed is seen at once.
  expect(response.headers.get('cache-control')).toBe('no-cache');
  expect((await fetched(response.headers.get('etag')!)).response.status).toBe(304);
  expect(await sharp(bytes).metadata()).toMatchObject({ width: 990, format: 'webp' });
  expect(readdirSync(kept)).toHaveLength(1);
  expect((await get(`${address}colours/none-such/bait.webp`)).status).toBe(404);

  const clean = join(temporaryFolder(), 'site');
  expect(await runHere(['build', '--recipes', book, '--output', clean])).toMatchObject({ code: 0 });
  expect(readFileSync(join(clean, PICTURE)).equals(bytes)).toBe(true);

  const file = join(book, 'colours/bog-pool.md');
  writeFileSync(file, readFileSync(file, 'utf8').replace('12 drops', '2 drops'));
  await expect.poll(async () => (await fetched()).bytes.equals(bytes)).toBe(false);
  expect(said()).not.toContain('could not be drawn');
});
