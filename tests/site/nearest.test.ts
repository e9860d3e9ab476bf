import { differenceCiede2000 } from 'culori';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Appearance } from '../../src/book/model/colours.ts';
import type { Recipe, RecipeLook } from '../../src/book/model/recipe.ts';
import { book, connect, visit } from './visit.ts';

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

/** All rows, those too that are too far off to be shown at once. */
async function allRows(page: Page): ReturnType<typeof rows> {
  let found = await rows(page);
  while (await page.locator('[data-more]').isVisible()) {
    await page.locator('[data-more]').click();
    found = await rows(page);
  }
  return found;
}

async function near(page: Page, hex: string): Promise<void> {
  await page.locator('[data-near]').evaluate((details) => details.setAttribute('open', ''));
  await page.getByLabel('The colour, as # and six digits').fill(hex);
}

const deltaE = differenceCiede2000();

/** ΔE00 of a library to everything that is seen of a colour, the least. */
function least(hex: string, colour: Recipe | RecipeLook): number {
  const looks: readonly Appearance[] = [
    colour.body,
    ...(colour.thin ? [colour.thin] : []),
    ...(colour.other ? [colour.other] : []),
    ...('cups' in colour && ['swirl', 'tipped'].includes(colour.pattern) ? colour.cups.map(({ body }) => body) : []),
  ];
  const last =
    'cups' in colour
      ? colour.cups.flatMap(({ rounds }) =>
          rounds.flatMap(({ seen: [judged] }) => (judged && !judged.predicted ? [judged] : [])).slice(-1),
        )
      : [];
  const all = [
    ...looks.flatMap(({ overWhite, overBlack }) => [overWhite.hex, overBlack.hex]),
    ...last.flatMap(({ overWhite, overBlack }) => [overWhite, overBlack].flatMap((view) => view?.hex ?? [])),
  ];
  return Math.min(...all.map((each) => deltaE(hex, each)));
}

/** Whether numbers rise, but for the two hundredths by which the white points of two libraries set them apart. */
const inOrder = (numbers: readonly number[]): boolean =>
  numbers.every((number, at) => at === 0 || number > numbers[at - 1]! - 0.02);

describe('the colour nearest to another', () => {
  test('comes first, all others after it by ΔE00, and it is said what of a colour is that near', async () => {
    const { page, errors, foreign, close } = await visit(browser, 'find/');
    const { recipes, looks } = book();
    const wanted = recipes.find(({ id }) => id === 'alder-smoke')!;
    await near(page, wanted.thin.overBlack.hex);
    const found = await rows(page);
    expect(found[0]).toEqual([wanted.id, 'thin part over black, you won’t see it (ΔE 0.0)']);
    const all = new Map([...recipes, ...looks].map((colour) => [colour.id, colour]));
    const apart = (ids: typeof found): number[] => ids.map(([id]) => least(wanted.thin.overBlack.hex, all.get(id)!));
    expect(inOrder(apart(found))).toBe(true);
    // What is another colour to anybody comes only when it is asked for.
    expect(found.length).toBeGreaterThan(3);
    expect(Math.max(...apart(found))).toBeLessThan(12.02);
    const every = await allRows(page);
    expect(every.length).toBe(all.size);
    expect(Math.min(...apart(every.slice(found.length)))).toBeGreaterThan(11.98);
    expect(await page.locator('[data-count]').innerText()).toContain(`closest to ${wanted.thin.overBlack.hex} first`);
    expect(errors).toEqual([]);
    expect(foreign).toEqual([]);
    await close();
  });

  test('is what was seen of a bait, too, whatever was computed of it', async () => {
    const { page, close } = await visit(browser, 'find/');
    const wanted = book().recipes.find(({ id }) => id === 'rowan-week')!;
    const seen = wanted.cups[0]!.rounds.findLast((round) => round.seen[0]?.overBlack)!.seen[0]!.overBlack!.hex;
    await near(page, seen);
    expect((await rows(page))[0]).toEqual([wanted.id, 'as last seen over black, you won’t see it (ΔE 0.0)']);
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
    const found = await allRows(page);
    expect([...found].map(([id]) => id).sort()).toEqual(laminates.map(({ id }) => id).sort());
    const apart = found.map(([id]) => least('#8a6a44', laminates.find((each) => each.id === id)!));
    expect(inOrder(apart)).toBe(true);
    expect(new URL(page.url()).searchParams.get('near')).toBe('8a6a44');
    await page.getByRole('button', { name: 'Clear all' }).click();
    await expect.poll(() => page.url()).not.toContain('near');
    await expect
      .poll(async () => new Set((await allRows(page)).map(([id]) => id)).size)
      .toBe(book().recipes.length + book().looks.length);
    await close();
  });

  test('what is no colour is said, and asks for nothing', async () => {
    const { page, errors, close } = await visit(browser, 'find/');
    await near(page, '#zz');
    await expect.poll(() => page.locator('[data-near-chosen]').innerText()).toBe('not a colour code');
    expect(page.url()).not.toContain('near');
    expect(errors).toEqual([]);
    await close();
  });
});
