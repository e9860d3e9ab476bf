import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { book, connect, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

const query = (page: Page): string => new URL(page.url()).search;
const ticked = (page: Page): Promise<number> => page.locator('.tick input:checked').count();
const says = (page: Page): Promise<string> => page.locator('[data-planned] .batch-says').innerText();

describe('the batch of a recipe', () => {
  test('is in the address, and there again from it', async () => {
    const recipe = book().recipes.find(({ id }) => id === 'bog-myrtle')!;
    const other = book().molds.find(({ id }) => id !== recipe.mold)!;
    const { page, errors, close } = await visit(browser, `colours/${recipe.id}/#cups`);
    await page.getByLabel('Baits').fill('24');
    await expect.poll(() => query(page)).toBe('?baits=24');
    await page.getByLabel('Mold').selectOption(other.id);
    await expect.poll(() => query(page)).toBe(`?baits=24&mold=${other.id}`);
    expect(new URL(page.url()).hash).toBe('#cups');
    // Handed on to somebody else.
    const { page: theirs, close: closeTheirs } = await visit(browser, `colours/${recipe.id}/${query(page)}`);
    await expect.poll(() => says(theirs)).toMatch(/^Makes 24\sbaits/);
    expect(await theirs.getByLabel('Baits').inputValue()).toBe('24');
    expect(await theirs.getByLabel('Mold').inputValue()).toBe(other.id);
    await closeTheirs();
    await page.getByLabel('Mold').selectOption(recipe.mold);
    await page.getByLabel('Baits').fill(String(recipe.batch.baits));
    await expect.poll(() => query(page)).toBe('');
    expect(errors).toEqual([]);
    await close();
  });

  test('is the usual one where the address asks for nonsense', async () => {
    const recipe = book().recipes.find(({ id }) => id === 'bog-myrtle')!;
    const { page, errors, close } = await visit(browser, `colours/${recipe.id}/?baits=-4&mold=gone`);
    await expect.poll(() => query(page)).toBe('');
    expect(await page.getByLabel('Baits').inputValue()).toBe(String(recipe.batch.baits));
    expect(await page.getByLabel('Mold').inputValue()).toBe(recipe.mold);
    expect(errors).toEqual([]);
    await close();
  });

  test('is ticked off row by row, which a reload leaves and another batch does not', async () => {
    const { page, errors, close } = await visit(browser, 'colours/bog-myrtle/');
    const rows = await page.locator('[data-planned] .amounts tbody tr').count();
    await expect.poll(() => page.locator('.tick input').count()).toBe(rows);
    const first = page.locator('.tick input').first();
    expect(await first.getAttribute('aria-label')).toMatch(/^\d+\sml \S/);
    await page.locator('.tick label').nth(1).click();
    await first.check();
    await expect.poll(() => ticked(page)).toBe(2);
    await page.reload();
    await expect.poll(() => ticked(page)).toBe(2);
    await page.emulateMedia({ media: 'print' });
    expect(await first.isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });
    await page.getByLabel('Baits').fill('24');
    await expect.poll(() => query(page)).toBe('?baits=24');
    await expect.poll(() => ticked(page)).toBe(0);
    await expect.poll(() => page.locator('.tick input').count()).toBe(rows);
    expect(errors).toEqual([]);
    await close();
  });

  test('has room for its boxes on the narrowest screen', async () => {
    for (const id of ['bog-myrtle', 'thunder-over-chapel', 'ford-gravel']) {
      const { page, close } = await visit(browser, `colours/${id}/`, { viewport: { width: 320, height: 700 } });
      await page.locator('.tick input').first().waitFor();
      expect(await page.evaluate(() => document.documentElement.scrollWidth), id).toBe(320);
      await close();
    }
  });

  test('is told by its sentence alone, which stays in its place while the tables are drawn anew', async () => {
    const { page, close } = await visit(browser, 'colours/bog-myrtle/');
    expect(await page.locator('[data-planned] [aria-live], [data-planned][aria-live]').count()).toBe(0);
    const status = page.locator('[data-planned] [role="status"]');
    await status.evaluate((element) => element.setAttribute('data-before', ''));
    await page.getByLabel('Baits').fill('24');
    await expect.poll(() => says(page)).toMatch(/^Makes 24\sbaits/);
    expect(await page.locator('[data-planned] [role="status"][data-before]').count()).toBe(1);
    expect(await status.locator('table').count()).toBe(0);
    await close();
  });
});

describe('a plan', () => {
  const line = (page: Page, number: number): ReturnType<Page['getByRole']> =>
    page.getByRole('group', { name: `Line ${number}` });

  test('is in the address with all its lines, and there again from it', async () => {
    const { page, errors, close } = await visit(browser, 'plan/');
    expect(query(page)).toBe('');
    await line(page, 1).getByLabel('Colour').selectOption('bog-myrtle');
    await line(page, 1).getByLabel('Baits').fill('37');
    await page.getByRole('button', { name: 'Add a line' }).click();
    await line(page, 2).getByLabel('Colour').selectOption('haw-stone');
    await line(page, 2).getByLabel('Baits').fill('12');
    await expect.poll(() => query(page)).toMatch(/^\?line=bog-myrtle\.[a-z0-9-]+\.37&line=haw-stone\.[a-z0-9-]+\.12$/);
    const before = query(page);
    for (let reloads = 0; reloads < 2; reloads++) {
      await page.reload();
      await expect.poll(() => page.locator('[data-plan-status]').innerText()).toMatch(/^49\sbaits in 2\scolours/);
      expect(await line(page, 2).getByLabel('Colour').inputValue()).toBe('haw-stone');
      expect(query(page)).toBe(before);
    }
    await page.getByRole('button', { name: 'Remove Bog Myrtle' }).click();
    await expect.poll(() => query(page)).toMatch(/^\?line=haw-stone\.[a-z0-9-]+\.12$/);
    expect(await page.getByRole('group', { name: 'Line 2' }).count()).toBe(0);
    expect(errors).toEqual([]);
    await close();
  });

  test('is what makes sense of its address', async () => {
    const { page, errors, close } = await visit(browser, 'plan/?line=gone.minnow-3.4&line=%3Cb%3E&line=x.y.z.9');
    await expect.poll(() => page.locator('[data-plan-status]').innerText()).toMatch(/^\d+\sbaits in 1\scolour:/);
    expect(await page.locator('[data-line]').count()).toBe(1);
    expect(errors).toEqual([]);
    await close();
  });

  test('leads from each colour to its recipe and to the order of work, of the same batch', async () => {
    const { page, errors, close } = await visit(browser, 'plan/');
    await line(page, 1).getByLabel('Colour').selectOption('bog-myrtle');
    await line(page, 1).getByLabel('Baits').fill('37');
    const order = page.getByRole('link', { name: 'Order of work for Bog Myrtle' });
    await expect.poll(() => order.getAttribute('href')).toMatch(/colours\/bog-myrtle\/\?baits=37#work$/);
    await page.getByRole('link', { name: 'Bog Myrtle', exact: true }).click();
    await expect.poll(() => says(page)).toMatch(/^Makes 37\sbaits/);
    expect(errors).toEqual([]);
    await close();
  });

  test('is ticked off colour by colour, which a reload leaves', async () => {
    const { page, errors, close } = await visit(
      browser,
      'plan/?line=bog-myrtle.minnow-3.37&line=haw-stone.minnow-3.12',
    );
    const boxes = page.locator('[data-colour="haw-stone"] .tick input');
    await boxes.first().check();
    await page.reload();
    await expect.poll(() => ticked(page)).toBe(1);
    expect(await boxes.first().isChecked()).toBe(true);
    await line(page, 2).getByLabel('Baits').fill('13');
    await expect.poll(() => page.locator('[data-plan-status]').innerText()).toMatch(/^50\sbaits/);
    await expect.poll(() => ticked(page)).toBe(0);
    expect(errors).toEqual([]);
    await close();
  });
});
