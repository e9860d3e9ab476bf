import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { book, connect, visit } from './visit.ts';

const PHONE = { width: 390, height: 844 };
/** px, folded: what is longer is not read through at a bench. */
const LONGEST = 4000;
const DESK = { width: 1280, height: 900 };

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

const recipe = () => book().recipes.find(({ lights }) => lights.length > 1)!;
const open = (page: Page): Promise<readonly boolean[]> =>
  page.locator('.fold > details').evaluateAll((all) => all.map((details) => (details as HTMLDetailsElement).open));
const plates = (page: Page): Promise<readonly boolean[]> =>
  page.locator('.light-plate').evaluateAll((all) => all.map((plate) => (plate as HTMLElement).offsetHeight > 0));

describe('a recipe', () => {
  test('is folded on a phone; on a desk the colours of how far off it may be are in sight', async () => {
    const phone = await visit(browser, `colours/${recipe().id}/`, { viewport: PHONE });
    expect(new Set(await open(phone.page))).toEqual(new Set([false]));
    await phone.close();
    const desk = await visit(browser, `colours/${recipe().id}/`, { viewport: DESK });
    const [beside, ...below] = await open(desk.page);
    expect([beside, new Set(below)]).toEqual([true, new Set([false])]);
    await desk.close();
  });

  test('has its first amount on a phone’s first screen, above the bar, and ends before the fifth', async () => {
    const { page, close } = await visit(browser, '', { viewport: PHONE });
    const root = page.url();
    for (const { id } of book().recipes) {
      await page.goto(`${root}colours/${id}/`);
      await page.locator('[data-planned] .tick').first().waitFor();
      const [bottom, height] = await page.evaluate(() => [
        document.querySelector('[data-planned] .measure b')!.getBoundingClientRect().bottom,
        document.documentElement.scrollHeight,
      ]);
      expect([id, bottom! < PHONE.height - 54]).toEqual([id, true]);
      expect([id, height! <= LONGEST]).toEqual([id, true]);
    }
    await close();
  });

  test.each([320, PHONE.width, DESK.width])(
    'gives the boxes beside amounts no more room than they need, %i px wide',
    async (width) => {
      const { page, close } = await visit(browser, `colours/${recipe().id}/`, { viewport: { width, height: 844 } });
      const head = page.getByRole('columnheader', { name: 'Done' }).first();
      await head.waitFor();
      expect((await head.boundingBox())!.width).toBeLessThanOrEqual(48);
      await close();
    },
  );

  test('opens what is linked to, however deep it is folded, on the way in and on the page', async () => {
    const { page, close } = await visit(browser, `colours/${recipe().id}/#water`, { viewport: PHONE });
    expect(await page.locator('#water').isVisible()).toBe(true);
    expect(await page.locator('#take').isVisible()).toBe(true);
    expect(await page.locator('.take').isVisible()).toBe(false);
    await page.evaluate(() => {
      location.hash = '#take';
    });
    await expect.poll(() => page.locator('.take').isVisible()).toBe(true);
    await close();
  });

  test('has on paper what is open, and no part that is folded', async () => {
    const { page, close } = await visit(browser, `colours/${recipe().id}/`, { viewport: PHONE });
    await page.locator('summary', { hasText: 'Story' }).click();
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.fold h2#story').isVisible()).toBe(true);
    expect(await page.locator('.fold > details:not([open])').first().isVisible()).toBe(false);
    for (const whole of ['.amounts', '#work', '.cautions'])
      expect(await page.locator(whole).first().isVisible()).toBe(true);
    await close();
  });

  test('shows another light without JavaScript, by keyboard', async () => {
    const { page, close } = await visit(browser, `colours/${recipe().id}/`, {
      viewport: PHONE,
      javaScriptEnabled: false,
    });
    await page.locator('summary', { hasText: 'Light and water' }).click();
    const choices = page.getByRole('radio');
    expect(await choices.count()).toBe(recipe().lights.length);
    const [first, second] = await plates(page);
    expect([first, second]).toEqual([true, false]);
    await choices.first().focus();
    await page.keyboard.press('ArrowDown');
    expect((await plates(page)).slice(0, 2)).toEqual([false, true]);
    await close();
  });
});
