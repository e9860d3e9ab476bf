import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { runCupbook } from '../run-cupbook.ts';
import { SMALL_BOOK, writeFiles } from '../small-book.ts';
import { describeBrown, PHONE, says, textOf, untilKept } from './at-the-bench.ts';
import { type StaticServer, serveFolder } from './static-server.ts';
import { connect, visit } from './visit.ts';

let browser: Browser;
let folder: string;
let server: StaticServer;
beforeAll(async () => {
  browser = await connect();
  folder = await mkdtemp(join(tmpdir(), 'cupbook-ounces-'));
  const recipes = join(folder, 'recipes');
  const site = join(folder, 'site');
  await writeFiles(recipes, { ...SMALL_BOOK, 'book.md': '---\ntitle: Back Shed\nunits: { volume: fl oz }\n---\n' });
  const { code, stderr } = await runCupbook(['build', '--recipes', recipes, '--output', site]);
  if (code !== 0) throw new Error(stderr);
  server = await serveFolder(site, '/shed/');
});
afterAll(async () => {
  await Promise.all([browser?.close(), server?.close(), folder && rm(folder, { recursive: true, force: true })]);
});

/** A match that was begun in a book of millilitres. */
const FROM_ML = {
  format: 1,
  title: 'From a friend',
  arrangement: 'solid',
  sides: [{ name: 'body', overWhite: '#a4805a', overBlack: '#6e5a44', thicknessMm: 9 }],
  tolerance: 2,
  mold: 'minnow-3',
  plastic: 'supple',
  plasticMl: 120,
  without: [],
  inStock: false,
  cups: [
    {
      name: 'body',
      steps: [
        { do: 'pour', ml: 10 },
        { do: 'pour', ml: 14 },
        { do: 'see', also: true, overWhite: '#f0e8d8', overBlack: '#403c38' },
      ],
    },
  ],
};

async function exported(page: Page): Promise<typeof FROM_ML> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Export' }).click(),
  ]);
  return JSON.parse(await textOf(download));
}

test('in a book of fluid ounces a match is typed and told in them', async () => {
  const { page, errors, close } = await visit(browser, 'match/', PHONE, server.address);
  const plastic = page.getByLabel('Cup size, fl oz');
  await describeBrown(page);
  expect(await plastic.inputValue()).toBe('4');
  await plastic.fill('0.01');
  await plastic.blur();
  await expect.poll(() => says(page)).toBe('The size of the cup is a number from 0.034 to 3,381, in fluid ounces.');
  await plastic.fill('6.25');
  await plastic.blur();
  await expect.poll(() => says(page)).toBe('');
  expect(await plastic.inputValue()).toBe('6.25');
  await page.getByRole('button', { name: 'Start with plain plastic' }).click();
  const pour = page.getByLabel('Poured, fl oz');
  await page.getByLabel('I looked at it over white').uncheck();
  await page.getByLabel('I looked at it over black').uncheck();
  const note = page.getByRole('button', { name: 'Log this round' });
  await pour.fill('7');
  await note.click();
  await expect.poll(() => says(page)).toBe('The cup holds 6.25 fl oz: you can’t pour more.');
  await pour.fill('0.5');
  await note.click();
  await expect.poll(() => says(page)).toBe('The round is logged.');
  await page.getByText('I added something else').click();
  await page.getByLabel('Plastic, fl oz').fill('1');
  await page.getByRole('button', { name: 'Log the plastic' }).click();
  await expect
    .poll(() => page.locator('.match-log li').allInnerTexts())
    .toEqual(['Poured 0.5\u00a0fl\u00a0oz', 'Added 1\u00a0fl\u00a0oz of plastic']);
  expect(await page.locator('.match-log').innerText()).toContain('6.75\u00a0fl\u00a0oz.');
  expect(await page.locator('[data-file="recipe"]').textContent()).toMatch(
    /plastic: 6\.25 fl oz supple\W+log:\W+pour: 0\.5 fl oz\W+plastic: 1 fl oz supple/,
  );
  // What is typed and not noted is there again as it was typed.
  await pour.fill('0.50');
  await untilKept(page, 'match', '"do":"plastic"');
  await page.reload();
  await expect.poll(() => pour.inputValue()).toBe('0.50');
  expect(await plastic.inputValue()).toBe('6.25');
  const { plasticMl, cups } = await exported(page);
  expect(plasticMl).toBeCloseTo(184.8346, 4);
  expect((cups[0]!.steps[0] as { ml: number }).ml).toBeCloseTo(14.78676, 4);
  expect(errors).toEqual([]);
  await close();
});

test('a match of a book in ml is shown in fluid ounces, and what is not changed of it stays to the last digit', async () => {
  const { page, errors, close } = await visit(browser, 'match/', PHONE, server.address);
  await page.locator('[data-import-file]').setInputFiles({
    name: 'match.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(FROM_ML)),
  });
  await expect.poll(() => says(page)).toBe('Match imported.');
  await page.getByText('The target, the cup and the shelf').click();
  const plastic = page.getByLabel('Cup size, fl oz');
  expect(await plastic.inputValue()).toBe('4.06');
  const tolerance = page.getByLabel('Close enough (ΔE)');
  await tolerance.fill('3');
  await tolerance.blur();
  await page.getByRole('button', { name: 'Undo round 1' }).click();
  const pour = page.getByLabel('Poured, fl oz');
  await expect.poll(() => pour.inputValue()).toBe('0.473');
  await untilKept(page, 'typed', '"pouredMl":14');
  await page.reload();
  await expect.poll(() => pour.inputValue()).toBe('0.473');
  await page.getByRole('button', { name: 'Log this round' }).click();
  await expect.poll(() => says(page)).toBe('The round is logged.');
  expect(await exported(page)).toMatchObject({ ...FROM_ML, tolerance: 3 });
  await page.getByText('The target, the cup and the shelf').click();
  expect(await plastic.inputValue()).toBe('4.06');
  await plastic.fill('0.4');
  await plastic.blur();
  await expect
    .poll(() => says(page))
    .toBe('More than that was poured from a cup: it started with at least 0.82 fl oz.');
  expect(errors).toEqual([]);
  await close();
});
