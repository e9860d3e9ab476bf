import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { connect, pagesByKind, visit } from './visit.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

const samples = pagesByKind().flatMap(({ kind, urls }) =>
  (['light', 'dark'] as const).map((colorScheme) => ({ kind, url: urls[0]!, colorScheme })),
);

async function violations(url: string, colorScheme: 'light' | 'dark'): Promise<readonly string[]> {
  // The page's own policy would keep the checker out.
  const { page, close } = await visit(browser, url, { colorScheme, bypassCSP: true });
  await page.evaluate(AXE);
  const results = await page.evaluate(
    (): Promise<AxeResults> => (globalThis as unknown as { axe: typeof import('axe-core') }).axe.run(),
  );
  await close();
  return results.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 120)} ${failureSummary}`),
  );
}

describe.each(samples)('a page of the kind $kind in $colorScheme', ({ url, colorScheme }) => {
  test('has nothing that axe objects to', async () => {
    expect((await violations(url, colorScheme)).slice(0, 5)).toEqual([]);
  });
});

describe('by keyboard', () => {
  test('the first stop is the way past the header', async () => {
    const { page, close } = await visit(browser, '');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('href'))).toBe('#main');
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('main');
    await close();
  });

  test('every stop of the first page shows where it is', async () => {
    const { page, close } = await visit(browser, '');
    for (let stop = 0; stop < 12; stop += 1) {
      await page.keyboard.press('Tab');
      const shown = await page.evaluate(() => {
        const style = getComputedStyle(document.activeElement!);
        return style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) > 0;
      });
      expect(shown, `stop ${stop + 1}`).toBe(true);
    }
    await close();
  });
});

test('the parts to touch on the first page are large enough for gloves', async () => {
  const { page, close } = await visit(browser, '', { viewport: { width: 390, height: 844 }, hasTouch: true });
  const small = await page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('main a, main button, main input')]
      .filter((element) => element.offsetParent !== null)
      .map((element) => ({ what: element.outerHTML.slice(0, 80), ...element.getBoundingClientRect().toJSON() }))
      .filter(({ width, height }) => Math.min(width, height) < 44)
      .map(({ what, width, height }) => `${what} ${Math.round(width)} × ${Math.round(height)}`),
  );
  expect(small.slice(0, 5)).toEqual([]);
  await close();
});
