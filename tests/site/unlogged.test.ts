import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { begin, noteRound, PHONE, says, unfoldTyped, untilKept, verdict } from './at-the-bench.ts';
import { book, connect, visit } from './visit.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

const asked = (page: Page): Locator => page.locator('[data-asks]');
const file = async (page: Page): Promise<string> => (await page.locator('[data-file="recipe"]').textContent())!;

/** A second round that is on the target, though what was proposed for it is not in the log. */
async function forget(page: Page): Promise<string> {
  await begin(page);
  const proposed = await page
    .locator('.match-cup .match-proposals li')
    .first()
    .locator('[data-take]')
    .first()
    .innerText();
  const target = book().targets.find(({ id }) => id === 'rack-claw')!.parts[0]!;
  await noteRound(page, '14', target.overWhite.hex, target.overBlack!.hex);
  return proposed;
}

describe('a round that moved with nothing logged', () => {
  test('is asked about before it is said to be left, heard, and there again after a reload', async () => {
    const { page, errors, close } = await visit(browser, 'match/', PHONE);
    await forget(page);
    await expect
      .poll(() => asked(page).innerText())
      .toMatch(
        /^Nothing is logged since round 1, but the colour has changed: .*ΔE\s\d.*Did you add what was proposed: .*\?$/,
      );
    expect(await says(page)).toBe('The round is logged.');
    expect(await page.locator('[data-heard]').innerText()).toMatch(/^Nothing is logged since round 1/);
    expect(await page.locator('.match-cup').innerText()).not.toMatch(/Leave it/);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('cup-0-asks');
    expect(await page.locator('[data-take]').count()).toBe(0);
    for (const button of await page.locator('[data-went-in]').all()) {
      const { width, height } = (await button.boundingBox())!;
      expect(Math.min(width, height)).toBeGreaterThanOrEqual(48);
    }
    await untilKept(page, 'match', '"also"');
    await page.reload();
    await expect.poll(() => asked(page).count()).toBe(1);
    expect(errors).toEqual([]);
    await close();
  });

  test('“Yes” puts what was proposed before the round, by keyboard', async () => {
    const { page, errors, close } = await visit(browser, 'match/', PHONE);
    await forget(page);
    const before = await file(page);
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('cup-0-asks');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect.poll(() => says(page)).toBe('Logged, before round 2.');
    expect(await asked(page).count()).toBe(0);
    await expect.poll(() => verdict(page)).toMatch(/Within tolerance/);
    expect(await page.locator('.match-next').innerText()).toMatch(/^Leave it/);
    const after = await file(page);
    expect(after.match(/add: \{/g)).toHaveLength(before.match(/add: \{/g)!.length + 1);
    expect(after.indexOf('add: {', after.indexOf('seen:'))).toBeLessThan(after.lastIndexOf('seen:'));
    expect(errors).toEqual([]);
    await close();
  });

  test('“Nothing” is kept, and the advice follows', async () => {
    const { page, close } = await visit(browser, 'match/', PHONE);
    await forget(page);
    await page.getByRole('button', { name: 'Nothing', exact: true }).click();
    await expect.poll(() => says(page)).toBe('Logged: nothing went in before round 2.');
    expect(await file(page)).toContain('add: {}');
    await untilKept(page, 'match', '"amounts":[]');
    await page.reload();
    await expect.poll(() => page.locator('.match-next').innerText()).toMatch(/^Leave it/);
    expect(await page.locator('.match-log').innerText()).toContain('Nothing went in');
    await close();
  });

  test('“Something else” leads to its field, and what is named goes before the round, after a reload as well', async () => {
    const { page, close } = await visit(browser, 'match/', PHONE);
    await forget(page);
    await page.getByRole('button', { name: 'Something else', exact: true }).click();
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('cup-0-material');
    await untilKept(page, 'typed', 'beforeRound');
    await page.reload();
    await expect.poll(() => page.getByLabel('It went in before round 2').isChecked()).toBe(true);
    await page.getByLabel('Material').selectOption('lamp-black');
    await page.getByLabel('Amount').fill('2 drops');
    await page.getByRole('button', { name: 'Log the material' }).click();
    await expect.poll(() => says(page)).toBe('Logged, before the round.');
    expect(await asked(page).count()).toBe(0);
    const text = await file(page);
    expect(text.indexOf('lamp-black: 2 drops')).toBeLessThan(text.lastIndexOf('seen:'));
    await close();
  });

  test.each(['light', 'dark'] as const)('the question has nothing that axe objects to, %s', async (colorScheme) => {
    const { page, close } = await visit(browser, 'match/', { ...PHONE, colorScheme, bypassCSP: true });
    await forget(page);
    await expect.poll(() => asked(page).count()).toBe(1);
    await page.evaluate(AXE);
    const { violations } = await page.evaluate(
      (): Promise<AxeResults> => (globalThis as unknown as { axe: typeof import('axe-core') }).axe.run(),
    );
    expect(violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 120)}`))).toEqual([]);
    await close();
  });
});

test('what an instrument measured can be typed, is kept as measured and goes into the files as such', async () => {
  const { page, errors, close } = await visit(browser, 'match/', PHONE);
  const digits = page.getByLabel('Over white, as # and six digits');
  await unfoldTyped(page);
  await digits.fill('48.2 41.5 30.25');
  await digits.press('Tab');
  await page.getByLabel(/^Seen over black too/).uncheck();
  await page.getByRole('button', { name: 'Next: the cup' }).click();
  await page.getByRole('button', { name: 'Find recipes' }).click();
  await page.getByRole('button', { name: 'Use recipe 1' }).first().click();
  await page.getByLabel('Poured, ml').fill('14');
  await page.getByLabel('Seen over white, as # and six digits').fill('48.2 41.5 30.25');
  await page.getByLabel('I looked at it over black').uncheck();
  await page.getByRole('button', { name: 'Log this round' }).click();
  await expect.poll(() => says(page)).toBe('The round is logged.');
  expect(await file(page)).toContain('seen: { over-white: { lab: [48.2, 41.5, 30.25] } }');
  expect(await page.locator('[data-file="target"]').textContent()).toContain(
    'over-white: { lab: [48.2, 41.5, 30.25] }',
  );
  await untilKept(page, 'match', '"L":48.2');
  await page.reload();
  await expect.poll(() => page.locator('.match-log').innerText()).toContain('saw 48.2 41.5 30.25 over white');
  expect(await page.locator('#side-0-white-digits').inputValue()).toBe('48.2 41.5 30.25');
  expect(errors).toEqual([]);
  await close();
});

test('a look that the shelf cannot make can be said to stand: it is doubted no more, and the file says so', async () => {
  const { page, errors, close } = await visit(browser, 'match/', PHONE);
  await begin(page);
  await noteRound(page, '14', '#3a5a9f', '#1a2a4f');
  await page.getByRole('button', { name: 'Nothing', exact: true }).click();
  const again = page.getByRole('button', { name: 'I looked again: it is right' });
  await again.click();
  await expect.poll(() => again.count()).toBe(0);
  expect(await file(page)).toContain('checked: true');
  expect(errors).toEqual([]);
  await close();
});
