import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { begin, beginPlain, describeBrown, PHONE, says, verdict } from './at-the-bench.ts';
import { connect, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

const LEARNED = '**/match/learned.js*';
const SOLVER = '**/assets/solver-*.js';

/** Paths that the page asks for from now on. */
function asked(page: Page): readonly string[] {
  const paths: string[] = [];
  page.on('request', (request) => paths.push(new URL(request.url()).pathname));
  return paths;
}

describe('what the book has learned, on the Match page', () => {
  test('is loaded with the program that works with it when recipes are asked for, and once', async () => {
    const { page, errors, close } = await visit(browser, 'match/', PHONE);
    const paths = asked(page);
    await page.getByLabel('Or a target of this book').selectOption('rack-claw');
    expect(paths).toEqual([]);
    await begin(page);
    await expect.poll(() => verdict(page)).toMatch(/too light/);
    await page.getByRole('button', { name: 'I added this' }).first().click();
    await expect.poll(() => verdict(page)).toMatch(/Predicted, not seen/);
    expect(paths.map((path) => /(?:solver|learned)(?=[-.])/.exec(path)?.[0])).toEqual(['solver', 'learned']);
    expect(errors).toEqual([]);
    await close();
  });

  test.each([LEARNED, SOLVER])(
    'if %s cannot be loaded, that is told, with the match as it was, and it is asked for again',
    async (file) => {
      const { page, close } = await visit(browser, 'match/', PHONE);
      await page.route(file, (route) => route.abort());
      await beginPlain(page);
      await expect.poll(() => says(page)).toMatch(/^This page couldn’t get what the book has learned/);
      expect(await page.locator('[data-cups]').innerText()).toMatch(/Your match is safe/);
      await page.unroute(file);
      await page.getByRole('button', { name: 'Try again' }).click();
      await expect.poll(() => page.getByLabel('Poured, ml').count()).toBe(1);
      await page.reload();
      await expect.poll(() => page.getByLabel('Poured, ml').count()).toBe(1);
      await close();
    },
  );

  test('is loaded from a folder on disk too', async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    await page.goto(pathToFileURL(join(inject('site'), 'match/index.html')).href);
    await describeBrown(page);
    await page.getByRole('button', { name: 'Find recipes' }).click();
    await expect.poll(() => says(page)).toMatch(/recipes? found/);
    await context.close();
  });
});
