import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { unfoldTyped } from './at-the-bench.ts';
import { choosePhoto, photo, touch } from './bait-photo.ts';
import { connect, visit } from './visit.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

const channelsApart = (one: string, other: string): number =>
  Math.max(
    ...[1, 3, 5].map((at) =>
      Math.abs(Number.parseInt(one.slice(at, at + 2), 16) - Number.parseInt(other.slice(at, at + 2), 16)),
    ),
  );

describe('a colour from a photo', () => {
  const BAIT = '#8a6a44';

  async function open(page: Page, buffer: Buffer, name?: string): Promise<void> {
    await page.locator('[data-near]').evaluate((details) => details.setAttribute('open', ''));
    await choosePhoto(page, 'From a photo', buffer, name);
  }

  test('is that of the spot that is touched, by the white card if there is one', async () => {
    const { page, errors, foreign, close } = await visit(browser, 'find/', {
      viewport: { width: 390, height: 844 },
      hasTouch: true,
    });
    await open(page, await photo(BAIT, [0.8, 0.6, 0.35]));
    expect(await page.getByRole('button', { name: 'Use this colour' }).isDisabled()).toBe(true);
    await touch(page, 0.25, 0.5);
    const hex = (): Promise<string> => page.locator('[data-photo-hex]').innerText();
    await expect.poll(hex).toMatch(/^#/);
    // The lamp is in it.
    expect(channelsApart((await hex()).slice(0, 7), BAIT)).toBeGreaterThan(20);
    await page.getByLabel('The white card').check();
    await touch(page, 0.75, 0.5);
    await expect.poll(hex).toContain('by the white card');
    const used = (await hex()).slice(0, 7);
    expect(channelsApart(used, BAIT)).toBeLessThanOrEqual(2);
    await page.getByRole('button', { name: 'Use this colour' }).click();
    expect(await page.locator('dialog.photo-dialog').isVisible()).toBe(false);
    expect(await page.getByLabel('The colour, as # and six digits').inputValue()).toBe(used);
    await expect.poll(() => page.locator('[data-count]').innerText()).toContain(`closest to ${used} first`);
    expect(errors).toEqual([]);
    expect(foreign).toEqual([]);
    await close();
  });

  test('can be taken by keyboard, and left without one', async () => {
    const { page, close } = await visit(browser, 'find/');
    await open(page, await photo(BAIT, [1, 1, 1]));
    const canvas = page.locator('.photo-dialog canvas');
    // A key pressed before the photo is drawn goes nowhere.
    await canvas.waitFor();
    await canvas.press('Shift+ArrowLeft');
    for (let step = 0; step < 3; step += 1) await page.keyboard.press('Shift+ArrowLeft');
    await expect.poll(() => page.locator('[data-photo-hex]').innerText()).toMatch(new RegExp(`^${BAIT}, [a-z ]+$`));
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('dialog.photo-dialog').isVisible()).toBe(false);
    expect(await page.getByLabel('The colour, as # and six digits').inputValue()).toBe('');
    // The photo is still there for the next colour.
    await page.getByRole('button', { name: 'From a photo' }).click();
    expect(await page.locator('.photo-dialog canvas').isVisible()).toBe(true);
    await close();
  });

  test('a file that is no photo is named, and nothing breaks', async () => {
    const { page, errors, close } = await visit(browser, 'find/');
    await open(page, Buffer.from('no picture'), 'note.png');
    await expect
      .poll(() => page.locator('.photo-dialog .taken-photo').innerText())
      .toContain('This is a file that is no picture; it takes a JPEG, PNG or WebP picture.');
    await page.getByRole('button', { name: 'Close' }).click();
    expect(errors).toEqual([]);
    await close();
  });

  test('goes into a field of the bench: the target’s, and what was seen of a round', async () => {
    const { page, errors, foreign, close } = await visit(browser, 'match/', {
      viewport: { width: 390, height: 844 },
      hasTouch: true,
    });
    const card = await photo(BAIT, [1, 1, 1]);
    await unfoldTyped(page);
    await choosePhoto(page, 'Over white, from a photo', card);
    await touch(page, 0.25, 0.5);
    await page.getByRole('button', { name: 'Use this colour' }).click();
    await expect.poll(() => page.getByLabel('Over white, as # and six digits').first().inputValue()).toBe(BAIT);
    expect(await page.getByLabel('Over white', { exact: true }).inputValue()).toBe(BAIT);
    await page.locator('#side-0-black-digits').fill('#5d4c36');
    await page.getByRole('button', { name: 'Next: the cup' }).click();
    await page.getByRole('button', { name: 'Start with plain plastic' }).click();
    // The photo is still there: the next colour is often in the same one.
    await page.getByRole('button', { name: 'Seen over black, from a photo' }).click();
    await touch(page, 0.75, 0.5);
    await page.getByRole('button', { name: 'Use this colour' }).click();
    await expect.poll(() => page.getByLabel('Seen over black, as # and six digits').inputValue()).toBe('#f3f3f3');
    await page.reload();
    await page.getByLabel('The target, the cup and the shelf').or(page.locator('[data-setup]')).first().waitFor();
    expect(await page.getByLabel('Over white', { exact: true }).inputValue()).toBe(BAIT);
    expect(errors).toEqual([]);
    expect(foreign).toEqual([]);
    await close();
  });

  test.each(['light', 'dark'] as const)('has nothing that axe objects to, %s', async (colorScheme) => {
    const { page, close } = await visit(browser, 'find/', { colorScheme });
    await open(page, await photo(BAIT, [1, 1, 1]));
    await touch(page, 0.25, 0.5);
    await page.evaluate(AXE);
    const { violations } = await page.evaluate(() =>
      (window as unknown as { axe: { run(): Promise<AxeResults> } }).axe.run(),
    );
    expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
    await close();
  });
});
