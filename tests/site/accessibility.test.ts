import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { connect, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

describe('by keyboard', () => {
  test('the first stop is the way past the header', async () => {
    const { page, close } = await visit(browser, '');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('href'))).toBe('#main');
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('main');
    await close();
  });

  test('every stop of the first page shows where it is', async () => {
    const { page, close } = await visit(browser, '');
    for (let stop = 0; stop < 12; stop += 1) {
      await page.keyboard.press('Tab');
      const shown = await page.evaluate(() => {
        const style = getComputedStyle(document.activeElement!);
        return style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) > 0;
      });
      expect(shown, `stop ${stop + 1}`).toBe(true);
    }
    await close();
  });
});

test('the parts to touch on the first page are large enough for gloves', async () => {
  const { page, close } = await visit(browser, '', { viewport: { width: 390, height: 844 }, hasTouch: true });
  const small = await page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('main a, main button, main input')]
      .filter((element) => element.offsetParent !== null)
      .map((element) => ({ what: element.outerHTML.slice(0, 80), ...element.getBoundingClientRect().toJSON() }))
      .filter(({ width, height }) => Math.min(width, height) < 44)
      .map(({ what, width, height }) => `${what} ${Math.round(width)} × ${Math.round(height)}`),
  );
  expect(small.slice(0, 5)).toEqual([]);
  await close();
});
