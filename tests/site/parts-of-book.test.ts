import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { connect, pagesByKind, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

const PHONE = { width: 390, height: 844 };

/** What of the navigation can be seen, with the place of each, px. */
function inSight(page: Page): Promise<{ name: string; top: number; bottom: number }[]> {
  return page.locator('.parts :is(a, summary):visible').evaluateAll((links) =>
    links.map((each) => {
      const { top, bottom } = each.getBoundingClientRect();
      return { name: each.textContent!, top, bottom };
    }),
  );
}

test('a phone has four parts of the book and More within a thumb’s reach, each 44 px high and more, wherever the page is scrolled to', async () => {
  const { page, close } = await visit(browser, 'shelf/', { viewport: PHONE });
  for (const y of [0, 700]) {
    await page.evaluate((to) => window.scrollTo(0, to), y);
    const seen = await inSight(page);
    expect(seen.map(({ name }) => name)).toEqual(['Colours', 'Find', 'Plan', 'Match', 'More']);
    for (const { top, bottom } of seen) {
      expect(bottom - top).toBeGreaterThanOrEqual(44);
      expect(top).toBeGreaterThan(PHONE.height * 0.8);
      expect(bottom).toBeLessThanOrEqual(PHONE.height);
    }
  }
  await close();
});

test.each([true, false])(
  'More leads to every other part, with JavaScript or without (%s)',
  async (javaScriptEnabled) => {
    for (const viewport of [PHONE, { width: 1280, height: 900 }]) {
      const { page, errors, close } = await visit(browser, 'shelf/', { viewport, javaScriptEnabled });
      await page.locator('.parts summary').focus();
      await page.keyboard.press('Enter');
      const seen = new Set((await inSight(page)).map(({ name }) => name));
      const all = await page.locator('#contents a').allTextContents();
      expect([...seen].sort()).toEqual(
        ['More', ...all.map((name) => (name === 'Plan a batch' ? 'Plan' : name))].sort(),
      );
      await page.keyboard.press('Tab');
      expect(await page.locator('.more-parts :focus').count()).toBe(1);
      expect(errors).toEqual([]);
      await close();
    }
  },
);

test('More closes with Escape, which gives the keyboard back to it, and by a touch elsewhere', async () => {
  const { page, close } = await visit(browser, 'shelf/', { viewport: PHONE });
  const more = page.locator('.more-parts');
  await more.locator('summary').press('Enter');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Escape');
  expect(await more.getAttribute('open')).toBeNull();
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('More');
  await more.locator('summary').click();
  await page.locator('h1').click();
  expect(await more.getAttribute('open')).toBeNull();
  await close();
});

test('the bar lies over nothing that has the keyboard, on no page', async () => {
  for (const { urls } of pagesByKind()) {
    const [url] = urls;
    if (url === undefined) continue;
    const { page, close } = await visit(browser, url, { viewport: PHONE });
    const covered: string[] = [];
    for (let step = 0; step < 60; step++) {
      await page.keyboard.press('Tab');
      const found = await page.evaluate(() => {
        const bar = document.querySelector('.parts');
        const focused = document.activeElement;
        if (bar === null || focused === null || focused === document.body || bar.contains(focused)) return undefined;
        if (getComputedStyle(bar).position !== 'fixed') return undefined;
        const [over, at] = [bar.getBoundingClientRect(), focused.getBoundingClientRect()];
        return at.top >= over.top || (at.bottom > over.top && at.height < over.top)
          ? focused.outerHTML.slice(0, 80)
          : undefined;
      });
      if (found !== undefined) covered.push(found);
    }
    expect([url, covered]).toEqual([url, []]);
    await close();
  }
});

test('in a low window, as of a page at 400 %, and on paper no bar lies over the page', async () => {
  const { page, close } = await visit(browser, 'shelf/', { viewport: { width: 320, height: 256 } });
  const position = (): Promise<string> => page.locator('.parts').evaluate((bar) => getComputedStyle(bar).position);
  expect(await position()).toBe('static');
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(320);
  await page.setViewportSize(PHONE);
  expect(await position()).toBe('fixed');
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('.parts').isVisible()).toBe(false);
  await close();
});
