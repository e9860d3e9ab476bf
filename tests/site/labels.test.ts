import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { spaceText } from './reader-spacing.ts';
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
  await expect.poll(() => page.locator('.bag-label h2').allInnerTexts()).toEqual(Array(26).fill(colour!.title));
  expect(await page.locator('.sheet').count()).toBe(2);
  expect(await page.locator('[data-sheets]').innerText()).toBe('2 sheets');
  await page.getByRole('textbox', { name: 'Poured' }).fill('1 Dec 2026');
  await page.getByRole('textbox', { name: 'Lot' }).fill('B-17');
  await expect.poll(() => page.locator('.bag-written').first().innerText()).toMatch(/^Poured 1 Dec 2026\s+Lot B-17$/);
  await page.getByRole('button', { name: 'One of each' }).click();
  expect(await page.locator('.bag-written').last().innerText()).toMatch(/Lot B-17$/);
  await expect.poll(() => page.locator('.bag-label').count()).toBe(book().recipes.length);
  expect(errors).toEqual([]);
  await close();
});

test('a label says what is in the bag, how much of it, and who made it; a larger one by a link', async () => {
  const { page, close } = await visit(browser, 'labels/', { javaScriptEnabled: false });
  await page.getByRole('link', { name: '99.1 × 57 mm' }).click();
  const { maker, recipes } = book();
  const labels = await page.locator('.bag-label').allInnerTexts();
  expect(labels.length).toBe(recipes.length);
  for (const [index, label] of labels.entries()) {
    expect(label).toContain(recipes[index]!.title);
    expect(label).toMatch(/\n\d+ of /);
    expect(label).toContain(`by ${maker}`);
    expect(label).toMatch(/Ingredients: \w.*\. Keep from children/);
    expect(label).toMatch(/Poured\s+Lot/);
  }
  await close();
});

test('without a script there is one label of each colour, and no choice', async () => {
  const { page, close } = await visit(browser, 'labels/', { javaScriptEnabled: false });
  expect(await page.locator('.bag-label').count()).toBe(book().recipes.length);
  expect(await page.locator('[data-labels]').isVisible()).toBe(false);
  await close();
});

test.each([
  ...['labels/', 'labels/99x57/', 'labels/letter/', 'cards/a4/', 'cards/letter/'],
  ...['colours/eel-bridge/card/', 'colours/eel-bridge/card-4x6/'],
])('the preview of %s grows with its text, and does not scroll sideways on a phone of 320 px', async (path) => {
  for (const width of [320, 1280]) {
    const { page, close } = await visit(browser, path, { viewport: { width, height: 800 } });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    await spaceText(page);
    const faults = await page.evaluate(() => {
      const found: string[] = [];
      for (const paper of document.querySelectorAll<HTMLElement>('.bag-label, [data-card]')) {
        const frame = paper.getBoundingClientRect();
        const texts = document.createTreeWalker(paper, NodeFilter.SHOW_TEXT);
        for (let node = texts.nextNode(); node; node = texts.nextNode()) {
          if (node.nodeValue?.trim() === '' || node.parentElement?.closest('svg')) continue;
          const range = document.createRange();
          range.selectNodeContents(node);
          const box = range.getBoundingClientRect();
          if (box.bottom > frame.bottom + 1 || box.right > frame.right + 1) found.push(node.nodeValue!.trim());
        }
        for (const part of paper.querySelectorAll<HTMLElement>('*'))
          if (getComputedStyle(part).overflow !== 'visible' && !part.closest('svg, img'))
            found.push(`${part.className} cuts`);
      }
      return found;
    });
    expect(faults.slice(0, 5)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    await close();
  }
});
