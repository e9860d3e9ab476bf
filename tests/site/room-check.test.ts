import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { ROOM_CHECK } from '../../src/words/room-check.ts';
import { PHONE } from './at-the-bench.ts';
import { connect, visit } from './visit.ts';

describe.skipIf(inject('browser') === '')('the room check of the page Match', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await connect();
  });
  afterAll(() => browser?.close());

  test('keeps nobody from reading, and is asked for once an evening, before the first cup', async () => {
    const { page, errors, close } = await visit(browser, 'match/', { ...PHONE, roomIsReady: false });
    const room = page.locator('[data-room]');
    const cup = page.getByRole('heading', { name: 'The cup', exact: true });
    const start = page.getByRole('button', { name: 'Start with plain plastic' });
    expect(await room.getByRole('listitem').first().isVisible()).toBe(false);
    await page.getByLabel('Or a target of this book').selectOption('rack-claw');
    await page.getByRole('button', { name: 'Find recipes' }).click();
    await page.getByRole('heading', { name: /^Recipe 1/ }).waitFor();

    const backToCup = page.getByRole('button', { name: 'Change the cup' });
    await backToCup.click();
    // By the keyboard: the question has the focus, its boxes come next.
    await start.focus();
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('First the room: is it ready?');
    expect(await cup.count()).toBe(0);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Space');
    expect(await room.getByRole('checkbox').first().isChecked()).toBe(true);
    for (const target of [...(await room.getByRole('listitem').all()), room.getByRole('button')])
      expect((await target.boundingBox())!.height).toBeGreaterThanOrEqual(44);

    await page.reload();
    await room.waitFor();
    await room.getByText('Before you heat: is the room ready?').click();
    expect(await room.getByRole('checkbox', { checked: true }).count()).toBe(1);

    await expect.poll(() => backToCup.isVisible()).toBe(true);
    await backToCup.click();
    await start.click();
    await room.getByRole('button', { name: 'The room is ready' }).click();
    await cup.waitFor();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('cup-0-head');
    expect(await room.innerText()).toBe('The room is ready');

    // Another match of the same evening.
    page.on('dialog', (dialog) => void dialog.accept());
    await page.getByRole('button', { name: 'New match' }).click();
    await page.getByLabel('Or a target of this book').selectOption('rack-claw');
    await start.click();
    await cup.waitFor();
    expect(await room.getByRole('button').isVisible()).toBe(false);
    expect(errors).toEqual([]);
    await close();
  });

  test('stands as text where no script runs', async () => {
    const { page, close } = await visit(browser, 'match/', { javaScriptEnabled: false, roomIsReady: false });
    for (const { text } of ROOM_CHECK)
      expect(await page.locator('li', { hasText: text }).last().isVisible()).toBe(true);
    expect(await page.locator('[data-room]').isVisible()).toBe(false);
    await close();
  });
});
