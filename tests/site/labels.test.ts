import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { book, connect, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

test('labels are printed of the colours and in the numbers that are chosen', async () => {
  const { page, errors, close } = await visit(browser, 'labels/');
  const [colour] = book().recipes;
  await page.getByText('Choose colours and how many').click();
  await page.getByRole('button', { name: 'None' }).click();
  expect(await page.locator('.bag-label').count()).toBe(0);
  expect(await page.locator('[data-print]').isDisabled()).toBe(true);
  await page.getByLabel(colour!.title, { exact: true }).fill('26');
  await expect.poll(() => page.locator('.bag-title').allInnerTexts()).toEqual(Array(26).fill(colour!.title));
  expect(await page.locator('.sheet').count()).toBe(2);
  expect(await page.locator('[data-sheets]').innerText()).toBe('2 sheets');
  await page.getByRole('button', { name: 'One of each' }).click();
  await expect.poll(() => page.locator('.bag-label').count()).toBe(book().recipes.length);
  expect(errors).toEqual([]);
  await close();
});

test('without a script there is one label of each colour, and no choice', async () => {
  const { page, close } = await visit(browser, 'labels/', { javaScriptEnabled: false });
  expect(await page.locator('.bag-label').count()).toBe(book().recipes.length);
  expect(await page.locator('[data-labels]').isVisible()).toBe(false);
  await close();
});
