import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { masterFrame } from '../../src/shapes/master-frame.ts';
import { book, connect, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

test.each([390, 700, 1280, 1500])(
  'all baits of the wall are to one scale, and no heading stands among the tiles, at %s px',
  async (width) => {
    const { page, errors, close } = await visit(browser, '', { viewport: { width, height: 844 } });
    const tiles = await page.locator('li.tile').evaluateAll((all) =>
      all.map((each) => ({
        id: new URL(each.querySelector('a')!.href).pathname.replace(/^.*\/colours\/|\/$/g, ''),
        width: each.querySelector('img')!.getBoundingClientRect().width,
      })),
    );
    const { recipes, molds, looks } = book();
    expect(tiles).toHaveLength(recipes.length + looks.length);
    const scales = recipes.map(({ id, mold }) => {
      const { columns, pixelsPerMm } = masterFrame(molds.find((each) => each.id === mold)!);
      return tiles.find((tile) => tile.id === id)!.width / (columns / pixelsPerMm);
    });
    expect(Math.max(...scales) / Math.min(...scales)).toBeLessThan(1.005);
    const [wall, ...headings] = await page
      .locator('.walls, .hue > h2')
      .evaluateAll((all) => all.map((each) => each.getBoundingClientRect().width));
    expect(new Set(headings)).toEqual(new Set([wall]));
    expect(errors).toEqual([]);
    await close();
  },
);

test('the first bait stands on a phone’s first screen, above the bar', async () => {
  const { page, close } = await visit(browser, '', { viewport: { width: 390, height: 844 } });
  const tile = (await page.locator('li.tile').first().boundingBox())!;
  const bar = (await page.locator('.parts').boundingBox())!;
  expect(tile.y + tile.height).toBeLessThan(bar.y);
  await close();
});

test('each picture of a bait is there once it is scrolled to', async () => {
  const { page, errors, close } = await visit(browser, '', { viewport: { width: 390, height: 844 } });
  const pictures = page.locator('li.tile img');
  for (const picture of await pictures.all()) {
    await picture.scrollIntoViewIfNeeded();
    await expect
      .poll(() => picture.evaluate((img: HTMLImageElement) => img.complete && img.naturalWidth))
      .toBeGreaterThan(0);
    // A long bait takes the larger file where its tile is wider than the smaller one.
    expect(
      await picture.evaluate((img: HTMLImageElement) => {
        const isLarge = img.currentSrc.includes('tile-2x');
        return isLarge === img.getBoundingClientRect().width > 320;
      }),
    ).toBe(true);
  }
  expect(errors).toEqual([]);
  await close();
});
