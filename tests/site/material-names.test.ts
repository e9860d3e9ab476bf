import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { book, connect, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

test.each([390, 320])('a name in the table of amounts breaks between words only, %d px wide', async (width) => {
  const { page, close } = await visit(browser, `colours/${book().recipes[0]!.id}/`, {
    viewport: { width, height: 844 },
  });
  const lines = await page.evaluate(() => {
    const words = ['Watermelon', 'Chartreuse', 'Watermelon', 'Pumpkinseed'];
    return [...document.querySelectorAll('.amounts .amount-name')].map((name, index) => {
      name.textContent = words[index % words.length]!;
      const range = document.createRange();
      range.selectNodeContents(name);
      return range.getClientRects().length;
    });
  });
  expect(lines.length).toBeGreaterThan(0);
  expect(lines).toEqual(lines.map(() => 1));
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  await close();
});
