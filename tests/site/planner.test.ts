import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Recipe } from '../../src/book/model/recipe.ts';
import type { BatchAmounts, Book } from '../../src/book/model.ts';
import { batchOfRecipe } from '../../src/book/recipes/batch-of-recipe.ts';
import { formatTemperature } from '../../src/units/format-quantity.ts';
import { watchShifts } from './shifts.ts';
import { book, connect, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

/** What the build would say of a batch, from the same published book. */
function batchOf(
  published: Book,
  recipe: Recipe,
  lines: readonly { readonly mold: string; readonly baits: number }[],
): BatchAmounts {
  const materials = new Map(published.materials.map((material) => [material.id, material]));
  const molds = new Map(published.molds.map((mold) => [mold.id, mold]));
  return batchOfRecipe(
    recipe,
    lines.map(({ mold, baits }) => ({ mold: molds.get(mold)!, baits })),
    (id) => materials.get(id)!,
    published.settings,
    { bodyMm: molds.get(recipe.mold)!.bodyMm, optics: published.optics },
  );
}

const measures = (batch: BatchAmounts): readonly string[] =>
  batch.cups.flatMap(({ amounts }) => amounts.map(({ text }) => text)).sort();

/** Measures in a part of a page, their spaces as they are written elsewhere. */
const measuresIn = async (part: Locator): Promise<readonly string[]> =>
  (await part.locator('tr:not(.plastic) .measure b').allInnerTexts())
    .map((text) => text.replaceAll('\u00a0', ' '))
    .sort();

const shownMeasures = (page: Page): Promise<readonly string[]> => measuresIn(page.locator('[data-planned]'));

describe('the planner of a recipe', () => {
  test('shows at first what the build wrote', async () => {
    const recipe = book().recipes[0]!;
    const { page, close } = await visit(browser, `colours/${recipe.id}/`);
    expect(await shownMeasures(page)).toEqual(measures(recipe.batch));
    await close();
  });

  test('works out another number of baits and another mold exactly as the build would', async () => {
    const published = book();
    const other = published.molds.at(-1)!;
    for (const recipe of published.recipes.slice(0, 4)) {
      const { page, errors, close } = await visit(browser, `colours/${recipe.id}/`);
      await page.getByLabel('Baits').fill('75');
      await expect
        .poll(() => shownMeasures(page))
        .toEqual(measures(batchOf(published, recipe, [{ mold: recipe.mold, baits: 75 }])));
      await page.getByLabel('Mold').selectOption(other.id);
      await expect
        .poll(() => shownMeasures(page))
        .toEqual(measures(batchOf(published, recipe, [{ mold: other.id, baits: 75 }])));
      expect(errors).toEqual([]);
      await close();
    }
  });

  test('says what it wants where the number makes no sense, and leaves no amount and no cost of another number', async () => {
    const recipe = book().recipes[0]!;
    const { page, errors, close } = await visit(browser, `colours/${recipe.id}/`);
    await page.locator('summary', { hasText: 'Materials needed' }).click();
    const amounts = page.locator('[data-planned]');
    const costs = page.locator('[data-planned-costs]');
    const own = await costs.innerText();
    for (const [sense, none] of [
      ['60', '0'],
      ['75', ''],
      ['60', '-3'],
      ['75', '100001'],
    ] as const) {
      await page.getByLabel('Baits').fill(sense);
      await expect.poll(() => amounts.innerText()).toMatch(new RegExp(`^Makes ${sense} baits`));
      expect(await costs.innerText()).not.toBe(own);
      await page.getByLabel('Baits').fill(none);
      for (const part of [amounts, costs])
        await expect.poll(() => part.innerText()).toBe('Enter a whole number of baits, from 1 to 100,000.');
    }
    await page.getByLabel('Baits').fill(String(recipe.batch.baits));
    await expect.poll(() => shownMeasures(page)).toEqual(measures(recipe.batch));
    expect(await costs.innerText()).toBe(own);
    expect(errors).toEqual([]);
    await close();
  });
});

describe('the plan page', () => {
  test('adds up several colours and molds', async () => {
    const published = book();
    const [one, other] = published.recipes;
    const { page, errors, close } = await visit(browser, 'plan/');
    const line = (number: number): ReturnType<Page['locator']> => page.locator('[data-line]').nth(number);
    await line(0).getByLabel('Colour').selectOption(one!.id);
    await line(0).getByLabel('Mold').selectOption(one!.mold);
    await line(0).getByLabel('Baits').fill('30');
    await page.getByRole('button', { name: 'Add a line' }).click();
    await line(1).getByLabel('Colour').selectOption(other!.id);
    await line(1).getByLabel('Mold').selectOption(other!.mold);
    await line(1).getByLabel('Baits').fill('45');

    const expected = [
      ...measures(batchOf(published, one!, [{ mold: one!.mold, baits: 30 }])),
      ...measures(batchOf(published, other!, [{ mold: other!.mold, baits: 45 }])),
    ];
    const result = page.locator('[data-plan-result]');
    await expect.poll(() => measuresIn(result)).toEqual(expected.sort());
    expect(errors).toEqual([]);
    await close();
  });

  test.each([390, 1280])(
    'does not move by itself, neither when it is loaded nor while a plan is made, %i px wide',
    async (width) => {
      const { page, errors, close } = await visit(browser, 'plan/', { viewport: { width, height: 844 } });
      const moved = await watchShifts(page, '[data-plan-result] .cups');
      expect(await moved()).toBeLessThanOrEqual(0.02);
      const line = (number: number): ReturnType<Page['locator']> => page.locator('[data-line]').nth(number);
      await line(0).getByLabel('Colour').selectOption('rowan-week');
      const colours = page.locator('[data-colour]');
      await expect.poll(() => colours.first().getAttribute('data-colour')).toBe('rowan-week');
      await page.getByRole('button', { name: 'Add a line' }).click();
      await line(1).getByLabel('Colour').selectOption('eel-bridge');
      await expect.poll(() => colours.count()).toBe(2);
      await line(0).getByLabel('Baits').fill('90');
      await expect.poll(() => page.locator('[data-plan-status]').innerText()).toMatch(/^114 baits/);
      expect(await moved()).toBeLessThanOrEqual(0.02);
      expect(errors).toEqual([]);
      await close();
    },
  );

  test('says of each cup how hot it may get, what sets that, and what is unknown', async () => {
    const published = book();
    const titleOf = (id: string): string => published.materials.find((material) => material.id === id)!.title;
    const mixed = published.recipes.find(({ cups }) => new Set(cups.map(({ limit }) => limit?.celsius)).size > 1)!;
    const open = published.recipes.find(({ cups }) => cups.some(({ limitUnknown }) => limitUnknown.length > 0));
    const { page, errors, close } = await visit(browser, 'plan/');
    const result = page.locator('[data-plan-result]');
    for (const recipe of open === undefined ? [mixed] : [mixed, open]) {
      await page.locator('[data-line]').getByLabel('Colour').selectOption(recipe.id);
      await expect.poll(() => result.locator('h2').first().innerText()).toBe(recipe.title);
      for (const { name, limit, limitUnknown } of recipe.cups) {
        const words = (await result.locator(`[data-cup="${name}"] .heat`).innerText()).replaceAll('\u00a0', ' ');
        if (limit !== undefined) {
          const degrees = formatTemperature(limit.celsius, published.settings.temperature);
          expect(words).toContain(`Never above ${degrees} (${titleOf(limit.material)} sets the limit).`);
        }
        for (const id of limitUnknown) expect(words).toMatch(new RegExp(`${titleOf(id)}|No supplier temperatures`));
      }
    }
    expect(errors).toEqual([]);
    await close();
  });

  test('pours two lines of one colour in one mold as one', async () => {
    const published = book();
    const recipe = published.recipes[0]!;
    const { page, errors, close } = await visit(browser, 'plan/');
    const line = (number: number): ReturnType<Page['locator']> => page.locator('[data-line]').nth(number);
    await line(0).getByLabel('Colour').selectOption(recipe.id);
    await line(0).getByLabel('Baits').fill('30');
    await page.getByRole('button', { name: 'Add a line' }).click();
    await line(1).getByLabel('Colour').selectOption(recipe.id);
    await line(1).getByLabel('Baits').fill('45');
    const result = page.locator('[data-plan-result]');
    await expect
      .poll(() => measuresIn(result))
      .toEqual(measures(batchOf(published, recipe, [{ mold: recipe.mold, baits: 75 }])));
    expect(await result.locator('.batch-says').innerText()).toMatch(/^Makes 75 baits of [^,]* \(\d+ shots\)\.$/);
    expect(errors).toEqual([]);
    await close();
  });

  test('says what it wants where a number makes no sense, and leaves no amount and no cost of the last plan', async () => {
    const recipe = book().recipes[0]!;
    const { page, errors, close } = await visit(browser, 'plan/');
    const result = page.locator('[data-plan-result]');
    const costs = page.locator('[data-plan-costs]');
    const status = page.locator('[data-plan-status]');
    const baits = page.locator('[data-line]').getByLabel('Baits');
    await page.locator('[data-line]').getByLabel('Colour').selectOption(recipe.id);
    for (const none of ['0', '', '1.5']) {
      await baits.fill('30');
      await expect.poll(() => status.innerText()).toMatch(/^30 baits in 1 colour/);
      expect(await result.innerText()).toContain(recipe.title);
      expect(await costs.innerText()).toContain('Materials needed');
      await baits.fill(none);
      await expect
        .poll(() => status.innerText())
        .toBe('Enter a whole number of baits on every line, from 1 to 100,000.');
      expect(await result.innerText()).toBe('');
      expect(await costs.innerText()).toBe('');
    }
    expect(errors).toEqual([]);
    await close();
  });

  test('leaves nothing of the last plan while a colour is fetched, nor where it does not come', async () => {
    const [one, other] = book().recipes;
    const { page, close } = await visit(browser, 'plan/');
    const result = page.locator('[data-plan-result]');
    const costs = page.locator('[data-plan-costs]');
    const status = page.locator('[data-plan-status]');
    const colour = page.locator('[data-line]').getByLabel('Colour');
    await colour.selectOption(one!.id);
    await expect.poll(() => result.innerText()).toContain(one!.title);
    let fail = (): void => {};
    const failing = new Promise<void>((resolve) => {
      fail = resolve;
    });
    await page.route(`**/colours/${other!.id}/recipe.json`, async (route) => {
      await failing;
      await route.abort();
    });
    await colour.selectOption(other!.id);
    await expect.poll(() => status.innerText()).toBe('Working it out…');
    expect(await result.innerText()).toBe('');
    expect(await costs.innerText()).toBe('');
    fail();
    await expect.poll(() => status.innerText()).toMatch(/^The amounts couldn’t be worked out: .*Reload the page/);
    expect(await result.innerText()).toBe('');
    expect(await costs.innerText()).toBe('');
    await close();
  });
});
