import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { book, connect, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

const colour = book().recipes.find(({ tags, made }) => tags.length > 0 && made !== undefined)!;

test('what is said in short below a colour’s name is heard as a list, without its strokes', async () => {
  const { page, close } = await visit(browser, `colours/${colour.id}/`);
  const heard = await page.locator('.label-line').ariaSnapshot();
  expect(heard.match(/listitem/g)?.length).toBe(1 + colour.tags.length);
  expect(heard.replace(/^ *- \/url: .*$/gm, '')).not.toContain('/');
  await close();
});

test.each([true, false])('a lid is heard without its sign, open: %s', async (open) => {
  const { page, close } = await visit(browser, `colours/${colour.id}/`);
  const lid = page.locator('.fold details').first();
  await lid.evaluate((details: HTMLDetailsElement, state) => {
    details.open = state;
  }, open);
  expect(await page.locator('.fold').first().ariaSnapshot()).not.toMatch(/[+−]/);
  await close();
});
