import { expect, test } from 'vitest';
import { linesAsked } from '../../src/browser/plan-address.ts';
import { paths } from '../../src/render/links.ts';
import { FILES, PAGES } from '../../src/render/pages.ts';
import { allByRole, byRole, documentOf, nameOf, wordsIn } from '../page-dom.ts';
import { faultsOf } from './html-faults.ts';
import {
  bookOf,
  everyPage,
  HOSTILE_TITLE,
  MAKERS_BOOK,
  pageOf,
  readPage,
  SAMPLE_BOOK,
  SAMPLE_FILES,
} from './sample-book.ts';

/** What a page may load, and from where. */
const policyOf = (page: Document): string =>
  page.querySelector('meta[http-equiv="Content-Security-Policy"]')!.getAttribute('content')!;

const pages = await everyPage();
const documents = pages.map(([url, page]) => [url, documentOf(page)] as const);

test('the sample book has a page of every kind', () => {
  for (const kind of PAGES) {
    const books = [SAMPLE_BOOK, MAKERS_BOOK].filter((book) => kind.items(book).length > 0);
    expect(books, kind.kind).not.toEqual([]);
  }
  expect(new Set(pages.map(([url]) => url)).size).toBe(pages.length);
});

test.each(pages)('the page %s is valid HTML', async (_, page) => {
  expect(await faultsOf(page)).toEqual([]);
});

test('a book with nothing in it has valid pages too', async () => {
  const empty = bookOf({ 'book.md': '---\ntitle: Empty\n---\n' });
  for (const [url, page] of await everyPage(empty)) expect([url, await faultsOf(page)]).toEqual([url, []]);
});

test("a mold's page says how it is filled, what its manifold gives, and how much is thrown away", async () => {
  const mold = 'title: Stick\ncavity: 6 ml\nbody: 9 mm\nmethod: injected\nmanifold: 40 %\nrejects: 2.5 %';
  const book = bookOf({
    'book.md': '---\ntitle: One\n---\n',
    'shelf/plastics/supple.md': '---\ntitle: Supple\n---\n',
    'molds/stick.md': `---\n${mold}\n---\n`,
    'colours/plain.md': '---\ntitle: Plain\ncups: { body: { plastic: 90 ml } }\n---\n',
  });
  const properties = wordsIn(byRole(documentOf(await pageOf('mold', 'stick', book)), 'region', { name: 'Properties' }));
  expect(properties).toMatch(/Filled\s*injected/);
  expect(properties).toMatch(/Manifold\s*gives the first cup 40 %/);
  expect(properties).toMatch(/Thrown away\s*2\.5 % of the baits/);
});

test("a mold's page leads to a plan of one full pour for each of its colours that has amounts", async () => {
  const { molds, recipes } = SAMPLE_BOOK;
  const plannable = { recipes: new Set(recipes.map(({ id }) => id)), molds: new Set(molds.map(({ id }) => id)) };
  for (const { id, cavities, usedIn } of molds) {
    const page = await readPage('mold', id);
    const href = page.querySelector('a[href*="line="]')?.getAttribute('href') ?? '?';
    const asked = linesAsked(new URLSearchParams(href.slice(href.indexOf('?'))), plannable);
    const poured = usedIn.filter((recipe) => plannable.recipes.has(recipe));
    expect(asked).toEqual(poured.map((recipe) => ({ recipe, mold: id, baits: cavities })));
  }
  expect(molds.flatMap(({ usedIn }) => usedIn)).not.toEqual([]);
});

test("a plastic's page names each colour once, with all of its cups", async () => {
  const plastic = SAMPLE_BOOK.materials.find(({ kind, usedIn }) => kind === 'plastic' && usedIn.length > 1)!;
  const page = await readPage('material', plastic.id);
  const rows = [...page.querySelectorAll('.uses li')].map((row) => wordsIn(row));
  const colours = new Set(plastic.usedIn.map(({ recipe }) => recipe));
  expect(rows).toHaveLength(colours.size);
  for (const { recipe, cup } of plastic.usedIn) {
    const { title, cups } = SAMPLE_BOOK.recipes.find(({ id }) => id === recipe)!;
    const row = rows.find((each) => each.startsWith(title))!;
    expect(row).toContain(cups.length > 1 ? cup : title);
  }
});

test('no page has markup from a title, a tag or a note', () => {
  for (const [url, page] of pages) {
    expect([url, page.match(/<script>alert|<img src=x|<i>tag|<b>Book/g)]).toEqual([url, null]);
  }
});

test('a hostile title stands on its page as text', async () => {
  expect(nameOf(byRole(await readPage('recipe', 'hostile'), 'heading', { name: HOSTILE_TITLE }))).toContain('<script>');
});

test('scripts and styles come from the book alone, and none is written into a page', () => {
  for (const [url, page] of documents) {
    const attributes = [...page.querySelectorAll('*')].flatMap((element) => element.getAttributeNames());
    expect([url, attributes.filter((name) => /^(?:style|on.*)$/i.test(name))]).toEqual([url, []]);
    expect([url, page.querySelectorAll('style').length]).toEqual([url, 0]);
    for (const script of page.querySelectorAll('script')) {
      if (script.getAttribute('type') === 'application/json')
        expect(() => JSON.parse(script.textContent!)).not.toThrow();
      else expect(script.textContent, url).toBe('');
    }
    for (const element of page.querySelectorAll('[src]'))
      expect(element.getAttribute('src'), url).not.toMatch(/^(?:https?:)?\/\//);
    expect(policyOf(page), url).toContain("default-src 'none'");
  }
});

test('only the find page may compile the module of the search', () => {
  for (const [url, page] of documents)
    expect([url, policyOf(page).includes('wasm-unsafe-eval')]).toEqual([url, url === 'find/']);
});

test('every link of a page leads to a page or a file of the book, from any depth', () => {
  const known = new Set([
    ...pages.map(([url]) => url),
    paths.notices,
    ...FILES.flatMap((kind) => kind.items(SAMPLE_BOOK).map((item) => kind.url(item))),
  ]);
  let checked = 0;
  for (const [url, page] of documents) {
    if (url === '404.html') continue;
    for (const link of page.querySelectorAll('a[href]')) {
      const href = link.getAttribute('href')!;
      if (/^https?:/.test(href)) continue;
      const target = new URL(href, `https://host.example/deep/book/${url}`);
      expect(target.href, `${href} on ${url}`).toMatch(/^https:\/\/host\.example\/deep\/book\//);
      const path = target.pathname.slice('/deep/book/'.length);
      expect([url, href, known.has(path)]).toEqual([url, href, true]);
      if (target.hash !== '') {
        const [, there] = documents.find(([other]) => other === path)!;
        expect([url, href, there.getElementById(target.hash.slice(1)) !== null]).toEqual([url, href, true]);
      }
      checked++;
    }
  }
  expect(checked).toBeGreaterThan(500);
});

test('the page for what is missing links from the path of the address', async () => {
  const page = await readPage('not-found');
  expect(page.querySelector('link[rel="stylesheet"]')!.getAttribute('href')).toBe('/deep/assets/book.css');
});

test('ids are there once on a page', () => {
  for (const [url, page] of documents) {
    const ids = [...page.querySelectorAll('[id]')].map(({ id }) => id);
    expect([url, ids.filter((id, at) => ids.indexOf(id) !== at)]).toEqual([url, []]);
  }
});

test('every page and card that tells someone to heat carries the cautions', () => {
  for (const [url, page] of documents) {
    if (/(?<!measuring-)card|plan\/|colours\/(?!hush)/.test(url) && url !== 'cards/') {
      expect(wordsIn(page), url).toMatch(/safety data sheet first/);
      expect(wordsIn(page), url).toMatch(/goggles/i);
    }
  }
});

test('a recipe page states the limit of its cups and where it comes from', async () => {
  const page = wordsIn(await readPage('recipe', 'alder-smoke'));
  expect(page).toContain('Never above 182 °C Copper hexagon sets the limit.');
  expect(page).toContain('Pour at 160 to 175 °C.');
  expect(page).toContain('No maximum on file for Dust, Ivory Pearl and Lamp Black');
});

test('a page of which only the look is published tells no amount and no material', async () => {
  const page = await pageOf('recipe', 'hush');
  expect(allByRole(documentOf(page), 'heading', { name: 'Hush' })).toHaveLength(1);
  expect(page).not.toMatch(/Lamp Black|drops|Supple/);
});

test('nothing of an unpublished recipe is on any page', () => {
  for (const [url, page] of pages) expect(page, url).not.toMatch(/zibeline|secret/i);
});

test('rounds show what was seen beside what the book has of it', async () => {
  const page = await readPage('recipe', 'weir-foam');
  const pair = byRole(page, 'img', { name: /^Round 1\. In this book: .*\. Seen: / });
  expect(pair.querySelector('[fill="#b09468"]')).not.toBeNull();
  expect(wordsIn(page)).toContain('you can see through it');
  expect(wordsIn(page)).toContain('Just adding up the notes would');
});

test('the data of a recipe stands by itself: its materials and its mold are in it', () => {
  const recipeData = FILES.find(({ kind }) => kind === 'recipe-data')!;
  const data = JSON.parse(recipeData.text(SAMPLE_BOOK, 'alder-smoke', {}));
  expect(data.recipe.id).toBe('alder-smoke');
  expect(data.mold.id).toBe('minnow-3');
  expect(data.materials.map(({ id }: { id: string }) => id)).toContain('copper-hex-040');
  // Where else a material is used would make every file grow with the book.
  expect(JSON.stringify(data)).not.toContain('usedIn');
  expect(SAMPLE_FILES['colours/weir-foam.md']).toBe(
    FILES.find(({ kind }) => kind === 'recipe-source')!.text(SAMPLE_BOOK, 'weir-foam', {}),
  );
});

test('a wall of many colours shows some of each hue and links to the others', async () => {
  const [first] = SAMPLE_BOOK.recipes;
  const many = Array.from({ length: 600 }, (_, index) => ({ ...first!, id: `${first!.id}-${index}` }));
  const page = await pageOf('home', '', { ...SAMPLE_BOOK, recipes: many, looks: [], families: [] });
  const wall = documentOf(page);
  expect(wall.querySelectorAll('li.tile').length).toBe(36);
  const all = byRole(wall, 'link', { name: 'all 600 colours' });
  expect(all.getAttribute('href')).toBe(`./find/?hue=${first!.facets.hueFamilies[0]}`);
  expect(page.length).toBeLessThan(600_000);
});

test('a book without colours offers nothing that it does not have', async () => {
  const empty = bookOf({
    'book.md': SAMPLE_FILES['book.md']!,
    'shelf/plastics/supple.md': SAMPLE_FILES['shelf/plastics/supple.md']!,
  });
  const once = [
    'home',
    'find',
    'plan',
    'families',
    'molds',
    'cards',
    'cards-a4',
    'cards-letter',
    'labels',
    'not-found',
  ];
  for (const kind of once) {
    const page = await pageOf(kind, '', empty);
    expect(await faultsOf(page), kind).toEqual([]);
    expect(page, kind).not.toMatch(/\b0 (?:colours|sheets|cards)/);
    expect(documentOf(page).querySelector('[data-print]'), kind).toBeNull();
  }
  expect((await readPage('home', '', empty)).querySelector('form')).toBeNull();
});

test('cards have no heading of a hue of which only looks are published', async () => {
  const looked = SAMPLE_BOOK.looks.flatMap(({ facets }) => facets.hueFamilies);
  const recipes = SAMPLE_BOOK.recipes.filter(({ facets }) => !facets.hueFamilies.some((hue) => looked.includes(hue)));
  expect(looked).not.toEqual([]);
  expect(recipes).not.toEqual([]);
  const page = await readPage('cards', '', { ...SAMPLE_BOOK, recipes, families: [] });
  const lists = [...page.querySelectorAll('main > h2')].map(
    (hue) => [nameOf(hue).toLowerCase(), hue.nextElementSibling!] as const,
  );
  expect(new Set(lists.map(([hue]) => hue))).toEqual(new Set(recipes.map(({ facets }) => facets.hueFamilies[0])));
  for (const [, list] of lists) expect(allByRole(list, 'listitem')).not.toEqual([]);
});

test('Find names the flakes under each flake colour, since copper is among the browns', async () => {
  const colours = (await readPage('find')).querySelector('[data-facet="flake-colour"]')!;
  expect(allByRole(colours, 'checkbox', { name: /^Brown \d+ Copper hexagon$/ })).toHaveLength(1);
});
