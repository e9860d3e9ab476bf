import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { book, connect, visit } from './visit.ts';

const PHONE = { width: 390, height: 844 };
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
  test('is folded on a phone and open on a desk', async () => {
    const phone = await visit(browser, `colours/${recipe().id}/`, { viewport: PHONE });
    expect(new Set(await open(phone.page))).toEqual(new Set([false]));
    await phone.close();
    const desk = await visit(browser, `colours/${recipe().id}/`, { viewport: DESK });
    expect(new Set(await open(desk.page))).toEqual(new Set([true]));
    await desk.close();
  });

  test('shows another light without JavaScript, by keyboard', async () => {
    const { page, close } = await visit(browser, `colours/${recipe().id}/`, {
      viewport: PHONE,
      javaScriptEnabled: false,
    });
    await page.locator('summary', { hasText: 'Under other lights' }).click();
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
