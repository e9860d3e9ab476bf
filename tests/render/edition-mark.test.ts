import { expect, test } from 'vitest';
import { allByRole, byRole, documentOf, nameOf, wordsIn } from '../page-dom.ts';
import { bookOf, everyPage, MAKERS_BOOK, readPage, SAMPLE_BOOK, SAMPLE_FILES } from './sample-book.ts';

test('every page of the maker’s own copy says that it is, and is not for search engines; no page that readers get does', async () => {
  for (const [url, html] of await everyPage(MAKERS_BOOK)) {
    const page = documentOf(html);
    expect(allByRole(page, 'complementary', { name: 'Edition' }), url).toHaveLength(1);
    expect(page.querySelector('meta[name="robots"]')?.getAttribute('content'), url).toBe('noindex, nofollow');
    expect(page.querySelector('meta[property^="og:"], link[rel="canonical"]'), url).toBeNull();
  }
  for (const [url, html] of await everyPage(SAMPLE_BOOK)) {
    const page = documentOf(html);
    expect(allByRole(page, 'complementary', { name: 'Edition' }), url).toEqual([]);
    expect(page.querySelector('meta[name="robots"], .publish-note, .card-mark'), url).toBeNull();
  }
});

test('the maker’s own copy has every recipe in full, and says on its page what readers get of it, on its tile what they don’t', async () => {
  const said: Readonly<Record<string, readonly [string, string?]>> = {
    'weir-foam': ['Published: readers get the whole recipe.'],
    hush: [
      'Look only: readers see its name and its look, but no amounts. Anyone with your materials can match what they see; publish: no keeps it to yourself.',
      'look only',
    ],
    secret: ['Not published: readers never see it.', 'not published'],
  };
  const home = await readPage('home', '', MAKERS_BOOK);
  for (const [id, [note, word]] of Object.entries(said)) {
    const page = await readPage('recipe', id, MAKERS_BOOK);
    expect(wordsIn(page.querySelector('article > header > :last-child')!)).toBe(note);
    expect(allByRole(page, 'heading', { name: 'What goes in' })).toHaveLength(1);
    const tile = home.querySelector(`a[href="./colours/${id}/"]`)!.closest('li')!;
    const mark = /(?:not published|look only)$/.exec(wordsIn(byRole(tile, 'paragraph')))?.[0];
    expect(mark).toBe(word);
  }
});

test('the maker’s own copy says of materials, molds and targets that readers don’t get them', async () => {
  const book = bookOf(
    {
      ...SAMPLE_FILES,
      'shelf/colorants/ash.md': SAMPLE_FILES['shelf/colorants/lamp-black.md']!.replace('Lamp Black', 'Ash'),
      'molds/leaf.md': SAMPLE_FILES['molds/craw-3.md']!.replace('Craw', 'Leaf'),
      'targets/post.md': SAMPLE_FILES['targets/rack.md']!.replace('On the rack', 'On the post'),
    },
    'mine',
  );
  const only = 'Only in your own copy: no recipe that you publish in full uses it.';
  const words = async (kind: string, id: string): Promise<string> => wordsIn(await readPage(kind, id, book));
  expect(await words('material', 'ash')).toContain(only);
  expect(await words('mold', 'leaf')).toContain(only);
  expect(await words('target', 'post')).toContain('Not published: readers never see it.');
  expect(await words('material', 'peat')).not.toContain(only);
  expect(await words('target', 'rack')).toContain('Published: readers see this page.');
});

test('a card of what is not published says so on every side, and leads to no address that is not there', async () => {
  const marks = (card: Document): readonly string[] =>
    allByRole(card, 'article').map((side) => allByRole(side, 'strong').map(wordsIn).join());
  for (const kind of ['recipe-card', 'recipe-card-4x6']) {
    const secret = await readPage(kind, 'secret', MAKERS_BOOK);
    expect(marks(secret).length).toBeGreaterThan(0);
    for (const mark of marks(secret)) expect(mark).toContain('Not published');
    expect(allByRole(secret, 'img', { name: /^QR/ })).toEqual([]);
    const look = await readPage(kind, 'hush', MAKERS_BOOK);
    for (const mark of marks(look)) expect(mark).toContain('Look only');
    expect(allByRole(look, 'img', { name: /^QR/ })).not.toEqual([]);
    expect(marks(await readPage(kind, 'weir-foam', MAKERS_BOOK)).join()).not.toMatch(/published|look only/i);
  }
});

test('readers are told what a batch takes in all, and neither costs nor a filter by what is left', async () => {
  const [shared, mine] = [
    await readPage('recipe', 'weir-foam', SAMPLE_BOOK),
    await readPage('recipe', 'weir-foam', MAKERS_BOOK),
  ];
  const takes = shared.querySelector('[data-planned-costs]')!;
  expect(nameOf(byRole(shared, 'heading', { name: 'Materials needed' }).closest('section')!)).toBe('Materials needed');
  expect(allByRole(takes, 'columnheader').map(wordsIn)).toEqual(['Material', 'Needed']);
  expect(allByRole(mine, 'heading', { name: 'Cost and shopping' })).toHaveLength(1);
  const inStock = async (book: typeof SAMPLE_BOOK): Promise<number> =>
    (await readPage('match', '', book)).querySelectorAll('[name="inStock"]').length;
  expect([await inStock(SAMPLE_BOOK), await inStock(MAKERS_BOOK)]).toEqual([0, 1]);
});

test('your own page of a look-only recipe says what a look cannot keep; other pages, and those of readers, do not', async () => {
  const warning = 'Anyone with your materials can match what they see; publish: no keeps it to yourself.';
  const warns = async (id: string, book: typeof SAMPLE_BOOK): Promise<boolean> =>
    wordsIn(await readPage('recipe', id, book)).includes(warning);
  expect(await warns('hush', MAKERS_BOOK)).toBe(true);
  expect(await warns('weir-foam', MAKERS_BOOK)).toBe(false);
  expect(await warns('secret', MAKERS_BOOK)).toBe(false);
  expect(await warns('hush', SAMPLE_BOOK)).toBe(false);
});
