import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { filesBelow } from '../folder-tree.ts';
import { book, connect, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

test('a colour’s page copies its address', async () => {
  const { id } = book().recipes[0]!;
  const { page, close } = await visit(browser, `colours/${id}/?baits=31#looks`, {
    permissions: ['clipboard-read', 'clipboard-write'],
  });
  await page.locator('summary', { hasText: 'Print and share' }).click();
  const button = page.getByRole('button', { name: 'Copy link' });
  await button.click();
  await expect.poll(() => page.locator('[data-share] [role="status"]').innerText()).toBe('Copied.');
  expect(await page.evaluate(() => navigator.clipboard.readText())).toMatch(
    new RegExp(`/colours/${id}/\\?baits=31(?:&|$)`),
  );
  await close();
});

test('the picture of every page’s shared link is there, of published colours alone', async () => {
  const { address, recipes, looks } = book();
  const shown = [...recipes, ...looks].map(({ id }) => {
    const text = readFileSync(join(inject('site'), `colours/${id}/index.html`), 'utf8');
    return /<meta property="og:image" content="([^"]*)">/.exec(text)![1]!.slice(address!.length);
  });
  const pictures = filesBelow(inject('site')).filter((path) => /^colours\/.*\/shared\.jpg$/.test(path));
  expect(pictures).toEqual(shown.map((address) => address.replace(/\?.*$/, '')).sort());
});
