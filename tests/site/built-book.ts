import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserServer, chromium as launcher } from 'playwright-core';
import type { TestProject } from 'vitest/node';
import type { Book } from '../../src/book/model.ts';
import { runCupbook } from '../run-cupbook.ts';
import { chromium, whyNoChromium } from './chromium.ts';
import { serveFolder } from './static-server.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Where the demo book's site is served: deep below a host, since a book must work below any path. */
    readonly address: string;
    /** Where it is served at the path of the address that the book states, which its `404.html` needs. */
    readonly hosted: string;
    /** Folder of the site. */
    readonly site: string;
    /** Where a browser waits; empty on a machine that has none, where the tests that need one are skipped. */
    readonly browser: string;
  }
}

/** Builds the demo book once, as a person does, serves it and starts a browser for all tests of the site. */
export default async function builtBook({ provide }: TestProject): Promise<() => Promise<void>> {
  const folder = await mkdtemp(join(tmpdir(), 'cupbook-site-'));
  const site = join(folder, 'site');
  const { code, stderr } = await runCupbook(['build', '--output', site]);
  if (code !== 0) throw new Error(`The demo book could not be built:\n${stderr}`);

  const server = await serveFolder(site, '/my/book/');
  const { address = 'https://book.example/' } = JSON.parse(await readFile(join(site, 'book.json'), 'utf8')) as Book;
  const host = await serveFolder(site, new URL(address).pathname);
  const browser = await launched();
  provide('address', server.address);
  provide('hosted', host.address);
  provide('site', site);
  provide('browser', browser?.wsEndpoint() ?? '');

  return async () => {
    await browser?.close();
    await Promise.all([server.close(), host.close()]);
    await rm(folder, { recursive: true, force: true });
  };
}

async function launched(): Promise<BrowserServer | undefined> {
  const why = whyNoChromium();
  if (why !== undefined) {
    console.warn(`The tests in a browser are skipped: ${why}`);
    return undefined;
  }
  const { executablePath, env } = await chromium();
  return launcher.launchServer({ executablePath, env, args: ['--disable-gpu', '--disable-background-networking'] });
}
