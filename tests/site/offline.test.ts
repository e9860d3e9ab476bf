import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { type StaticServer, serveFolder } from './static-server.ts';
import { connect, type Visit, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

/** The book on a host of its own name that is trusted, as a published one is, while `during` lasts. */
async function published(during: (address: string, server: StaticServer) => Promise<void>): Promise<void> {
  const server = await serveFolder(inject('site'), '/a/book/');
  try {
    await during(server.address.replace('127.0.0.1', 'one.localhost'), server);
  } finally {
    await server.close();
  }
}

/** Names of what the page's host keeps, from the root of the book. */
const keptOf = ({ page }: Visit, address: string): Promise<readonly string[]> =>
  page.evaluate(async (book) => {
    const found = [];
    for (const name of await caches.keys())
      for (const { url } of await (await caches.open(name)).keys()) found.push(url.replace(book, ''));
    return found;
  }, address);

test('a page that was opened, and first aid, are there without the network; another says that it isn’t', async () => {
  await published(async (address, server) => {
    const visited = await visit(browser, 'colours/eel-bridge/', {}, address);
    const { page } = visited;
    await expect
      .poll(() => keptOf(visited, address))
      .toEqual(expect.arrayContaining(['', 'care/', 'colours/eel-bridge/']));
    await expect
      .poll(
        async () => (await keptOf(visited, address)).filter((name) => /^assets\/.*\.(?:css|woff2)$/.test(name)).length,
      )
      .toBeGreaterThanOrEqual(3);
    await server.close();

    await page.goto(`${address}colours/eel-bridge/?baits=48`);
    await expect.poll(() => page.locator('.batch-says').first().textContent()).toContain('48 baits');
    expect(await page.evaluate(() => getComputedStyle(document.querySelector('h1')!).fontFamily)).toContain(
      'Book Title',
    );
    await page.goto(`${address}care/#burn`);
    expect(await page.locator('#burn').textContent()).toContain('Burn');
    await page.goto(`${address}colours/weir-foam/`);
    expect(await page.locator('h1').textContent()).toBe('No network');
    await page.getByRole('link', { name: 'all colours' }).click();
    expect(await page.locator('h1').textContent()).toBe('The Hethern Cupbook');
    await visited.close();
  });
});

test('nothing is kept of a book on your own computer', async () => {
  const { page, close } = await visit(browser, '');
  expect(await page.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length)).toBe(0);
  await close();
});
