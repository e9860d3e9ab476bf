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

test('a colour’s page hands its address to the device where that sends pages on, and copies it where the device can’t', async () => {
  const { id, title } = book().recipes[0]!;
  const sends = async (fault: string): Promise<readonly [unknown, string]> => {
    const context = await browser.newContext({ permissions: ['clipboard-read', 'clipboard-write'] });
    await context.addInitScript((name) => {
      const share = async (what: ShareData): Promise<void> => {
        Object.assign(window, { shared: what });
        if (name !== '') throw new DOMException('', name);
      };
      Object.defineProperty(Navigator.prototype, 'share', { value: share });
    }, fault);
    const page = await context.newPage();
    await page.goto(`${inject('address')}colours/${id}/#share`);
    await page.locator('summary', { hasText: 'Print and share' }).click();
    await page.getByRole('button', { name: 'Send link' }).click();
    await expect.poll(() => page.evaluate(() => 'shared' in window)).toBe(true);
    const shared = await page.evaluate(() => (window as { shared?: unknown }).shared);
    if (fault === 'NotAllowedError')
      await expect.poll(() => page.locator('[data-share] [role="status"]').innerText()).not.toBe('');
    const says = await page.locator('[data-share] [role="status"]').innerText();
    await context.close();
    return [shared, says];
  };
  const url = `${inject('address')}colours/${id}/`;
  expect(await sends('')).toEqual([{ title: expect.stringContaining(title), url }, '']);
  expect((await sends('AbortError'))[1]).toBe('');
  expect((await sends('NotAllowedError'))[1]).toBe('Copied.');
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
