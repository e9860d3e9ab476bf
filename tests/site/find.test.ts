import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Recipe, RecipeLook } from '../../src/book/model/recipe.ts';
import { opacityName } from '../../src/render/opacity-words.ts';
import { book, connect, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

/** Addresses of the rows that are shown, once the search has answered. What it is asked in the address it looks for as it begins. */
async function found(page: Page): Promise<readonly string[]> {
  await page.getByRole('searchbox').waitFor();
  await page.locator('[data-results]:not([aria-busy])').waitFor({ state: 'attached' });
  return page
    .locator('[data-results] a[href*="colours/"]')
    .evaluateAll((links) =>
      links.map((link) => new URL((link as HTMLAnchorElement).href).pathname.replace(/^.*\/colours\/|\/$/g, '')).sort(),
    );
}

/** That a search has found a colour, and not only left the list of all. */
async function foundAmongFew(page: Page, id: string): Promise<void> {
  const rows = await found(page);
  expect(rows).toContain(id);
  expect(rows.length).toBeLessThan(book().recipes.length / 2);
}

/** Shows all rows where they come in parts. */
async function foundAll(page: Page): Promise<readonly string[]> {
  let rows = await found(page);
  while (await page.locator('[data-more]').isVisible()) {
    await page.locator('[data-more]').click();
    rows = await found(page);
  }
  return rows;
}

const idsWhere = (test: (recipe: Recipe) => boolean): readonly string[] =>
  book()
    .recipes.filter(test)
    .map(({ id }) => id)
    .sort();

async function choose(page: Page, filter: string, value: string): Promise<void> {
  await page.locator(`[data-facet="${filter}"]`).evaluate((details) => details.setAttribute('open', ''));
  await page.locator(`input[name="${filter}"][value="${value}"]`).check();
}

describe('the find page', () => {
  test('finds a colour by a word of its title, and says how many', async () => {
    const { page, errors, foreign, close } = await visit(browser, 'find/');
    const recipe = book().recipes[0]!;
    await page.getByRole('searchbox').fill(recipe.title);
    await foundAmongFew(page, recipe.id);
    expect(await page.locator('[data-count]').innerText()).toMatch(/^\d+/);
    expect(errors).toEqual([]);
    expect(foreign).toEqual([]);
    await close();
  });

  test('finds by a word of the notes', async () => {
    const { page, close } = await visit(browser, 'find/');
    const recipe = book().recipes.find(({ notes }) => /\b[a-z]{9,}\b/.test(notes))!;
    await page.getByRole('searchbox').fill(/\b[a-z]{9,}\b/.exec(recipe.notes)![0]);
    await foundAmongFew(page, recipe.id);
    await close();
  });

  test.each<[string, (colour: Recipe | RecipeLook) => readonly string[]]>([
    ['hue', ({ facets }) => facets.hueFamilies],
    ['lightness', ({ facets }) => [facets.lightness]],
    ['opacity', ({ facets }) => [opacityName(facets.opacity)]],
    ['pattern', ({ pattern }) => [pattern]],
  ])('filters by %s: exactly the colours that the book has', async (filter, facetOf) => {
    const { page, close } = await visit(browser, 'find/');
    const [value] = facetOf(book().recipes[0]!);
    const colours = [...book().recipes, ...book().looks];
    await choose(page, filter, value!);
    expect(await foundAll(page)).toEqual(
      colours
        .filter((colour) => facetOf(colour).includes(value!))
        .map(({ id }) => id)
        .sort(),
    );
    await close();
  });

  test('filters by material, flake colour and flake size, alone and together', async () => {
    const { page, close } = await visit(browser, 'find/');
    const { recipes, materials } = book();
    const recipe = recipes.find(({ facets }) => facets.flakeSizes.length > 0)!;
    const flakeSize = recipe.facets.flakeSizes[0]!;
    const flakeColour = recipe.facets.flakeColours[0]!;
    const material = recipe.facets.materials[0]!;
    const hasSize = ({ facets }: Recipe): boolean => facets.flakeSizes.includes(flakeSize);
    const hasColour = ({ facets }: Recipe): boolean => facets.flakeColours.includes(flakeColour);
    const hasMaterial = ({ facets }: Recipe): boolean => facets.materials.includes(material);

    await choose(page, 'flake-size', flakeSize);
    expect(await foundAll(page)).toEqual(idsWhere(hasSize));
    await choose(page, 'flake-colour', flakeColour);
    expect(await foundAll(page)).toEqual(idsWhere((each) => hasSize(each) && hasColour(each)));
    await choose(page, 'material', materials.find(({ id }) => id === material)!.title);
    expect(await foundAll(page)).toEqual(idsWhere((each) => hasSize(each) && hasColour(each) && hasMaterial(each)));
    await close();
  });

  test('two colours of flake, two materials or two tags find what has both', async () => {
    const { page, close } = await visit(browser, 'find/');
    const { recipes, materials } = book();
    const { facets } = recipes.find((each) => each.facets.flakeColours.length > 1)!;
    for (const colour of facets.flakeColours.slice(0, 2)) {
      await choose(page, 'flake-colour', colour);
      await foundAll(page);
    }
    const hasBoth = (each: Recipe): boolean =>
      facets.flakeColours.slice(0, 2).every((colour) => each.facets.flakeColours.includes(colour));
    expect(await foundAll(page)).toEqual(idsWhere(hasBoth));
    expect(await page.locator('[data-facet="flake-colour"] [data-chosen]').innerText()).toMatch(/\w and \w/);
    const third = facets.materials[0]!;
    await choose(page, 'material', materials.find(({ id }) => id === third)!.title);
    expect(await foundAll(page)).toEqual(idsWhere((each) => hasBoth(each) && each.facets.materials.includes(third)));
    await close();
  });

  test('finds a colour by the day, the month and the year in which it was made', async () => {
    const { page, close } = await visit(browser, 'find/');
    const recipe = book().recipes.find(({ made }) => made !== undefined)!;
    const month = recipe.made!.slice(0, 7);
    const name = new Date(recipe.made!).toLocaleString('en', { month: 'long', timeZone: 'UTC' });
    for (const words of [name, `${name} ${recipe.made!.slice(0, 4)}`, month, recipe.made!]) {
      await page.getByRole('searchbox').fill(words);
      await expect.poll(() => page.locator('[data-count]').innerText(), { message: words }).toMatch(/found/);
      expect(await foundAll(page), words).toContain(recipe.id);
    }
    await close();
  });

  test('moves nothing while it gets ready, and begins its results on a phone’s first screen with its filters open', async () => {
    for (const viewport of [
      { width: 390, height: 844 },
      { width: 1280, height: 900 },
    ]) {
      const { page, close } = await visit(browser, 'find/', { viewport });
      await page.waitForTimeout(500);
      const moved = await page.evaluate(
        () =>
          new Promise<number>((done) => {
            new PerformanceObserver((list) => {
              done(list.getEntries().reduce((sum, entry) => sum + (entry as unknown as { value: number }).value, 0));
            }).observe({ type: 'layout-shift', buffered: true });
            setTimeout(() => done(0), 1000);
          }),
      );
      expect(moved).toBeLessThanOrEqual(0.02);
      await page.locator('[data-narrow]').evaluate((details) => details.setAttribute('open', ''));
      const { y } = (await page.locator('[data-count]').boundingBox())!;
      expect(y).toBeLessThan(viewport.height - 60);
      await close();
    }
  });

  test('counts beside each choice what it would find with all that is asked already', async () => {
    const { page, close } = await visit(browser, 'find/');
    const count = (filter: string, value: string): Promise<string | null> =>
      page.locator(`li:has(> input[name="${filter}"][value="${value}"]) .count`).textContent();
    const { recipes, looks } = book();
    const [first] = recipes;
    const hue = first!.facets.hueFamilies[0]!;
    const all = [...recipes, ...looks];
    const opacities = [...new Set(all.map(({ facets }) => opacityName(facets.opacity)))];
    const hues = [...new Set(all.flatMap(({ facets }) => facets.hueFamilies))];
    await choose(page, 'hue', hue);
    await foundAll(page);
    await page.locator('[data-facet="opacity"]').evaluate((details) => details.setAttribute('open', ''));
    for (const opacity of opacities) {
      const both = all.filter(
        ({ facets }) => facets.hueFamilies.includes(hue) && opacityName(facets.opacity) === opacity,
      ).length;
      expect(await count('opacity', opacity), opacity).toBe(String(both));
    }
    for (const other of hues) {
      expect(await count('hue', other), other).toBe(
        String(all.filter(({ facets }) => facets.hueFamilies.includes(other)).length),
      );
    }
    await close();
  });

  test('works by keyboard alone', async () => {
    const { page, close } = await visit(browser, 'find/');
    const recipe = book().recipes[0]!;
    await page.getByRole('searchbox').focus();
    await page.keyboard.type(recipe.title);
    await foundAmongFew(page, recipe.id);
    for (let stop = 0; stop < 60; stop += 1) {
      await page.keyboard.press('Tab');
      if (await page.evaluate(() => document.activeElement?.closest('[data-results]') !== null)) break;
    }
    await Promise.all([page.waitForURL(/\/colours\//), page.keyboard.press('Enter')]);
    expect(await page.locator('h1').count()).toBe(1);
    await close();
  });

  test('says so when nothing is found', async () => {
    const { page, close } = await visit(browser, 'find/');
    await page.getByRole('searchbox').fill('zzqqxx');
    expect(await found(page)).toEqual([]);
    expect(await page.locator('[data-count]').innerText()).toMatch(/no|nothing|0/i);
    await close();
  });

  test('offers what was likely meant, and to take out the filters, where nothing is found', async () => {
    const { page, close } = await visit(browser, 'find/');
    const recipe = book().recipes[0]!;
    const [word = ''] = recipe.title.toLowerCase().split(' ');
    await page.getByRole('searchbox').fill(`${word.slice(0, -1)}q`);
    await page.getByRole('button', { name: new RegExp(`“${word}”`) }).click();
    expect(await page.getByRole('searchbox').inputValue()).toBe(word);
    await foundAmongFew(page, recipe.id);
    await page.getByRole('searchbox').fill(recipe.title);
    const rows = await foundAll(page);
    const hues = (ofFound: boolean): readonly string[] =>
      book()
        .recipes.filter(({ id }) => rows.includes(id) === ofFound)
        .flatMap(({ facets }) => facets.hueFamilies);
    const none = hues(false).find((hue) => !hues(true).includes(hue))!;
    await choose(page, 'hue', none);
    await page.getByRole('button', { name: /Remove the filters/ }).click();
    await foundAmongFew(page, recipe.id);
    expect(await page.locator('[data-facet] :checked').count()).toBe(0);
    await close();
  });

  test('takes the words that the first page sends', async () => {
    const { page, close } = await visit(browser, '');
    const recipe = book().recipes[0]!;
    await page.locator('form[role="search"] input[name="q"]').fill(recipe.title);
    await Promise.all([page.waitForURL(/\/find\//), page.keyboard.press('Enter')]);
    await foundAmongFew(page, recipe.id);
    expect(await page.getByRole('searchbox').inputValue()).toBe(recipe.title);
    await close();
  });
});

test('the first page narrows its wall to the words that are typed', async () => {
  const { page, close } = await visit(browser, '');
  const recipe = book().recipes[0]!;
  await page.locator('[data-filter]').fill(recipe.title.toLowerCase());
  await expect
    .poll(() => page.locator('li.tile:visible').allInnerTexts())
    .toEqual([expect.stringContaining(recipe.title)]);
  expect(await page.locator('[data-filter-count]').innerText()).toMatch(/^1 colour shown/);
  await close();
});

test('says at its field what of the question is no colour, and beside it what was found without', async () => {
  const { page, errors, close } = await visit(browser, 'find/');
  await page.locator('[data-near]').evaluate((details) => details.setAttribute('open', ''));
  const digits = page.getByLabel('The colour, as # and six digits');
  await digits.fill('olive');
  const fault = '“olive” isn’t a colour code. Type # and six digits, like #8a6a44.';
  const status = page.locator('[data-count]');
  const described = await digits.getAttribute('aria-describedby');
  const told = page.getByRole('status').and(page.locator(`#${described}`));
  await expect.poll(() => told.innerText()).toBe(fault);
  expect(await status.innerText()).toMatch(/^\d+\scolours, by hue\.$/);
  expect(await digits.getAttribute('aria-invalid')).toBe('true');
  await page.getByRole('searchbox').fill('stained water');
  await expect.poll(() => status.innerText()).toMatch(/^\d+\scolours? found\.$/);
  await digits.fill('#8a6a44');
  await expect.poll(() => status.innerText()).toMatch(/^\d+\scolours? found, closest/);
  expect(await told.innerText()).toBe('');
  expect(errors).toEqual([]);
  await close();
});
