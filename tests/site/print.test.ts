import jsQR from 'jsqr';
import { PDFDocument } from 'pdf-lib';
import type { Browser, Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { LABEL_SHEETS, labelsOn } from '../../src/render/label/label-sheet.ts';
import { paintedPages, paintedSvg } from './painted-pdf.ts';
import { book, connect, pagesByKind, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

const MM = 72 / 25.4;
const INCH = 72;
const PAPERS = [
  { kind: 'recipe-card', width: 105 * MM, height: 148 * MM, papers: '[data-card]' },
  { kind: 'recipe-card-4x6', width: 4 * INCH, height: 6 * INCH, papers: '[data-card]' },
  { kind: 'cards-a4', width: 210 * MM, height: 297 * MM, papers: '.sheet' },
  { kind: 'cards-letter', width: 8.5 * INCH, height: 11 * INCH, papers: '.sheet' },
] as const;

const urlsOf = (kind: string): readonly string[] => pagesByKind().find((page) => page.kind === kind)!.urls;

/** The pages of a printed page, in points. */
async function printed(page: Page): Promise<readonly { readonly width: number; readonly height: number }[]> {
  const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
  return (await PDFDocument.load(pdf)).getPages().map((sheet) => sheet.getSize());
}

/** The codes on the printed pages of a page, read back from the PDF. */
async function codesPrinted(page: Page): Promise<readonly string[]> {
  const sheets = await paintedPages(await page.pdf({ preferCSSPageSize: true, printBackground: true }));
  const found: string[] = [];
  for (const sheet of sheets) {
    const codes = sheet.paths.filter(({ lineMm, subpaths }) => lineMm !== undefined && subpaths.length > CODE_RUNS);
    for (const code of codes) {
      const one = paintedSvg({ ...sheet, paths: [code] }, PX_PER_MM);
      const { data, info } = await sharp(Buffer.from(one))
        .flatten({ background: '#fff' })
        .ensureAlpha()
        .raw()
        .toBuffer({ resolveWithObject: true });
      found.push(jsQR(new Uint8ClampedArray(data), info.width, info.height)?.data ?? 'not read');
    }
  }
  return found;
}

/** No other drawing is a line in so many pieces. */
const CODE_RUNS = 100;
const PX_PER_MM = 8;

/** What sticks out of its paper, or is cut off inside a part of it, as it is printed. */
async function cutOff(page: Page, papers: string): Promise<readonly string[]> {
  await page.emulateMedia({ media: 'print' });
  return page.evaluate((selector) => {
    const faults: string[] = [];
    // Half a pixel comes from rounding mm to px.
    const slack = 0.75;
    for (const paper of document.querySelectorAll<HTMLElement>(selector)) {
      const frame = paper.getBoundingClientRect();
      const name = paper.dataset.card ?? 'sheet';
      if (paper.scrollHeight > paper.clientHeight + 1)
        faults.push(`${name}: ${paper.scrollHeight} px in ${paper.clientHeight} px`);
      const texts = document.createTreeWalker(paper, NodeFilter.SHOW_TEXT);
      for (let node = texts.nextNode(); node; node = texts.nextNode()) {
        if (node.nodeValue?.trim() === '' || node.parentElement?.closest('svg')) continue;
        const range = document.createRange();
        range.selectNodeContents(node);
        for (const box of range.getClientRects()) {
          const outside =
            box.left < frame.left - slack ||
            box.right > frame.right + slack ||
            box.top < frame.top - slack ||
            box.bottom > frame.bottom + slack;
          if (outside) faults.push(`${name}: “${node.nodeValue?.trim()}” runs out of the paper`);
        }
      }
    }
    return faults;
  }, papers);
}

describe.each(PAPERS)('the paper of $kind', ({ kind, width, height, papers }) => {
  test('has its size, and as many pages as it shows; nothing is cut off, of any recipe', async () => {
    const urls = urlsOf(kind);
    const { page, close } = await visit(browser, urls[0]!);
    const root = page.url().replace(urls[0]!, '');
    const faults: string[] = [];
    for (const [at, url] of urls.entries()) {
      if (at > 0) await page.goto(root + url);
      if (at < 3) {
        const shown = await page.locator(papers).count();
        const pages = await printed(page);
        expect(shown).toBeGreaterThan(0);
        expect({ url, pages: pages.length }).toEqual({ url, pages: shown });
        for (const size of pages) {
          // Chromium rounds paper to whole pixels of 1/96 inch, three quarters of a point.
          expect(Math.abs(size.width - width)).toBeLessThan(0.75);
          expect(Math.abs(size.height - height)).toBeLessThan(0.75);
        }
      }
      faults.push(...(await cutOff(page, papers)));
      await page.emulateMedia({ media: null });
    }
    expect(faults.slice(0, 10)).toEqual([]);
    await close();
  });
});

test.each(LABEL_SHEETS)(
  'labels of $size lie where those of their sheets do, on paper of its size, whole',
  async (sheet) => {
    const { page, close } = await visit(browser, `labels/${sheet.path}`);
    const onPaper = sheet.paper === 'A4' ? [210 * MM, 297 * MM] : [8.5 * INCH, 11 * INCH];
    const pages = await printed(page);
    expect(pages.length).toBe(Math.ceil(book().recipes.length / labelsOn(sheet)));
    for (const { width, height } of pages) {
      expect(Math.abs(width - onPaper[0]!)).toBeLessThan(0.75);
      expect(Math.abs(height - onPaper[1]!)).toBeLessThan(0.75);
    }
    expect(await cutOff(page, '.sheet')).toEqual([]);
    expect(await cutOff(page, '.bag-label')).toEqual([]);
    const boxes = await page.evaluate(() => {
      const { left, top } = document.querySelector('.sheet')!.getBoundingClientRect();
      return [...document.querySelectorAll('.sheet:first-child .bag-label')].map((label) => {
        const box = label.getBoundingClientRect();
        return [box.left - left, box.top - top, box.width, box.height].map((px) => (px / 96) * 25.4);
      });
    });
    expect(boxes.length).toBe(Math.min(labelsOn(sheet), book().recipes.length));
    for (const [index, box] of boxes.entries()) {
      const { columns, widthMm, heightMm, leftMm, topMm, gapMm } = sheet;
      const at = [
        leftMm + (index % columns) * (widthMm + gapMm),
        topMm + Math.floor(index / columns) * heightMm,
        widthMm,
        heightMm,
      ];
      for (const [side, mm] of box.entries()) expect(Math.abs(mm - at[side]!)).toBeLessThan(0.25);
    }
    const baits = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLImageElement>('.bag-bait img')].map(({ naturalWidth, height }) => [
        naturalWidth,
        (height / 96) * 25.4,
      ]),
    );
    for (const [pixels, height] of baits) {
      expect(pixels).toBeGreaterThanOrEqual(100);
      expect(height).toBeGreaterThan(5);
    }
    await close();
  },
);

test('every label carries a code of its recipe that reads back, printed', async () => {
  const { page, close } = await visit(browser, 'labels/letter/');
  const { recipes, address } = book();
  expect(await codesPrinted(page)).toEqual(recipes.map(({ id }) => `${address}colours/${id}/`));
  await close();
});

describe('a card', () => {
  test('says what the batch takes, how hot it may get, and how to stay unhurt', async () => {
    const { recipes } = book();
    for (const recipe of recipes.slice(0, 5)) {
      const { page, close } = await visit(browser, `colours/${recipe.id}/card/`);
      const words = (await page.locator('[data-card]').allInnerTexts()).join('\n').replaceAll('\u00a0', ' ');
      for (const { text } of recipe.batch.cups.flatMap(({ amounts }) => amounts)) expect(words).toContain(text);
      expect(words).toMatch(/°[CF]/);
      expect(words).toMatch(/gloves/i);
      await close();
    }
  });

  test('printed, carries a code by which a telephone finds its recipe with the batch that it is for', async () => {
    const { recipes, address } = book();
    for (const { id, batch } of [recipes[0]!, recipes.at(-1)!]) {
      const [line] = batch.lines;
      const asked = `${address}colours/${id}/?baits=${line!.baits}&mold=${line!.mold}`;
      for (const path of [`colours/${id}/card/`, `colours/${id}/card-4x6/`]) {
        const { page, close } = await visit(browser, path);
        expect(await codesPrinted(page)).toEqual([asked]);
        await close();
      }
    }
  });
});

test.each(['cards/a4/', 'cards/letter/'])('every code on the sheets of %s reads back, printed', async (path) => {
  const { page, close } = await visit(browser, path);
  const { recipes, address } = book();
  const found = (await codesPrinted(page)).map((code) => code.replace(/\?.*/, ''));
  expect(new Set(found)).toEqual(new Set(recipes.map(({ id }) => `${address}colours/${id}/`)));
  expect(found.length).toBe(recipes.length);
  await close();
});

test('a recipe page prints whole, without the parts that only work on a screen', async () => {
  const { page, close } = await visit(browser, `colours/${book().recipes[0]!.id}/`);
  expect((await printed(page)).length).toBeGreaterThanOrEqual(1);
  await page.emulateMedia({ media: 'print' });
  for (const part of ['header nav', 'form', 'button']) {
    for (const element of await page.locator(part).all()) expect(await element.isVisible(), part).toBe(false);
  }
  expect(await page.locator('main h1').isVisible()).toBe(true);
  await close();
});

test('a plan of one colour prints on two sheets of A4 or Letter, no cup over both of them', async () => {
  for (const format of ['A4', 'Letter']) {
    const { page, close } = await visit(browser, 'plan/');
    await expect.poll(() => page.locator('[data-plan-result] .amounts').count()).toBeGreaterThan(1);
    const pdf = await page.pdf({ format, printBackground: true });
    expect((await PDFDocument.load(pdf)).getPageCount()).toBeLessThanOrEqual(2);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('main > .lead').isVisible()).toBe(false);
    expect(await page.locator('.cautions').isVisible()).toBe(true);
    for (const cup of await page.locator('.cup').all())
      expect(await cup.evaluate((element) => getComputedStyle(element).breakInside)).toBe('avoid');
    await close();
  }
});

test('a plan prints what was planned, and none of what it was planned with; its costs follow the cautions', async () => {
  const { page, close } = await visit(browser, 'plan/');
  const result = page.locator('[data-plan-result]');
  await expect.poll(() => result.locator('.amounts').count()).toBeGreaterThan(0);
  await page.emulateMedia({ media: 'print' });
  for (const part of ['header nav', 'form', 'button']) {
    for (const element of await page.locator(part).all()) expect(await element.isVisible(), part).toBe(false);
  }
  expect(await result.locator('.batch-says').innerText()).toMatch(/^Makes \d+ baits? of .+ \(\d+ shots?\)\.$/);
  expect(await result.locator('.heat').first().innerText()).toMatch(/°[CF]|data sheets/);
  const below = async (part: string): Promise<number> => (await page.locator(part).boundingBox())!.y;
  expect(await below('.cautions')).toBeGreaterThan(await below('[data-plan-result]'));
  expect(await below('[data-plan-costs]')).toBeGreaterThan(await below('.cautions'));
  await close();
});
