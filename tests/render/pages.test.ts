import { HtmlValidate } from 'html-validate';
import { expect, test } from 'vitest';
import { paths } from '../../src/render/links.ts';
import { FILES, PAGES } from '../../src/render/pages.ts';
import { bookOf, contextOf, HOSTILE_TITLE, pageOf, SAMPLE_BOOK, SAMPLE_FILES } from './sample-book.ts';

const validator = new HtmlValidate({
  extends: ['html-validate:recommended'],
  // `<!doctype html>` in lower case is as valid, and integrity guards files of other hosts, of which there are none.
  rules: { 'doctype-style': 'off', 'require-sri': 'off' },
});

async function faultsOf(page: string): Promise<readonly string[]> {
  const { results } = await validator.validateString(page);
  return results.flatMap(({ messages }) =>
    messages.map(({ ruleId, message, line }) => `${line} ${ruleId}: ${message}`),
  );
}

/** Every page of the sample book, as `[path, html]`. */
async function everyPage(): Promise<readonly (readonly [string, string])[]> {
  const pages: (readonly [string, string])[] = [];
  for (const kind of PAGES) {
    for (const item of kind.items(SAMPLE_BOOK)) {
      const url = kind.url(item);
      pages.push([url, kind.render(await contextOf(SAMPLE_BOOK, url), item)]);
    }
  }
  return pages;
}

const pages = await everyPage();

test('the sample book has a page of every kind', () => {
  for (const kind of PAGES) expect([kind.kind, kind.items(SAMPLE_BOOK).length > 0]).toEqual([kind.kind, true]);
  expect(new Set(pages.map(([url]) => url)).size).toBe(pages.length);
});

test.each(pages)('the page %s is valid HTML', async (_, page) => {
  expect(await faultsOf(page)).toEqual([]);
});

test('a book with nothing in it has valid pages too', async () => {
  const empty = bookOf({ 'book.md': '---\ntitle: Empty\n---\n' });
  for (const kind of PAGES) {
    for (const item of kind.items(empty)) {
      const page = kind.render(await contextOf(empty, kind.url(item)), item);
      expect([kind.kind, await faultsOf(page)]).toEqual([kind.kind, []]);
    }
  }
});

test('no page has markup from a title, a tag or a note', () => {
  for (const [url, page] of pages) {
    expect([url, page.match(/<script>alert|<img src=x|<i>tag|<b>Book/g)]).toEqual([url, null]);
  }
});

test('a hostile title stands on its page as text', async () => {
  const page = await pageOf('recipe', 'hostile');
  expect(page).toContain(
    '&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt; &amp; &lt;img src=x onerror=&#39;alert(2)&#39;&gt;</h1>',
  );
  expect(HOSTILE_TITLE).toContain('<script>');
});

test('scripts and styles come from the book alone, and none is written into a page', () => {
  for (const [url, page] of pages) {
    expect(page.match(/\sstyle=|<style|\son[a-z]+="/g), url).toBeNull();
    for (const [, attributes, body] of page.matchAll(/<script([^>]*)>([\s\S]*?)<\/script>/g)) {
      if (attributes!.includes('application/json')) expect(() => JSON.parse(body!)).not.toThrow();
      else expect(body, url).toBe('');
    }
    for (const [, source] of page.matchAll(/\ssrc="([^"]*)"/g)) expect(source, url).not.toMatch(/^(?:https?:)?\/\//);
    expect(page, url).toContain('default-src &#39;none&#39;');
  }
});

test('only the find page may compile the module of the search', () => {
  for (const [url, page] of pages) expect([url, page.includes('wasm-unsafe-eval')]).toEqual([url, url === 'find/']);
});

test('every link of a page leads to a page or a file of the book, from any depth', () => {
  const known = new Set([
    ...pages.map(([url]) => url),
    paths.notices,
    ...FILES.flatMap((kind) => kind.items(SAMPLE_BOOK).map((item) => kind.url(item))),
  ]);
  let checked = 0;
  for (const [url, page] of pages) {
    if (url === '404.html') continue;
    for (const [, href] of page.matchAll(/<a\s[^>]*?href="([^"]*)"/g)) {
      if (/^https?:/.test(href!)) continue;
      const target = new URL(href!.replaceAll('&amp;', '&'), `https://host.example/deep/book/${url}`);
      expect(target.href, `${href} on ${url}`).toMatch(/^https:\/\/host\.example\/deep\/book\//);
      const path = target.pathname.slice('/deep/book/'.length);
      expect([url, href, known.has(path)]).toEqual([url, href, true]);
      if (target.hash !== '') {
        const there = pages.find(([other]) => other === path)![1];
        expect([url, href, there.includes(` id="${target.hash.slice(1)}"`)]).toEqual([url, href, true]);
      }
      checked++;
    }
  }
  expect(checked).toBeGreaterThan(500);
});

test('the page for what is missing links from the path of the address', async () => {
  expect(await pageOf('not-found')).toContain('href="/deep/assets/book.css"');
});

test('ids are there once on a page', () => {
  for (const [url, page] of pages) {
    const ids = [...page.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id);
    expect([url, ids.filter((id, at) => ids.indexOf(id) !== at)]).toEqual([url, []]);
  }
});

test('every page and card that tells someone to heat carries the cautions', () => {
  for (const [url, page] of pages) {
    if (/card|plan\/|colours\/(?!hush)/.test(url) && url !== 'cards/') {
      expect(page, url).toMatch(/safety data sheet first/);
      expect(page, url).toMatch(/goggles/i);
    }
  }
});

test('a recipe page states the limit of its cups and where it comes from', async () => {
  const page = (await pageOf('recipe', 'alder-smoke')).replaceAll('\u00a0', ' ');
  expect(page).toContain('Never above 182 °C (Copper hexagon sets the limit).');
  expect(page).toContain('Pour at 160 to 175 °C.');
  expect(page).toContain('No maximum on file for Dust, Ivory Pearl and Lamp Black');
});

test('a page of which only the look is published tells no amount and no material', async () => {
  const page = await pageOf('recipe', 'hush');
  expect(page).toContain('Hush');
  expect(page).not.toMatch(/Lamp Black|drops|Supple/);
});

test('nothing of an unpublished recipe is on any page', () => {
  for (const [url, page] of pages) expect(page, url).not.toMatch(/zibeline|secret/i);
});

test('rounds show what was seen beside what was predicted', async () => {
  const page = await pageOf('recipe', 'weir-foam');
  expect(page).toContain('Round 1: predicted on the left, seen on the right');
  expect(page).toContain('fill="#b09468"');
  expect(page).toContain('too thin');
  expect(page).toContain('Adding up the notes would');
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
  expect(page.match(/class="tile"/g)?.length).toBe(36);
  expect(page).toContain(`href="./find/?hue=${first!.facets.hueFamilies[0]}">all 600 colours</a>`);
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
    'labels-letter',
    'not-found',
  ];
  for (const kind of once) {
    const page = await pageOf(kind, '', empty);
    expect(await faultsOf(page), kind).toEqual([]);
    expect(page, kind).not.toMatch(/\b0 (?:colours|sheets|cards)/);
    expect(page, kind).not.toContain('data-print hidden');
  }
  expect(await pageOf('home', '', empty)).not.toContain('<form');
});

test('cards have no heading of a hue of which only looks are published', async () => {
  const looked = SAMPLE_BOOK.looks.flatMap(({ facets }) => facets.hueFamilies);
  const recipes = SAMPLE_BOOK.recipes.filter(({ facets }) => !facets.hueFamilies.some((hue) => looked.includes(hue)));
  expect(looked).not.toEqual([]);
  expect(recipes).not.toEqual([]);
  const page = await pageOf('cards', '', { ...SAMPLE_BOOK, recipes, families: [] });
  const hues = [...page.matchAll(/<h2>([^<]*)<\/h2><ul class="card-choice"><li>/g)].map(([, hue]) =>
    hue?.toLowerCase(),
  );
  expect(new Set(hues)).toEqual(new Set(recipes.flatMap(({ facets }) => facets.hueFamilies)));
  expect(page).not.toContain('<ul class="card-choice"></ul>');
});

test('Find names the flakes under each flake colour, since copper is among the browns', async () => {
  const page = await pageOf('find');
  const names = /value="brown"><label for="f-flake-colour-brown">.*?<span class="choice-names">([^<]*)</.exec(page);
  expect(names?.[1]).toBe('Copper hexagon');
});
