import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join, resolve } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { ROOT, TEST_CACHE } from '../run-cupbook.ts';
import { SMALL_BOOK, smallBook, temporaryFolder } from '../small-book.ts';

const BOG_POOL = SMALL_BOOK['colours/bog-pool.md']!;

/** A server for a book, as a person starts it. */
interface Serving {
  readonly book: string;
  readonly address: string;
  readonly child: ChildProcess;
  said(): string;
}

async function freePort(): Promise<number> {
  const probe = createServer().listen(0);
  await once(probe, 'listening');
  const { port } = probe.address() as { port: number };
  await new Promise((done) => probe.close(done));
  return port;
}

async function serve(book: string): Promise<Serving> {
  const port = await freePort();
  const line = ['serve', '--recipes', book, '--output', join(temporaryFolder(), 'site'), '--port', String(port)];
  const child = spawn(process.execPath, [resolve(ROOT, 'src/cli/cupbook.mjs'), ...line], {
    cwd: ROOT,
    env: { ...process.env, XDG_CACHE_HOME: TEST_CACHE },
  });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (text) => {
      said += text;
    });
  }
  onTestFinished(async () => {
    if (child.exitCode === null && child.kill('SIGKILL')) await once(child, 'close');
  });
  return { book, address: `http://localhost:${port}/`, child, said: () => said };
}

/** Status and text of a page; status 0 while nothing answers. */
async function get(url: string): Promise<{ readonly status: number; readonly text: string }> {
  try {
    const response = await fetch(url);
    return { status: response.status, text: await response.text() };
  } catch {
    return { status: 0, text: '' };
  }
}

const statusOf = (url: string) => async (): Promise<number> => (await get(url)).status;

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
