import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import type { Recipe } from '../../src/book/model/recipe.ts';
import { formatTemperature } from '../../src/units/format-quantity.ts';
import { violations } from './axe.ts';
import { book, connect, visit } from './visit.ts';

const PHONE = { width: 390, height: 844 };

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

/** A colour whose cups may get differently hot. */
const unlike = (): Recipe =>
  book().recipes.find(({ cups }) => new Set(cups.map(({ limit }) => limit?.celsius)).size > 1)!;
const spaced = (text: string): string => text.replaceAll('\u00a0', ' ');
const shown = async (page: Page, selector: string): Promise<readonly string[]> =>
  (await page.locator(selector).allInnerTexts()).map(spaced);
const open = (page: Page): Promise<void> => page.getByRole('button', { name: 'At the bench' }).click();
const heading = (page: Page) => page.locator('[data-bench-name]');

describe('at the bench', () => {
  test('each cup of the batch has a screen with its own maximum, and what is struck off is ticked on the page, over a reload too', async () => {
    const recipe = unlike();
    const { page, errors, close } = await visit(browser, `colours/${recipe.id}/?baits=75`, { viewport: PHONE });
    await open(page);
    const second = recipe.cups[1]!;
    for (const [at, cup] of recipe.cups.entries()) {
      await expect.poll(async () => (await heading(page).innerText()).toLowerCase()).toBe(cup.name);
      await expect.poll(() => heading(page).evaluate((head) => head === document.activeElement)).toBe(true);
      const [max] = await shown(page, '.bench .heat-degrees:visible');
      expect(max).toBe(cup.limit && formatTemperature(cup.limit.celsius, book().settings.temperature));
      expect(await shown(page, '.bench-amount')).toEqual(
        await shown(page, `[data-planned] [data-cup="${cup.name}"] .measure b`),
      );
      if (at === 0) await page.getByRole('button', { name: 'Next cup' }).click();
      if (at === 1) break;
    }
    const rows = page.locator('.bench-row');
    const count = await rows.count();
    await rows.last().click();
    await expect
      .poll(() => page.locator('[data-bench-says]').innerText())
      .toMatch(new RegExp(` struck off\\. ${count - 1} to go\\.$`));
    await page.reload();
    await expect
      .poll(() =>
        heading(page)
          .innerText()
          .then((name) => name.toLowerCase()),
      )
      .toBe(second.name);
    await expect.poll(() => rows.last().getByRole('checkbox').isChecked()).toBe(true);
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('dialog.bench').isVisible()).toBe(false);
    await expect
      .poll(() => page.evaluate(() => [location.hash, document.activeElement?.textContent]))
      .toEqual(['', 'At the bench']);
    const ticks = page.locator(`[data-planned] [data-cup="${second.name}"] .tick input`);
    await expect.poll(() => ticks.last().isChecked()).toBe(true);
    await open(page);
    await page.getByRole('button', { name: 'Untick this cup' }).click();
    await expect.poll(() => ticks.last().isChecked()).toBe(false);
    await page.goBack();
    await expect.poll(() => page.locator('dialog.bench').isVisible()).toBe(false);
    expect(errors).toEqual([]);
    await close();
  });

  test('drops and spoons or the scale are chosen once; a cup that the scale can’t weigh says so', async () => {
    const { page, errors, close } = await visit(browser, '', { viewport: PHONE });
    const root = page.url();
    const seen = { weighed: 0, unweighable: 0 };
    await page.evaluate(() => localStorage.setItem('cupbook bench by', 'spoons'));
    for (const { id } of book().recipes.slice(0, 12)) {
      await page.goto(`${root}colours/${id}/#bench`);
      await page.locator('.bench-row').first().waitFor();
      const scale = page.getByLabel('A scale');
      if (seen.weighed === 0 && (await scale.isVisible())) await scale.check();
      if (!(await scale.isVisible())) continue;
      expect(await scale.isChecked()).toBe(true);
      const [cup] = await page.locator('[data-planned] .cup').all();
      const isWeighable = (await cup!.getAttribute('data-weighable')) !== null;
      const expected = await cup!
        .locator('tbody tr')
        .evaluateAll(
          (rows, weighs) =>
            rows.map(
              (row) =>
                row.querySelector(weighs && row.querySelector('.weighs') ? '.exact' : '.measure b')!.textContent!,
            ),
          isWeighable,
        );
      expect(await shown(page, '.bench-amount')).toEqual(expected.map(spaced));
      const isMeasured = (await cup!.locator('.weighs').count()) > 0;
      expect(await page.locator('[data-bench-unweighable]').isVisible()).toBe(isMeasured && !isWeighable);
      seen[isWeighable ? 'weighed' : 'unweighable'] += 1;
    }
    expect(seen.weighed).toBeGreaterThan(1);
    expect(errors).toEqual([]);
    await close();
  });

  test('the timer rings at the set time, after a tap alone, and goes on over a reload', async () => {
    const { page, errors, close } = await visit(browser, `colours/${unlike().id}/`, { viewport: PHONE });
    const time = page.getByRole('timer');
    await page.clock.install();
    await page.evaluate(() => {
      const { createOscillator } = AudioContext.prototype;
      AudioContext.prototype.createOscillator = function () {
        document.body.dataset.tones = String(Number(document.body.dataset.tones ?? 0) + 1);
        return createOscillator.call(this);
      };
    });
    await open(page);
    await page.getByLabel('Ring').selectOption('15');
    await page.getByRole('button', { name: 'Start' }).click();
    await page.clock.fastForward(10_000);
    expect(await time.innerText()).toMatch(/^0:0[45]$/);
    expect(await page.evaluate(() => document.body.dataset.tones)).toBeUndefined();
    await page.clock.fastForward(10_000);
    expect(await page.getByRole('alert').innerText()).toBe('Time’s up.');
    expect(await page.evaluate(() => document.body.dataset.tones)).toBe('3');
    await page.reload();
    await expect.poll(() => time.innerText()).toMatch(/^\+0:0[5-9]$/);
    expect(await page.evaluate(() => document.body.dataset.tones)).toBeUndefined();
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.getByRole('button', { name: 'Reset' }).click();
    expect(await time.innerText()).toBe('0:15');
    expect(errors).toEqual([]);
    await close();
  });

  test('keeps the screen on where the browser allows it, and lets go of it at the end', async () => {
    const { page, errors, close } = await visit(browser, `colours/${unlike().id}/`, {
      viewport: PHONE,
      permissions: ['screen-wake-lock'],
    });
    await page.evaluate(() => {
      const { release } = WakeLockSentinel.prototype;
      WakeLockSentinel.prototype.release = function () {
        document.body.dataset.released = this.type;
        return release.call(this);
      };
    });
    await open(page);
    await expect.poll(() => page.locator('[data-bench-lit]').innerText()).toBe('Screen stays on');
    expect(await page.locator('[data-bench-awake]').innerText()).toBe('');
    await page.getByRole('button', { name: 'First aid' }).click();
    expect(await page.locator('#bench-aid').innerText()).toContain('cool running water');
    await page.getByRole('button', { name: 'Leave' }).click();
    await expect.poll(() => page.evaluate(() => document.body.dataset.released)).toBe('screen');
    expect(errors).toEqual([]);
    await close();
  });

  test('says over plain http from another address that the screen may go dark, and what to do', async () => {
    const context = await browser.newContext({ viewport: PHONE });
    const page = await context.newPage();
    await page.route('http://book.example/**', async (route) => {
      const { pathname } = new URL(route.request().url());
      await route.fulfill({ response: await route.fetch({ url: new URL(`.${pathname}`, inject('address')).href }) });
    });
    await page.goto(`http://book.example/colours/${unlike().id}/#bench`);
    await expect.poll(() => page.locator('[data-bench-lit]').innerText()).toBe('Screen may go dark: see below');
    expect(await page.locator('[data-bench-awake]').innerText()).toMatch(/plain http.* Set your phone/);
    await context.close();
  });

  test('is for thumbs on every screen, with the maximum in sight, the text not cut off, and nothing that axe objects to', async () => {
    const { page, errors, close } = await visit(browser, `colours/${unlike().id}/#bench`, { viewport: PHONE });
    await page.locator('.bench-row').first().waitFor();
    for (const [width, height] of [
      [390, 844],
      [844, 390],
      [1280, 900],
      [320, 640],
      [320, 256],
    ] as const) {
      await page.setViewportSize({ width, height });
      await page.locator('.bench-row').last().scrollIntoViewIfNeeded();
      const found = await page.evaluate(() => {
        const bench = document.querySelector<HTMLElement>('dialog.bench')!;
        const tall = [
          ...bench.querySelectorAll<HTMLElement>('button, select, .bench-row, summary, .bench-by label'),
        ].filter((each) => each.offsetParent !== null);
        const plate = bench.querySelector('.heat-plate:not([hidden] *)')!.getBoundingClientRect();
        return {
          least: Math.min(...tall.map((each) => each.getBoundingClientRect().height)),
          sideways: bench.scrollWidth - bench.clientWidth,
          isPlateSeen: plate.top >= 0 && plate.bottom <= innerHeight,
          amount: getComputedStyle(bench.querySelector('.bench-amount')!).fontSize,
        };
      });
      expect({ width, height, ...found }).toEqual({
        width,
        height,
        least: expect.toSatisfy((px: number) => px >= 56),
        sideways: 0,
        isPlateSeen: true,
        amount: '28px',
      });
    }
    await page.setViewportSize({ width: 320, height: 640 });
    // The spacing of WCAG 1.4.12, which every text must bear.
    await page.evaluate(() => {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync(
        '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important }',
      );
      document.adoptedStyleSheets = [sheet];
    });
    const cut = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('dialog.bench :is(button, label, p, b, h2)')]
        .filter(
          (each) =>
            each.offsetParent !== null && !each.matches('.unseen-words') && each.scrollWidth > each.clientWidth + 1,
        )
        .filter((each) => getComputedStyle(each).display !== 'inline')
        .map((each) => each.outerHTML.slice(0, 80)),
    );
    expect(cut).toEqual([]);
    await page.evaluate(() => {
      document.adoptedStyleSheets = [];
    });
    expect(await violations(page, 'all')).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await violations(page, 'colours')).toEqual([]);
    expect(errors).toEqual([]);
    await close();
  });

  test('a plan has it too, with the colour of each cup', async () => {
    const recipe = unlike();
    const { page, errors, close } = await visit(browser, `plan/?line=${recipe.id}.${recipe.mold}.30#bench`, {
      viewport: PHONE,
    });
    await page.locator('.bench-row').first().waitFor();
    const [cup] = recipe.cups;
    expect((await heading(page).innerText()).toLowerCase()).toBe(`${recipe.title}: ${cup!.name}`.toLowerCase());
    const degrees = formatTemperature(cup!.limit!.celsius, book().settings.temperature);
    expect(spaced(await page.locator('[data-bench-heat-said]').innerText())).toContain(`Never above ${degrees}`);
    expect(errors).toEqual([]);
    await close();
  });

  test('nothing of it is there without JavaScript', async () => {
    const { page, close } = await visit(browser, `colours/${unlike().id}/#bench`, { javaScriptEnabled: false });
    expect(await page.getByRole('button', { name: 'At the bench' }).count()).toBe(0);
    expect(await page.locator('dialog.bench').isVisible()).toBe(false);
    await close();
  });
});
