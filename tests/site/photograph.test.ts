import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { measurePhoto } from '../../src/photo/measure-photo.ts';
import type { PhotoMeasured, PhotoRefused } from '../../src/photo/photo-measured.ts';
import { readPixels } from '../../src/shell/read-pixels.ts';
import { printedCard } from '../photo/simulated/printed-card.ts';
import { takePhoto } from '../photo/simulated/simulated-photo.ts';
import { PHONE, says, takePhotos, unfoldTyped } from './at-the-bench.ts';
import { photo } from './bait-photo.ts';
import { connect, visit } from './visit.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const CARD = { scaleMm: 80 };

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

let taken: Promise<readonly Buffer[]> | undefined;

/** Three photos of one bait, each in another light. */
function threePhotos(): Promise<readonly Buffer[]> {
  taken ??= (async () => {
    const card = await printedCard();
    return Promise.all([1, 2, 3].map(async (seed) => (await takePhoto('b2', card, { bait: 7, photo: seed })).jpeg));
  })();
  return taken;
}

const files = (photos: readonly Buffer[]): { name: string; mimeType: string; buffer: Buffer }[] =>
  photos.map((buffer, at) => ({ name: `bait-${at + 1}.jpg`, mimeType: 'image/jpeg', buffer }));

const choose = (page: Page, photos: readonly Buffer[]): Promise<void> =>
  page.getByLabel('Photos of the bait on the measuring card').setInputFiles(files(photos));

const status = (page: Page): Promise<string> => page.locator('[data-photos-say]').innerText();

/** What the page's own script finds in a photo, by the way that the page asks it. */
async function foundInPage(page: Page, photo: Buffer): Promise<PhotoMeasured | PhotoRefused> {
  return page.evaluate(
    async ({ base64, card }) => {
      const { scripts } = JSON.parse(document.querySelector('[data-measuring]')!.textContent!) as { scripts: string[] };
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const worker = new Worker(scripts.at(-1)!);
      const answer = await new Promise<{ found: PhotoMeasured | PhotoRefused }>((resolve) => {
        worker.onmessage = ({ data }) => resolve(data);
        worker.postMessage({ photo: new Blob([bytes]), card });
      });
      worker.terminate();
      return answer.found;
    },
    { base64: photo.toString('base64'), card: CARD },
  );
}

test('the page measures what the command does, to ΔE 0.05: JPEG, PNG, Display P3, turned, very large', async () => {
  const [jpeg] = await threePhotos();
  const upright = sharp(jpeg!);
  const cases = {
    jpeg: jpeg!,
    png: await upright.clone().png().toBuffer(),
    p3: await upright.clone().jpeg({ quality: 92 }).withIccProfile('p3').toBuffer(),
    turned: await upright.clone().rotate(90).withMetadata({ orientation: 8 }).jpeg({ quality: 92 }).toBuffer(),
    large: await upright.clone().resize({ width: 4300 }).jpeg({ quality: 85 }).toBuffer(),
  };
  const { page, errors, foreign, close } = await visit(browser, 'photograph/');
  for (const [name, buffer] of Object.entries(cases)) {
    const here = measurePhoto(await readPixels(buffer), CARD);
    const there = await foundInPage(page, buffer);
    expect([name, there.kind]).toEqual([name, 'measured']);
    if (here.kind !== 'measured' || there.kind !== 'measured') throw new Error(`${name} was not measured`);
    for (const view of ['overWhite', 'overBlack'] as const)
      expect([name, deltaE00(here[view]!, there[view]!) <= 0.05]).toEqual([name, true]);
    expect(Math.abs(here.doubt.bound - there.doubt.bound)).toBeLessThan(0.05);
  }
  expect(errors).toEqual([]);
  expect(foreign).toEqual([]);
  await close();
});

describe('the page Photograph', () => {
  test('measures three photos, averages them, and gives the lines for a file under the camera’s name', async () => {
    const { page, errors, foreign, close } = await visit(browser, 'photograph/', PHONE);
    const photos = await threePhotos();
    await choose(page, photos.slice(0, 1));
    await expect
      .poll(() => status(page), { timeout: 20_000 })
      .toBe('Measured from 1 photo. Two more, with the card moved a little, make it surer.');
    await choose(page, photos.slice(1));
    await expect.poll(() => status(page), { timeout: 20_000 }).toBe('Measured from 3 photos, averaged.');
    const lines = (): Promise<string> => page.locator('[data-lines="look"]').innerText();
    expect(await lines()).toMatch(
      /^over-white: .+\nover-black: .+\ndoubt: [\d.]+\ncontrast-doubt: [\d.]+ %\ncamera: phone$/,
    );
    await page.getByLabel('Name of the camera').fill('Kitchen phone');
    await page.getByLabel('Name of the camera').press('Tab');
    await expect.poll(lines).toContain('camera: Kitchen phone');
    await page.reload();
    await choose(page, photos.slice(0, 1));
    await expect.poll(lines, { timeout: 20_000 }).toContain('camera: Kitchen phone');
    expect(await page.getByRole('img', { name: 'The photo, with the bait outlined' }).isVisible()).toBe(true);
    expect(errors).toEqual([]);
    expect(foreign).toEqual([]);
    await close();
  });

  test('says why a photo is refused, and what to do; one without a card can be touched instead', async () => {
    const { page, errors, close } = await visit(browser, 'photograph/', PHONE);
    const card = await printedCard();
    const { jpeg } = await takePhoto('dark', card, 5);
    await choose(page, [jpeg]);
    await expect.poll(() => status(page), { timeout: 20_000 }).toBe('The photo couldn’t be measured.');
    const said = (): Promise<string> => page.locator('.measured-warning').innerText();
    expect(await said()).toMatch(/^(?:The photo is too dark|Only \d of the card|There is no measuring card)/);
    await page.getByRole('button', { name: 'Another bait' }).click();
    await choose(page, [await photo('#8a6a44', [1, 1, 1])]);
    await expect.poll(said).toContain('There is no measuring card to be seen in the photo.');
    await page.getByRole('button', { name: 'Touch the colour instead' }).click();
    const canvas = page.locator('dialog canvas');
    await canvas.waitFor();
    const { width, height } = (await canvas.boundingBox())!;
    await canvas.click({ position: { x: width / 4, y: height / 2 } });
    await page.getByRole('button', { name: 'Use this colour' }).click();
    expect(await page.locator('[data-touched]').innerText()).toContain('#8a6a44');
    expect(errors).toEqual([]);
    await close();
  });

  test('a bait that lies elsewhere is shown by a line, with keys alone', async () => {
    const { page, close } = await visit(browser, 'photograph/');
    const [jpeg] = await threePhotos();
    await choose(page, [jpeg!]);
    const show = page.getByRole('button', { name: 'Show where the bait is' });
    await show.press('Enter');
    const picture = page.getByRole('application', { name: 'The photo. Arrow keys move one end of the line.' });
    expect(await picture.evaluate((canvas) => canvas === document.activeElement)).toBe(true);
    const drawn = (): Promise<string> => picture.evaluate((canvas) => (canvas as HTMLCanvasElement).toDataURL());
    const before = await drawn();
    await page.keyboard.press('Shift+ArrowUp');
    expect(await drawn()).not.toBe(before);
    await page.keyboard.press('Tab');
    await page.keyboard.press('ArrowRight');
    expect(await page.getByLabel('The other end').isChecked()).toBe(true);
    await page.getByRole('button', { name: 'Measure along this line' }).press('Enter');
    await expect.poll(() => status(page), { timeout: 20_000 }).toMatch(/^(?:Measured from 1 photo|The photo couldn’t)/);
    await close();
  });

  test('without a script it says how the command does the same', async () => {
    const { page, close } = await visit(browser, 'photograph/', { javaScriptEnabled: false });
    const text = await page.locator('main').innerText();
    expect(text).toContain('cupbook photo PHOTO');
    expect(text).not.toContain('What is in the photos');
    await close();
  });

  test.each(['light', 'dark'] as const)('has nothing that axe objects to, %s', async (colorScheme) => {
    const { page, close } = await visit(browser, 'photograph/', { colorScheme });
    await choose(page, (await threePhotos()).slice(0, 2));
    await expect.poll(() => status(page), { timeout: 20_000 }).toContain('Measured from 2 photos');
    await page.evaluate(AXE);
    const { violations } = await page.evaluate(() =>
      (window as unknown as { axe: { run(): Promise<AxeResults> } }).axe.run(),
    );
    expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
    await close();
  });

  test('loads one script more, of a bounded weight, and other pages only when they ask for a photo', async () => {
    const scripts: string[] = [];
    const { page, close } = await visit(browser, 'match/');
    page.on('request', (request) => scripts.push(request.url()));
    const { scripts: asked } = JSON.parse((await page.locator('[data-measuring]').textContent())!) as {
      scripts: readonly string[];
    };
    const script = asked.at(-1)!;
    expect(await page.locator(`script[src$="${script}"]`).count()).toBe(0);
    await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'Photograph the bait' }).click(),
    ]);
    expect(scripts.filter((url) => url.includes('/photograph-')).length).toBe(1);
    const file = readFileSync(join(inject('site'), script.replace(/^(?:\.\.?\/)+/, '')));
    expect(gzipSync(file).length).toBeLessThan(39_500);
    // What it shares with Match that page has already, so that nothing is loaded twice.
    expect(new Set(scripts).size).toBe(scripts.length);
    expect(scripts.filter((url) => url.includes('/shared-'))).toEqual([]);
    await close();
  });
});

describe('a match by photos', () => {
  test('takes its target from three, with their doubt and camera, and a round from one', async () => {
    const { page, errors, foreign, close } = await visit(browser, 'match/', PHONE);
    const photos = await threePhotos();
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'Photograph the bait' }).click(),
    ]);
    await chooser.setFiles(files(photos));
    await takePhotos(page);
    await expect
      .poll(() => says(page))
      .toMatch(/^The target is measured on 3 photos by phone, nine in ten within ΔE [\d.]+\.$/);
    await page.getByRole('button', { name: 'Start with plain plastic' }).click();
    const [again] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'Photograph the test pour' }).click(),
    ]);
    await again.setFiles(files(photos.slice(0, 1)));
    await takePhotos(page);
    await expect.poll(() => says(page)).toMatch(/^Seen: measured on 1 photo by phone/);
    await page.getByLabel('Poured, ml').fill('14');
    await page.getByRole('button', { name: 'Log this round' }).click();
    await expect.poll(() => says(page), { timeout: 20_000 }).toMatch(/^The round is logged\./);
    const target = await page.locator('[data-file="target"]').textContent();
    expect(target).toMatch(/over-white: .+\nover-black: .+\ndoubt: [\d.]+\ncontrast-doubt: [\d.]+ %\ncamera: phone\n/);
    expect(await page.locator('[data-file="recipe"]').textContent()).toMatch(/doubt: [\d.]+[\s\S]+camera: phone/);
    await page.reload();
    await page.locator('.match-log').waitFor();
    expect(await page.locator('.match-log').innerText()).toContain('measured on 1 photo by phone');
    expect(errors).toEqual([]);
    expect(foreign).toEqual([]);
    await close();
  });

  test('a colour that is typed anew is measured no more', async () => {
    const { page, close } = await visit(browser, 'match/', PHONE);
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'Photograph the bait' }).click(),
    ]);
    await chooser.setFiles(files((await threePhotos()).slice(0, 1)));
    await page.getByRole('button', { name: 'Use these colours' }).click({ timeout: 20_000 });
    await page.getByRole('button', { name: 'Change the target' }).click();
    await unfoldTyped(page);
    await page.getByLabel('Over white', { exact: true }).fill('#123456');
    await expect.poll(() => page.locator('[data-file="target"]').textContent()).toContain('#123456');
    expect(await page.locator('[data-file="target"]').textContent()).not.toContain('camera');
    expect(await page.locator('[data-measured-says]').innerText()).toBe(
      'Three photos on the measuring card say it best.',
    );
    await close();
  });
});
