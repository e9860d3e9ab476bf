import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { PAGES } from '../../src/render/pages.ts';
import { violations } from './axe.ts';
import { book, connect, pagesByKind, type Visit, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

const kinds = pagesByKind();
const samples = kinds.flatMap(({ kind, urls }) => urls.slice(0, 1).map((url) => ({ kind, url })));

test('the demo book has a page of every kind, but the manual is its maker’s', () => {
  expect(kinds.map(({ kind }) => kind)).toEqual(PAGES.map(({ kind }) => kind));
  expect(kinds.filter(({ urls }) => urls.length === 0).map(({ kind }) => kind)).toEqual(['manual', 'manual-text']);
});

describe.each(samples)('a page of the kind $kind', ({ url }) => {
  describe('opened once', () => {
    let opened: Visit;
    beforeAll(async () => {
      opened = await visit(browser, url);
    });
    afterAll(() => opened.close());

    test('loads without an error, and asks no other host for anything', async () => {
      const { page, errors, foreign } = opened;
      expect(errors).toEqual([]);
      expect(foreign).toEqual([]);
      expect(await page.locator('h1').count()).toBe(1);
      expect(await page.title()).toContain(book().title.slice(0, 10));
      expect(await page.locator('html').getAttribute('lang')).toBe('en');
      expect(await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content')).toContain(
        "default-src 'none'",
      );
    });

    test('has nothing that axe objects to', async () => {
      expect((await violations(opened.page, 'all')).slice(0, 5)).toEqual([]);
    });

    // Only colours change with it; what else axe looks at is the same.
    test('has no colour that axe objects to in the dark', async () => {
      await opened.page.emulateMedia({ colorScheme: 'dark' });
      expect((await violations(opened.page, 'colours')).slice(0, 5)).toEqual([]);
    });
  });

  test('fits a telephone: nothing runs out of the screen sideways', async () => {
    const { page, close } = await visit(browser, url, { viewport: { width: 360, height: 740 } });
    // A sheet of paper is as wide as it is; everything round it must fit.
    const wide = await page.evaluate(() => {
      const paper = document.querySelector('.papers');
      if (paper) paper.remove();
      return document.documentElement.scrollWidth - document.documentElement.clientWidth;
    });
    expect(wide).toBeLessThanOrEqual(0);
    await close();
  });

  test('reads without JavaScript', async () => {
    const { page, errors, close } = await visit(browser, url, { javaScriptEnabled: false });
    expect(errors).toEqual([]);
    expect((await page.locator('main').innerText()).length).toBeGreaterThan(30);
    // What only a script can do is not offered.
    for (const control of await page.locator('main button, main form').all()) {
      const works =
        (await control.getAttribute('type')) === 'submit' || (await control.getAttribute('action')) !== null;
      expect(
        works || !(await control.isVisible()),
        await control.evaluate((node) => node.outerHTML.slice(0, 200)),
      ).toBe(true);
    }
    await close();
  });
});

describe('without JavaScript', () => {
  test('the first page shows every published colour', async () => {
    const { page, close } = await visit(browser, '', { javaScriptEnabled: false });
    const words = await page.locator('main').innerText();
    const { recipes, looks } = book();
    expect([...recipes, ...looks].filter(({ title }) => !words.includes(title))).toEqual([]);
    await close();
  });

  test('a recipe shows the measured amounts of its own batch', async () => {
    const [recipe] = book().recipes;
    const { page, close } = await visit(browser, `colours/${recipe!.id}/`, { javaScriptEnabled: false });
    const words = (await page.locator('main').innerText()).replaceAll('\u00a0', ' ');
    const amounts = recipe!.batch.cups.flatMap((cup) => cup.amounts.map(({ text }) => text));
    expect(amounts.length).toBeGreaterThan(0);
    expect(amounts.filter((text) => !words.includes(text))).toEqual([]);
    await close();
  });

  test('the find page lists every colour by its hue', async () => {
    const { page, close } = await visit(browser, 'find/', { javaScriptEnabled: false });
    const { recipes, looks } = book();
    for (const { id } of [...recipes, ...looks]) {
      expect(await page.locator(`main a[href="../colours/${id}/"]`).first().isVisible(), id).toBe(true);
    }
    await close();
  });
});

test('a page that is not there shows the way back, from any depth', async () => {
  const context = await browser.newContext();
  const page = await context.newPage();
  const missing: string[] = [];
  page.on('response', (response) => {
    if (response.status() >= 400) missing.push(response.url());
  });
  const home = inject('hosted');
  const url = `${home}colours/no/such/page/`;
  expect((await page.goto(url))?.status()).toBe(404);
  expect(missing).toEqual([url]);
  await Promise.all([page.waitForURL(home), page.locator('main a').first().click()]);
  expect(await page.locator('h1').innerText()).toBe(book().title);
  await context.close();
});
