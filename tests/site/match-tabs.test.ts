import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { begin, beginPlain, kept, noteRound, PHONE, says, untilKept } from './at-the-bench.ts';
import { connect, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

const LOST =
  'This match was changed in another tab, and this page now shows that version. Your last step here was not saved: please redo it.';

test('two tabs follow each other, and a reload loses nothing of either', async () => {
  const { page: one, errors, close } = await visit(browser, 'match/', PHONE);
  await begin(one);
  await untilKept(one, 'match', '"do":"see"');
  const other = await one.context().newPage();
  await other.goto(one.url());
  const log = other.locator('.match-log ol li');
  await expect.poll(() => log.count()).toBe(2);
  await noteRound(one, '12', '#b44a36', '#864a38');
  await expect.poll(() => log.count()).toBe(3);
  await other.getByText('I added something else').click();
  await other.getByLabel('Plastic, ml').fill('7');
  await other.getByRole('button', { name: 'Log the plastic' }).click();
  await expect.poll(() => one.locator('.match-log ol li').count()).toBe(4);
  await one.reload();
  await expect.poll(() => one.locator('.match-log ol li').count()).toBe(4);
  expect(errors).toEqual([]);
  await close();
});

test('a tab that heard nothing does not overwrite newer work, and says what was not kept', async () => {
  const { page: one, errors, close } = await visit(browser, 'match/', PHONE);
  await begin(one);
  await untilKept(one, 'match', '"do":"see"');
  const other = await one.context().newPage();
  await other.addInitScript(() =>
    Object.assign(window, {
      BroadcastChannel: class {
        postMessage(): void {}
      },
    }),
  );
  await other.goto(one.url());
  const log = other.locator('.match-log ol li');
  await expect.poll(() => log.count()).toBe(2);
  await noteRound(one, '12', '#b44a36', '#864a38');
  await untilKept(one, 'match', '#b44a36');
  expect(await log.count()).toBe(2);
  // What another tab did may not be drawn over, nor what it has kept.
  await other.getByLabel('Name of the colour').fill('Other');
  await expect.poll(() => says(other)).toBe(LOST);
  await expect.poll(() => log.count()).toBe(3);
  expect(await kept(one, 'match')).not.toContain('"Other"');
  await other.getByLabel('Name of the colour').fill('Other');
  await untilKept(other, 'match', '"title":"Other"');
  expect(await kept(other, 'match')).toContain('#b44a36');
  expect(errors).toEqual([]);
  await close();
});

test('a cup of plain plastic is there again after a reload', async () => {
  const { page, errors, close } = await visit(browser, 'match/', PHONE);
  await beginPlain(page);
  await untilKept(page, 'typed', '"begun":true');
  await page.reload();
  await expect.poll(() => page.locator('[data-cup]').count()).toBe(1);
  expect(await page.getByLabel('Or a target of this book').isVisible()).toBe(false);
  expect(errors).toEqual([]);
  await close();
});

test('a tab follows changes that are each followed at once by a reload', async () => {
  const { page: one, errors, close } = await visit(browser, 'match/', PHONE);
  await begin(one);
  await untilKept(one, 'match', '"do":"see"');
  const other = await one.context().newPage();
  await other.goto(one.url());
  const name = other.getByLabel('Name of the colour');
  await expect.poll(() => other.locator('.match-log ol li').count()).toBe(2);
  for (let change = 1; change <= 10; change++) {
    await one.getByLabel('Name of the colour').fill(`Change ${change}`);
    await one.reload();
  }
  await expect.poll(() => name.inputValue()).toBe('Change 10');
  expect(await kept(one, 'match')).toContain('"title":"Change 10"');
  expect(errors).toEqual([]);
  await close();
});

test('the browser is asked once to keep a match for long, when there is one, and nothing is said of its answer', async () => {
  const { page, errors, close } = await visit(browser, 'match/', PHONE);
  await page.addInitScript(() => {
    StorageManager.prototype.persist = () => {
      localStorage.setItem('asked', `${localStorage.getItem('asked') ?? ''}x`);
      return Promise.reject(new Error('no'));
    };
  });
  await page.reload();
  const asked = (): Promise<string | null> => page.evaluate(() => localStorage.getItem('asked'));
  await page.getByLabel('Or a target of this book').selectOption('rack-claw');
  await untilKept(page, 'match', '"target":"rack-claw"');
  expect(await asked()).toBe(null);
  await begin(page);
  await expect.poll(asked).toBe('x');
  expect(await says(page)).toBe('The round is logged.');
  await page.reload();
  await noteRound(page, '12', '#b44a36', '#864a38');
  await untilKept(page, 'match', '#b44a36');
  expect(await asked()).toBe('x');
  expect(errors).toEqual([]);
  await close();
});
