import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import Color from 'colorjs.io';
import { differenceCiede2000 } from 'culori';
import type { Browser, Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Look, Recipe, RecipeLook } from '../../src/book/model.ts';
import { book, connect, visit } from './visit.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

/** Rows once the search has answered: id and what is said of each. */
async function rows(page: Page): Promise<readonly (readonly [id: string, about: string])[]> {
  await page.locator('[data-results]:not([aria-busy])').waitFor({ state: 'attached' });
  return page
    .locator('[data-results] .found')
    .evaluateAll((items) =>
      items.map(
        (item) =>
          [
            new URL(item.querySelector('a')!.href).pathname.replace(/^.*\/colours\/|\/$/g, ''),
            item.querySelector('.found-about')!.textContent!,
          ] as const,
      ),
    );
}

async function near(page: Page, hex: string): Promise<void> {
  await page.locator('[data-near]').evaluate((details) => details.setAttribute('open', ''));
  await page.getByLabel('The colour, as # and six digits').fill(hex);
}

const deltaE = differenceCiede2000();

/** ΔE00 of a library to everything that is seen of a colour, the least. */
function least(hex: string, colour: Recipe | RecipeLook): number {
  const looks: readonly Look[] = [
    colour.body,
    colour.thin,
    ...(colour.other ? [colour.other] : []),
    ...('cups' in colour && ['swirl', 'tipped'].includes(colour.pattern) ? colour.cups.map(({ body }) => body) : []),
  ];
  const all = looks.flatMap(({ overWhite, overBlack }) => [overWhite.hex, overBlack.hex]);
  return Math.min(...all.map((each) => deltaE(hex, each)));
}

/** Whether numbers rise, but for the two hundredths by which the white points of two libraries set them apart. */
const inOrder = (numbers: readonly number[]): boolean =>
  numbers.every((number, at) => at === 0 || number > numbers[at - 1]! - 0.02);

/** A photo: on the left a bait, on the right a white card, under a lamp. */
async function photo(bait: string, lamp: readonly [number, number, number]): Promise<Buffer> {
  const under = (hex: string): { r: number; g: number; b: number } => {
    const linear = new Color(hex).to('srgb-linear').coords.map((channel, at) => channel! * lamp[at]!);
    const [r, g, b] = new Color('srgb-linear', linear as [number, number, number]).to('srgb').coords;
    return { r: Math.round(r! * 255), g: Math.round(g! * 255), b: Math.round(b! * 255) };
  };
  const half = (background: { r: number; g: number; b: number }): Promise<Buffer> =>
    sharp({ create: { width: 400, height: 500, channels: 3, background } })
      .png()
      .toBuffer();
  return sharp({ create: { width: 800, height: 500, channels: 3, background: '#808080' } })
    .composite([
      { input: await half(under(bait)), left: 0, top: 0 },
      { input: await half(under('#f3f3f3')), left: 400, top: 0 },
    ])
    .png()
    .toBuffer();
}

async function touch(page: Page, x: number, y: number): Promise<void> {
  const { width, height } = (await page.locator('.photo-dialog canvas').boundingBox())!;
  await page.locator('.photo-dialog canvas').click({ position: { x: width * x, y: height * y } });
}

const channelsApart = (one: string, other: string): number =>
  Math.max(
    ...[1, 3, 5].map((at) =>
      Math.abs(Number.parseInt(one.slice(at, at + 2), 16) - Number.parseInt(other.slice(at, at + 2), 16)),
    ),
  );

describe('the colour nearest to another', () => {
  test('comes first, all others after it by ΔE00, and it is said what of a colour is that near', async () => {
    const { page, errors, foreign, close } = await visit(browser, 'find/');
    const { recipes, looks } = book();
    const wanted = recipes.find(({ id }) => id === 'alder-smoke')!;
    await near(page, wanted.thin.overBlack.hex);
    const found = await rows(page);
    expect(found[0]).toEqual([wanted.id, 'ΔE 0.0, thin part over black']);
    expect(found.length).toBe(Math.min(40, recipes.length + looks.length));
    const all = new Map([...recipes, ...looks].map((colour) => [colour.id, colour]));
    const apart = found.map(([id]) => least(wanted.thin.overBlack.hex, all.get(id)!));
    expect(inOrder(apart)).toBe(true);
    expect(await page.locator('[data-count]').innerText()).toContain(
      `the nearest to ${wanted.thin.overBlack.hex} first`,
    );
    expect(errors).toEqual([]);
    expect(foreign).toEqual([]);
    await close();
  });

  test('is in the address, goes together with words and filters, and is taken back', async () => {
    const { page, close } = await visit(browser, 'find/?near=8a6a44');
    expect(await page.getByLabel('The colour, as # and six digits').inputValue()).toBe('#8a6a44');
    await rows(page);
    await page.locator('[data-narrow]').evaluate((details) => details.setAttribute('open', ''));
    await page.locator('[data-facet="pattern"]').evaluate((details) => details.setAttribute('open', ''));
    await page.locator('input[name="pattern"][value="laminate"]').check();
    const laminates = [...book().recipes, ...book().looks].filter(({ pattern }) => pattern === 'laminate');
    const found = await rows(page);
    expect([...found].map(([id]) => id).sort()).toEqual(laminates.map(({ id }) => id).sort());
    const apart = found.map(([id]) => least('#8a6a44', laminates.find((each) => each.id === id)!));
    expect(inOrder(apart)).toBe(true);
    expect(new URL(page.url()).searchParams.get('near')).toBe('8a6a44');
    await page.getByRole('button', { name: 'Clear all' }).click();
    await expect.poll(() => page.url()).not.toContain('near');
    await expect
      .poll(async () => new Set((await rows(page)).map(([id]) => id)).size)
      .toBe(book().recipes.length + book().looks.length);
    await close();
  });

  test('what is no colour is said, and asks for nothing', async () => {
    const { page, errors, close } = await visit(browser, 'find/');
    await near(page, '#zz');
    await expect.poll(() => page.locator('[data-near-chosen]').innerText()).toBe('no colour: # and six digits');
    expect(page.url()).not.toContain('near');
    expect(errors).toEqual([]);
    await close();
  });
});

describe('a colour from a photo', () => {
  const BAIT = '#8a6a44';

  async function open(page: Page, buffer: Buffer, name = 'bait.png'): Promise<void> {
    await page.locator('[data-near]').evaluate((details) => details.setAttribute('open', ''));
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'From a photo' }).click(),
    ]);
    await chooser.setFiles({ name, mimeType: 'image/png', buffer });
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
    expect(channelsApart(await hex(), BAIT)).toBeGreaterThan(20);
    await page.getByLabel('The white card').check();
    await touch(page, 0.75, 0.5);
    await expect.poll(hex).toContain('by the white card');
    const used = (await hex()).slice(0, 7);
    expect(channelsApart(used, BAIT)).toBeLessThanOrEqual(2);
    await page.getByRole('button', { name: 'Use this colour' }).click();
    expect(await page.locator('dialog.photo-dialog').isVisible()).toBe(false);
    expect(await page.getByLabel('The colour, as # and six digits').inputValue()).toBe(used);
    await expect.poll(() => page.locator('[data-count]').innerText()).toContain(`the nearest to ${used} first`);
    expect(errors).toEqual([]);
    expect(foreign).toEqual([]);
    await close();
  });

  test('can be taken by keyboard, and left without one', async () => {
    const { page, close } = await visit(browser, 'find/');
    await open(page, await photo(BAIT, [1, 1, 1]));
    await page.locator('.photo-dialog canvas').press('Shift+ArrowLeft');
    for (let step = 0; step < 3; step += 1) await page.keyboard.press('Shift+ArrowLeft');
    await expect.poll(() => page.locator('[data-photo-hex]').innerText()).toBe(BAIT);
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
      .poll(() => page.locator('[data-photo-says]').innerText())
      .toBe('This browser cannot read note.png as a photo. Take a JPEG or a PNG.');
    await page.getByRole('button', { name: 'Close' }).click();
    expect(errors).toEqual([]);
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
