import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { begin, beginPlain, keptInstead, noteRound, PHONE, says, textOf, untilKept, verdict } from './at-the-bench.ts';
import { compiledWith } from './compiled-with.ts';
import { connect, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

describe('a match on a telephone', () => {
  test('is there again after a reload, what was typed and not noted too', async () => {
    const { page, errors, close } = await visit(browser, 'match/', PHONE);
    await begin(page);
    await page.getByLabel('Note').fill('held to the window');
    await page.getByLabel('Poured, ml').fill('12');
    await page.getByLabel('Name of the colour').fill('Kept');
    const before = await page.locator('[data-file="recipe"]').textContent();
    await untilKept(page, 'match', '"title":"Kept"');
    await page.reload();
    await expect.poll(() => page.locator('[data-file="recipe"]').textContent()).toBe(before);
    expect(await page.getByLabel('Or a target of this book').inputValue()).toBe('rack-claw');
    expect(await page.getByLabel('Note').inputValue()).toBe('held to the window');
    await expect.poll(() => verdict(page)).toMatch(/too light/);
    // Neither the last key before a reload is lost, nor a colour, nor digits that are half typed.
    await page.getByLabel('Seen over white', { exact: true }).fill('#b04a36');
    await page.getByLabel('Seen over black, as # and six digits').fill('#8a4');
    await page.reload();
    await expect.poll(() => page.getByLabel('Seen over white', { exact: true }).inputValue()).toBe('#b04a36');
    expect(await page.getByLabel('Seen over black, as # and six digits').inputValue()).toBe('#8a4');
    expect(await page.getByLabel('Poured, ml').inputValue()).toBe('12');
    expect(errors).toEqual([]);
    await close();
  });

  test('keeps the recipes that were found, and what of one is mixed, over a reload', async () => {
    const { page, errors, close } = await visit(browser, 'match/', PHONE);
    await page.getByLabel('Or a target of this book').selectOption('rack-claw');
    await page.getByRole('button', { name: 'Find recipes' }).click();
    await page.getByRole('button', { name: 'Use recipe 1' }).first().waitFor();
    await untilKept(page, 'typed', '"found":true');
    await page.reload();
    await page.getByRole('button', { name: 'Use recipe 1' }).first().click();
    const rows = page.locator('.match-mix li');
    await expect.poll(() => rows.count()).toBe(3);
    expect((await rows.first().innerText()).replace(/\s+/g, ' ')).toMatch(/^120 ml/);
    expect(await page.locator('.match-log li').first().innerText()).toMatch(/^To be mixed: /);
    await rows.nth(1).getByRole('checkbox').check();
    await untilKept(page, 'typed', '"mixed":["');
    await page.reload();
    await expect.poll(() => rows.getByRole('checkbox', { checked: true }).count()).toBe(1);
    expect(await rows.count()).toBe(3);
    await noteRound(page, '14', '#b84a36', '#8a4a38');
    expect(await rows.count()).toBe(0);
    expect(await page.locator('.match-log li').first().innerText()).toMatch(/^Added /);
    expect(errors).toEqual([]);
    await close();
  });

  test('of an earlier version is there again; one that cannot be read is refused in a sentence, and left alone', async () => {
    const { page, errors, close } = await visit(browser, 'match/', PHONE);
    await begin(page);
    await untilKept(page, 'match', '"do":"see"');
    const log = await page.locator('.match-log li').allInnerTexts();
    await keptInstead(page, (text) => {
      const { cups, ...work } = JSON.parse(text);
      const steps = cups[0].steps.map(({ also: _, recipe: __, ...step }: Record<string, unknown>) => step);
      return JSON.stringify({ ...work, cups: [{ ...cups[0], steps, aim: work.sides[0] }] });
    });
    await page.reload();
    await expect.poll(() => page.locator('.match-log li').allInnerTexts()).toEqual(log);
    expect(await page.getByRole('button', { name: 'Undo round 1' }).count()).toBe(1);
    await keptInstead(page, (text) => text.replaceAll('"rowan"', '"rowan-of-old"'));
    for (let visits = 0; visits < 2; visits++) {
      await page.reload();
      await expect
        .poll(() => says(page))
        .toBe(
          'This match uses rowan-of-old, which isn’t on this book’s shelf. It stays there until something is changed in this new one.',
        );
    }
    await keptInstead(page, () => '{"format":0}');
    await page.reload();
    await expect.poll(() => says(page)).toMatch(/^The match kept here can’t be read/);
    expect(errors).toEqual([]);
    await close();
  });

  test('is exported, thrown away, and imported again', async () => {
    const { page, errors, close } = await visit(browser, 'match/', PHONE);
    page.on('dialog', (dialog) => void dialog.accept());
    await begin(page);
    const before = await page.locator('[data-file="recipe"]').textContent();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Export' }).click(),
    ]);
    const exported = await textOf(download);
    await page.getByRole('button', { name: 'New match' }).click();
    await expect.poll(() => says(page)).toBe('A new match.');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('match-target');
    expect(await page.locator('[data-file="recipe"]').textContent()).not.toBe(before);
    await page
      .locator('[data-import-file]')
      .setInputFiles({ name: 'match.json', mimeType: 'application/json', buffer: Buffer.from(exported) });
    await expect.poll(() => page.locator('[data-file="recipe"]').textContent()).toBe(before);

    await page.locator('[data-import-file]').setInputFiles({
      name: 'x.json',
      mimeType: 'application/json',
      buffer: Buffer.from('{"format":1,"title":"<img src=x>"}'),
    });
    await expect.poll(() => says(page)).toMatch(/^This file holds no match/);
    await page.locator('[data-import-file]').setInputFiles({
      name: 'newer.json',
      mimeType: 'application/json',
      buffer: Buffer.from(exported.replace(/"format":\s*1/, '"format":2')),
    });
    await expect.poll(() => says(page)).toMatch(/^This match was made with a newer version of Cupbook/);
    expect(await page.locator('[data-file="recipe"]').textContent()).toBe(before);
    expect(errors).toEqual([]);
    await close();
  });
});

describe('a match that is there again', () => {
  test('has the smallest pour that the page takes; a smaller one is refused at once', async () => {
    const { page, errors, close } = await visit(browser, 'match/', PHONE);
    await beginPlain(page);
    await page.getByLabel('I looked at it over white').uncheck();
    await page.getByLabel('I looked at it over black').uncheck();
    const note = page.getByRole('button', { name: 'Log this round' });
    await page.getByLabel('Poured, ml').fill('0.0000001');
    await note.click();
    await expect.poll(() => says(page)).toBe('How much was poured? Give millilitres: 0, or at least 0.01.');
    await page.getByLabel('Poured, ml').fill('0.01');
    await note.click();
    await expect.poll(() => says(page)).toBe('The round is logged.');
    await untilKept(page, 'match', '"do":"pour"');
    await page.reload();
    await expect.poll(() => page.locator('[data-file="recipe"]').textContent()).toContain('pour: 0.01 ml');
    await expect.poll(() => says(page)).toBe('');
    expect(errors).toEqual([]);
    await close();
  });

  test('of a target that the book no longer has is a described one, and the book takes what is taken away', async () => {
    const { page, errors, close } = await visit(browser, 'match/', PHONE);
    await begin(page);
    await untilKept(page, 'match', '"do":"see"');
    const log = await page.locator('.match-log li').allInnerTexts();
    await keptInstead(page, (text) => text.replace('"rack-claw"', '"rack-claw-of-old"'));
    await page.reload();
    await expect
      .poll(() => says(page))
      .toBe('This book has no target rack-claw-of-old, so the match keeps its description.');
    expect(await page.locator('.match-log li').allInnerTexts()).toEqual(log);
    const file = async (which: string): Promise<string> =>
      (await page.locator(`[data-file="${which}"]`).textContent()) ?? '';
    const { diagnostics } = compiledWith(
      { path: 'colours/matched-at-the-bench.md', text: await file('recipe') },
      { path: 'targets/matched-at-the-bench-target.md', text: await file('target') },
    );
    expect(diagnostics.filter(({ file: path }) => path.includes('matched-at-the-bench'))).toEqual([]);
    expect(errors).toEqual([]);
    await close();
  });

  test('cannot be made longer than it can be kept: that is said, and what was typed stays', async () => {
    const { page, errors, close } = await visit(browser, 'match/', PHONE);
    await beginPlain(page);
    await page.getByText('I added something else').click();
    const plastic = page.getByLabel('Plastic, ml');
    const put = page.getByRole('button', { name: 'Log the plastic' });
    await plastic.fill('1');
    await put.click();
    await untilKept(page, 'match', '"do":"plastic"');
    await keptInstead(page, (text) => {
      const work = JSON.parse(text);
      const [step] = work.cups[0].steps;
      return JSON.stringify({ ...work, cups: [{ ...work.cups[0], steps: Array(500).fill(step) }] });
    });
    await page.reload();
    await expect.poll(() => page.locator('.match-log li').count()).toBe(500);
    await page.getByText('I added something else').click();
    await plastic.fill('7');
    await put.click();
    await expect
      .poll(() => says(page))
      .toBe('This log is full. Take the recipe away, export the match, and begin a new one.');
    expect(await plastic.inputValue()).toBe('7');
    await page.reload();
    await expect.poll(() => page.locator('.match-log li').count()).toBe(500);
    expect(await plastic.inputValue()).toBe('7');
    expect(errors).toEqual([]);
    await close();
  });

  test('has begun with no less than was poured of it', async () => {
    const { page, errors, close } = await visit(browser, 'match/', PHONE);
    await beginPlain(page);
    await noteRound(page, '80', '#b84a36', '#8a4a38');
    const before = await page.locator('[data-file="recipe"]').textContent();
    await page.getByText('The target, the cup and the shelf').click();
    const ml = page.getByLabel('Cup size, ml');
    await ml.fill('50');
    await ml.blur();
    await expect.poll(() => says(page)).toBe('More than that was poured from a cup: it started with at least 80 ml.');
    expect(await page.locator('[data-file="recipe"]').textContent()).toBe(before);
    await ml.fill('80');
    await ml.blur();
    await expect.poll(() => page.locator('[data-file="recipe"]').textContent()).toContain('plastic: 80 ml');
    await expect.poll(() => says(page)).toBe('');
    // As an earlier version of the page kept it.
    await untilKept(page, 'match', '"plasticMl":80');
    await keptInstead(page, (text) => text.replace('"plasticMl":80', '"plasticMl":50'));
    await page.reload();
    await expect
      .poll(() => says(page))
      .toBe('More was poured from a cup than it started with, so it now starts with 80 ml.');
    expect(await ml.inputValue()).toBe('80');
    expect(errors).toEqual([]);
    await close();
  });
});
