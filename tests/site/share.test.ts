import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { book, connect, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

test('a colour’s page copies its address', async () => {
  const { id } = book().recipes[0]!;
  const { page, close } = await visit(browser, `colours/${id}/#looks`, {
    permissions: ['clipboard-read', 'clipboard-write'],
  });
  const button = page.getByRole('button', { name: 'Copy the address' });
  await button.click();
  await expect.poll(() => page.locator('[data-share] [role="status"]').innerText()).toBe('Copied.');
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(`${inject('address')}colours/${id}/`);
  await close();
});

test('the picture of every page’s shared link is there, of published colours alone', async () => {
  const { page, close } = await visit(browser, 'find/');
  const { address, recipes, looks } = book();
  for (const { id } of [...recipes, ...looks]) {
    const text = await (await page.request.get(`${inject('address')}colours/${id}/`)).text();
    const image = /<meta property="og:image" content="([^"]*)">/.exec(text)![1]!;
    expect(existsSync(join(inject('site'), image.slice(address!.length)))).toBe(true);
  }
  await close();
});
