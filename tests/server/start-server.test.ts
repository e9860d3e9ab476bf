import { rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { freePort } from '../free-port.ts';
import { HAS_IPV6, page, servedSite } from './served-site.ts';

test('startServer shows the pages and files of the maker’s edition to this machine', async () => {
  const { server } = await servedSite();
  const home = await fetch(server.url);
  expect(home.status).toBe(200);
  expect(home.headers.get('content-type')).toBe('text/html; charset=utf-8');
  expect(await home.text()).toContain('Home of mine');
  expect(await (await fetch(`${server.url}colours/bog-pool/?glow=1`)).text()).toContain('Bog Pool of mine');

  const slash = await fetch(`${server.url}colours/bog-pool?glow=1`, { redirect: 'manual' });
  expect([slash.status, slash.headers.get('location')]).toEqual([302, '/colours/bog-pool/?glow=1']);
});

test.each([
  ['assets/find-2CW3AB7Z.js', 'text/javascript; charset=utf-8'],
  ['book.json', 'application/json; charset=utf-8'],
  ['colours/bog-pool.md', 'text/markdown; charset=utf-8'],
  ['icon.svg', 'image/svg+xml'],
  ['pagefind/wasm.en.pagefind', 'application/octet-stream'],
])('startServer sends %s as %s, and a browser must not guess', async (path, type) => {
  const { server } = await servedSite();
  const { status, headers } = await fetch(server.url + path);
  expect([status, headers.get('content-type'), headers.get('x-content-type-options')]).toEqual([200, type, 'nosniff']);
});

test('startServer follows every change of the folder', async () => {
  const { server, mine } = await servedSite();
  const added = `${server.url}reed.html`;
  expect((await fetch(added)).status).toBe(404);
  writeFileSync(join(mine, 'reed.html'), page('Reed Bed'));
  expect(await (await fetch(added)).text()).toContain('Reed Bed');
  writeFileSync(join(mine, 'reed.html'), page('Reed Fringe'));
  expect(await (await fetch(added)).text()).toContain('Reed Fringe');
  rmSync(mine, { recursive: true });
  expect((await fetch(added)).status).toBe(404);
});

test('startServer shows the site’s own page for what is not there', async () => {
  const { server, mine } = await servedSite();
  const { status, text } = await fetch(`${server.url}no/such/page`).then(async (answer) => ({
    status: answer.status,
    text: await answer.text(),
  }));
  expect(status).toBe(404);
  expect(text).toContain('Nothing here in mine');
  rmSync(join(mine, '404.html'));
  expect(await (await fetch(`${server.url}no/such/page`)).text()).toBe('There is no such page in this book.\n');
});

test('startServer serves below a path, and leads there from /', async () => {
  const { server } = await servedSite({ base: '/my/book/' });
  const { origin } = new URL(server.url);
  const root = await fetch(origin);
  expect([root.url, root.status]).toEqual([`${origin}/my/book/`, 200]);
  expect((await fetch(`${origin}/book.json`)).status).toBe(404);
});

test.each(['', 'my/', '/my', '//', '/my//book/', '/../', '/a/./', '/a;b/', '/a b/', '/"/', '/a&copy/'])(
  'startServer takes no base of %j',
  async (base) => {
    await expect(servedSite({ base })).rejects.toThrow(RangeError);
  },
);

test('startServer shows nothing that a link leads to outside the site', async () => {
  const { server, mine, folder } = await servedSite();
  symlinkSync(join(folder, 'secret.txt'), join(mine, 'linked.txt'));
  symlinkSync(join(folder, 'site-private'), join(mine, 'linked'));
  symlinkSync(join(mine, '.cupbook'), join(mine, 'mark.txt'));
  symlinkSync(join(mine, 'book.json'), join(mine, 'inside.json'));
  for (const path of ['linked.txt', 'linked/secret.txt', 'mark.txt']) {
    const answer = await fetch(server.url + path);
    expect([path, answer.status]).toEqual([path, 404]);
    expect(await answer.text()).not.toMatch(/secret/i);
  }
  expect((await fetch(`${server.url}inside.json`)).status).toBe(200);
});

test('startServer takes the next free port, and says so', async () => {
  const port = await freePort();
  const other = createServer().listen(port, '127.0.0.1');
  onTestFinished(() => void other.close());
  const { server, log } = await servedSite({ defaultPort: port });
  expect(Number(new URL(server.url).port)).toBeGreaterThan(port);
  expect(log).toEqual([`Port ${port} is used by another program, so this is ${new URL(server.url).port}.`]);
});

test('startServer refuses a port that was asked for and is taken', async () => {
  const port = await freePort();
  const other = createServer().listen(port, HAS_IPV6 ? '::1' : '127.0.0.1');
  onTestFinished(() => void other.close());
  await expect(servedSite({ port })).rejects.toThrow(
    `Port ${port} is already used by another program, perhaps by another start of this one. Stop that, name another port, or leave --port out for the next free one.`,
  );
});
