import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Download, Page } from 'playwright-core';
import { expect } from 'vitest';

/** A telephone. */
export const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, acceptDownloads: true } as const;

/** What was downloaded: the browser may run elsewhere, so its copy is asked for. */
export async function textOf(download: Download): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'cupbook-bench-'));
  const path = join(folder, 'file');
  await download.saveAs(path);
  const text = readFileSync(path, 'utf8');
  rmSync(folder, { recursive: true });
  return text;
}

/** What the page says last. */
export const says = (page: Page): Promise<string> => page.locator('[data-says]').innerText();
/** The verdict on the first cup. */
export const verdict = (page: Page): Promise<string> => page.locator('.match-verdict').first().innerText();

/** Back to the first question, from wherever the page is. */
export async function toTarget(page: Page): Promise<void> {
  const back = page.getByRole('button', { name: 'Change the target' });
  if (await back.isVisible()) await back.click();
}

/** Waits until photos that were chosen are taken; where something is doubtful of them, takes them. */
export async function takePhotos(page: Page): Promise<void> {
  const use = page.locator('[data-use-measured]');
  const dialog = page.locator('.photo-dialog');
  await expect.poll(async () => (await use.isVisible()) || !(await dialog.isVisible())).toBe(true);
  if (await use.isVisible()) await use.click();
}

/** Unfolds the fields in which the colours of a target are picked or typed. */
export async function unfoldTyped(page: Page): Promise<void> {
  const folded = page.locator('.match-typed:not([open]) > summary');
  // Each that is unfolded is one less.
  for (let left = await folded.count(); left > 0; left--) await folded.first().click();
}

/** Types the colours of a side of the target. */
export async function typeSide(page: Page, side: number, overWhite: string, overBlack: string): Promise<void> {
  await unfoldTyped(page);
  await page.locator(`#side-${side}-white-digits`).fill(overWhite);
  await page.locator(`#side-${side}-black-digits`).fill(overBlack);
}

/** Types a brown target of one colour, and goes on to what is poured. */
export async function describeBrown(page: Page): Promise<void> {
  await typeSide(page, 0, '#8a6a44', '#5d4c36');
  await page.getByRole('button', { name: 'Next: the cup' }).click();
}

/** Begins a match of that target with plain plastic. */
export async function beginPlain(page: Page): Promise<void> {
  await describeBrown(page);
  await page.getByRole('button', { name: 'Start with plain plastic' }).click();
}

/** Notes a round of the only cup. */
export async function noteRound(page: Page, ml: string, overWhite: string, overBlack: string): Promise<void> {
  await page.getByLabel('Poured, ml').fill(ml);
  await page.getByLabel('Seen over white', { exact: true }).fill(overWhite);
  await page.getByLabel('Seen over black', { exact: true }).fill(overBlack);
  const rounds = page.locator('.match-log ol li', { hasText: /^Round / });
  const before = await rounds.count();
  await page.getByRole('button', { name: 'Log this round' }).click();
  await expect.poll(() => rounds.count()).toBe(before + 1);
  await expect.poll(() => says(page)).toMatch(/^The round is logged\./);
}

/** From a target of the book to a cup with one round in its log. */
export async function begin(page: Page): Promise<void> {
  await toTarget(page);
  await page.getByLabel('Or a target of this book').selectOption('rack-claw');
  await page.getByRole('button', { name: 'Find recipes' }).click();
  await page.getByRole('button', { name: 'Use recipe 1' }).first().click();
  await noteRound(page, '14', '#b84a36', '#8a4a38');
}

/** What the browser keeps of the match, or of what was typed for it and is not noted; puts something else in its place. */
export async function kept(page: Page, what: 'match' | 'typed', write?: string): Promise<string> {
  return page.evaluate(
    ({ typed, text }) =>
      new Promise<string>((resolve) => {
        const request = indexedDB.open('cupbook-bench', 1);
        request.onsuccess = () => {
          const store = request.result.transaction('work', 'readwrite').objectStore('work');
          const keys = store.getAllKeys();
          keys.onsuccess = () => {
            const key = keys.result.find((each) => String(each).endsWith('#draft') === typed);
            if (key === undefined) return resolve('');
            const done = text === undefined ? store.get(key) : store.put(text, key);
            done.onsuccess = () => resolve(String(done.result));
          };
        };
      }),
    { typed: what === 'typed', text: write },
  );
}

/** Waits until the browser keeps something: the page lets the reader stop for a moment first. */
export const untilKept = (page: Page, what: 'match' | 'typed', text: string): Promise<void> =>
  expect.poll(() => kept(page, what)).toContain(text);

/** Changes what the browser keeps, as an earlier version of the page, or of the book, may have left it. */
export async function keptInstead(page: Page, change: (text: string) => string): Promise<void> {
  await kept(page, 'match', change(await kept(page, 'match')));
}
