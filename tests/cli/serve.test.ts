import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { nearAddresses } from '../../src/server/near-addresses.ts';
import { ROOT } from '../run-cupbook.ts';
import { SMALL_BOOK, smallBook, temporaryFolder } from '../small-book.ts';
import { codesIn } from './scanned-code.ts';
import { get, serve, statusOf } from './serving.ts';

const BOG_POOL = SMALL_BOOK['colours/bog-pool.md']!;

test('cupbook serve shows the book, follows its files, and stops when told', async () => {
  const { book, address, child, said } = await serve(await smallBook());
  await expect.poll(statusOf(address)).toBe(200);
  await expect.poll(said).toContain(`The book is open at ${address}`);
  expect(said()).toMatch(/^1 recipe, 2 materials → /m);

  const reed = join(book, 'colours/reed.md');
  writeFileSync(reed, BOG_POOL.replace('Bog Pool', 'Reed Bed'));
  await expect.poll(statusOf(`${address}colours/reed/`)).toBe(200);

  writeFileSync(reed, BOG_POOL.replace('Bog Pool', 'Reed Fringe'));
  await expect.poll(async () => (await get(`${address}colours/reed/`)).text.includes('Reed Fringe')).toBe(true);

  writeFileSync(reed, BOG_POOL.replace('peat', 'paet'));
  await expect.poll(said).toContain('colours/reed.md:9:7 error recipe/unknown-material');
  expect((await get(`${address}colours/reed/`)).text).toContain('Reed Fringe');

  rmSync(reed);
  await expect.poll(statusOf(`${address}colours/reed/`)).toBe(404);
  await expect.poll(async () => (await get(address)).text).not.toContain('Reed');

  expect(said()).not.toMatch(/^\s+at /m);
  child.kill('SIGINT');
  const [code] = await once(child, 'close');
  expect(code).toBe(0);
});

test('cupbook serve waits for a book with errors to be mended', async () => {
  const { book, address, said } = await serve(await smallBook({ 'colours/reed.md': BOG_POOL.replace('peat', 'paet') }));
  await expect.poll(said).toContain('Waiting for a change in ');
  expect(said()).toContain('fix: write `peat`');
  expect((await get(address)).status).toBe(0);
  writeFileSync(
    join(book, 'colours/reed.md'),
    readFileSync(join(book, 'colours/reed.md'), 'utf8').replace('paet', 'peat'),
  );
  await expect.poll(statusOf(`${address}colours/reed/`)).toBe(200);
});

const HOLLOW = BOG_POOL.replace('Bog Pool', 'Hollow Way');

test('cupbook serve waits while the folder of the book is away, and says so', async () => {
  const { book, address, child, said } = await serve(await smallBook());
  await expect.poll(said).toContain('The book is open at');

  const away = join(temporaryFolder(), 'away');
  renameSync(book, away);
  await expect.poll(said).toContain('cannot be read now. The pages stay as they are until it can be …');
  expect((await get(`${address}colours/bog-pool/`)).status).toBe(200);
  writeFileSync(join(away, 'colours/reed.md'), BOG_POOL.replace('Bog Pool', 'Reed Bed'));
  renameSync(away, book);
  await expect.poll(statusOf(`${address}colours/reed/`)).toBe(200);

  // Another folder in its place, as a sync or a checkout leaves it.
  cpSync(book, away, { recursive: true });
  rmSync(book, { recursive: true });
  await expect.poll(() => said().match(/cannot be read now/g)).toHaveLength(2);
  renameSync(away, book);
  writeFileSync(join(book, 'colours/hollow.md'), HOLLOW);
  await expect.poll(statusOf(`${address}colours/hollow/`)).toBe(200);
  writeFileSync(join(book, 'colours/hollow.md'), HOLLOW.replace('Way', 'Lane'));
  await expect.poll(async () => (await get(`${address}colours/hollow/`)).text).toContain('Hollow Lane');

  expect(said()).not.toMatch(/^\s+at |stopped at an error/m);
  child.kill('SIGINT');
  expect((await once(child, 'close'))[0]).toBe(0);
});

test('cupbook serve waits for the folder of a book with errors, and can be stopped meanwhile', async () => {
  const { book, child, address, said } = await serve(
    await smallBook({ 'colours/reed.md': BOG_POOL.replace('peat', 'paet') }),
  );
  await expect.poll(said).toContain('Waiting for a change in ');
  const away = join(temporaryFolder(), 'away');
  renameSync(book, away);
  await expect.poll(said).toContain('cannot be read now. Waiting until it can be …');
  renameSync(away, book);
  expect((await get(address)).status).toBe(0);
  child.kill('SIGINT');
  expect((await once(child, 'close'))[0]).toBe(1);
  expect(said()).not.toMatch(/^\s+at /m);
});

test('cupbook serve refuses a port that is none', async () => {
  const port = spawn(process.execPath, [resolve(ROOT, 'src/cli/cupbook.mjs'), 'serve', '--port', 'http'], {
    cwd: ROOT,
  });
  let said = '';
  port.stderr.on('data', (text) => {
    said += text;
  });
  const [code] = await once(port, 'close');
  expect({ code, said }).toEqual({ code: 1, said: 'The port must be a whole number from 1 to 65535, not "http".\n' });
});

/** The small book with a recipe that is not published. */
const withSecret = (): Promise<string> =>
  smallBook({ 'colours/reed.md': BOG_POOL.replace('title: Bog Pool', 'title: Reed Bed\npublish: no') });

const [NETWORK_ADDRESS] = nearAddresses().own.filter((address) => !address.includes(':'));

test('cupbook serve shows a book below the path of its address, so that the page for what is missing is whole', async () => {
  const { address } = await serve(
    await smallBook({ 'book.md': '---\ntitle: A Small Book\naddress: https://book.example/my/book/\n---\nOurs.\n' }),
  );
  await expect.poll(statusOf(address)).toBe(200);
  const { status, text } = await get(`${address}my/book/no/such/page/`);
  expect(status).toBe(404);
  const style = /<link rel="stylesheet" href="([^"]+)"/.exec(text)![1]!;
  expect(style).toMatch(/^\/my\/book\/assets\//);
  expect((await get(new URL(style, address).href)).status).toBe(200);
});

test('cupbook serve shows all to this computer alone, with its script in no file; its port is refused to another', async () => {
  const { address, site, said } = await serve(await withSecret());
  await expect.poll(said).toContain(`The book is open at ${address} on this computer alone.`);
  expect((await get(`${address}colours/reed/`)).status).toBe(200);
  if (NETWORK_ADDRESS !== undefined) {
    expect((await get(address.replace('localhost', NETWORK_ADDRESS))).status).toBe(0);
  }

  expect((await get(address)).text).toContain('<script src="/.serve/page.js"');
  expect(readFileSync(join(site, 'index.html'), 'utf8')).not.toContain('.serve');
  expect(existsSync(join(site, '.serve'))).toBe(false);

  const { port } = new URL(address);
  const other = await serve(await smallBook(), ['--port', port]);
  expect((await once(other.child, 'close'))[0]).toBe(1);
  expect(other.said()).toBe(
    `Port ${port} is already used by another program, perhaps by another start of this one. Stop that, name another port, or leave --port out for the next free one.\n`,
  );
  // It was refused before anything was built.
  expect(existsSync(other.site)).toBe(false);
  expect((await get(address)).status).toBe(200);
  expect(said()).not.toContain('stopped at an error');
});

test.each([
  ['without --phone', ['--mine'], /^--mine goes with --phone: /],
  [
    'where a file or program would keep it',
    ['--phone', '--mine'],
    /^The code of --mine holds a key that must be kept nowhere/,
  ],
])('cupbook serve refuses the code of one’s own %s', async (_where, more, told) => {
  const { child, said } = await serve(await smallBook(), more);
  expect((await once(child, 'close'))[0]).toBe(1);
  expect(said()).toMatch(told);
});

describe.skipIf(NETWORK_ADDRESS === undefined)('for a phone (needs a network card with an address)', () => {
  test('cupbook serve --phone shows the network what is published, and this computer all', async () => {
    const { book, address, child, said } = await serve(await withSecret(), ['--phone']);
    const phone = address.replace('localhost', NETWORK_ADDRESS!);
    await expect.poll(said).toContain(`On a phone in the same network: ${phone}`);
    expect(said()).toContain('Everybody in this network can read it there');
    for (const [at, status] of [
      [address, 200],
      [phone, 404],
    ] as const) {
      expect((await get(at)).status).toBe(200);
      expect((await get(`${at}colours/reed/`)).status).toBe(status);
      expect((await get(`${at}colours/reed/reed.md`)).status).toBe(status);
      expect((await get(`${at}book.json`)).text.includes('Reed Bed')).toBe(status === 200);
    }
    // What is withdrawn goes, and what is published comes, while it runs.
    writeFileSync(join(book, 'colours/reed.md'), BOG_POOL.replace('Bog Pool', 'Reed Bed'));
    await expect.poll(statusOf(`${phone}colours/reed/`)).toBe(200);
    writeFileSync(join(book, 'colours/reed.md'), BOG_POOL.replace('title: Bog Pool', 'title: Reed Bed\npublish: no'));
    await expect.poll(statusOf(`${phone}colours/reed/`)).toBe(404);
    expect((await get(`${address}colours/reed/`)).status).toBe(200);
    // With an error elsewhere nothing is built, so what is withdrawn then stays.
    expect(said()).not.toContain('phones still see');
    writeFileSync(join(book, 'colours/reed.md'), BOG_POOL.replace('title:', 'titel:'));
    await expect.poll(said).toContain('phones still see the pages from before');
    child.kill('SIGINT');
    expect((await once(child, 'close'))[0]).toBe(0);
  });

  // `script` of util-linux gives a program a screen; that of other systems takes its words in another order.
  test.skipIf(process.platform !== 'linux' || !existsSync('/usr/bin/script'))(
    'cupbook serve --phone --mine shows a second code, and what is on it opens the whole book (needs `script` of Linux)',
    async () => {
      const quoted = (words: readonly string[]): string =>
        words.map((word) => `'${word.replaceAll("'", `'\\''`)}'`).join(' ');
      const { address, child, said } = await serve(await withSecret(), ['--phone', '--mine'], (program) => [
        '/usr/bin/script',
        '-qec',
        // The shell that `script` starts would end at Ctrl+C by itself, before the program has.
        `exec ${quoted(program)}`,
        '/dev/null',
      ]);
      await expect.poll(said).toContain('Stop with Ctrl+C.');
      const phone = address.replace('localhost', NETWORK_ADDRESS!);
      const [first, second] = codesIn(said().replaceAll('\r', ''));
      expect(first).toBe(phone);
      const { origin, pathname, hash } = new URL(second!);
      expect(origin + pathname).toBe(phone);
      const key = hash.slice('#key='.length);
      expect(said()).not.toContain(key);

      const opened = await fetch(`${phone}.serve/key`, { headers: { 'x-cupbook-key': key } });
      const cookie = opened.headers.getSetCookie()[0]!.split(';')[0]!;
      expect((await fetch(`${phone}colours/reed/`)).status).toBe(404);
      const page = await fetch(`${phone}colours/reed/`, { headers: { cookie } });
      expect([page.status, (await page.text()).includes('Reed Bed')]).toEqual([200, true]);
      child.stdin?.write('\u0003');
      expect((await once(child, 'close'))[0]).toBe(0);
    },
  );
});
