import { expect, test } from 'vitest';
import { PAGES } from '../../src/render/pages.ts';
import { bookOf, contextOf, MAKERS_BOOK, pageOf, SAMPLE_BOOK, SAMPLE_FILES } from './sample-book.ts';

/** Every page of a book, by its path. */
async function pagesOf(book: typeof SAMPLE_BOOK): Promise<readonly (readonly [string, string])[]> {
  const context = await contextOf(book, '');
  return PAGES.flatMap((kind) =>
    kind.items(book).map((item) => {
      const url = kind.url(item);
      return [url, kind.render({ ...context, url }, item)] as const;
    }),
  );
}

test('every page of the maker’s own copy says that it is, and is not for search engines; no page that readers get does', async () => {
  for (const [url, page] of await pagesOf(MAKERS_BOOK)) {
    expect(page, url).toContain('<aside class="own-copy" aria-label="Edition">');
    expect(page, url).toContain('<meta name="robots" content="noindex, nofollow">');
    expect(page, url).not.toMatch(/property="og:|rel="canonical"/);
  }
  for (const [url, page] of await pagesOf(SAMPLE_BOOK)) {
    expect(page, url).not.toMatch(/own-copy|"robots"|publish-note|card-mark/i);
  }
});

test('the maker’s own copy has every recipe in full, and says on its page what readers get of it, on its tile what they don’t', async () => {
  const said: Readonly<Record<string, readonly [string, string?]>> = {
    'weir-foam': ['Published: readers get the whole recipe.'],
    hush: [
      'Look only: readers see its name and its look, but no amounts. Anyone with your materials can match what they see; <code>publish: no</code> keeps it to yourself.',
      'look only',
    ],
    secret: ['Not published: readers never see it.', 'not published'],
  };
  const home = await pageOf('home', '', MAKERS_BOOK);
  for (const [id, [note, word]] of Object.entries(said)) {
    const page = await pageOf('recipe', id, MAKERS_BOOK);
    expect(page).toContain(`${note}</p></header>`);
    expect(page).toContain('<h2 id="cups">What goes in</h2>');
    const mark = word === undefined ? '' : `, <span class="publish-[a-z]+">${word}</span>`;
    expect(home).toMatch(
      new RegExp(
        `href="\\./colours/${id}/"(?:(?!</a>)[\\s\\S])*</a><p class="tile-note">(?:<svg[\\s\\S]*?</svg>)?<span>[^<]*${mark}</span></p>`,
      ),
    );
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
  expect(await pageOf('material', 'ash', book)).toContain(only);
  expect(await pageOf('mold', 'leaf', book)).toContain(only);
  expect(await pageOf('target', 'post', book)).toContain('Not published: readers never see it.');
  expect(await pageOf('material', 'peat', book)).not.toContain(only);
  expect(await pageOf('target', 'rack', book)).toContain('Published: readers see this page.');
});

test('a card of what is not published says so on every side, and leads to no address that is not there', async () => {
  for (const kind of ['recipe-card', 'recipe-card-4x6']) {
    const secret = await pageOf(kind, 'secret', MAKERS_BOOK);
    const sides = secret.match(/<article class="card /g)!.length;
    expect(secret.match(/<b class="card-mark">Not published<\/b>/g)).toHaveLength(sides);
    expect(secret).not.toContain('class="qr"');
    const look = await pageOf(kind, 'hush', MAKERS_BOOK);
    expect(look).toContain('<b class="card-mark">Look only</b>');
    expect(look).toContain('class="qr"');
    expect(await pageOf(kind, 'weir-foam', MAKERS_BOOK)).not.toContain('card-mark');
  }
});

test('readers are told what a batch takes in all, and neither costs nor a filter by what is left', async () => {
  const [shared, mine] = [
    await pageOf('recipe', 'weir-foam', SAMPLE_BOOK),
    await pageOf('recipe', 'weir-foam', MAKERS_BOOK),
  ];
  expect(shared).toContain('<h2 id="costs">What it takes in all</h2>');
  expect(shared).toMatch(/<th scope="col">Material<\/th><th scope="col">Takes<\/th><\/tr>/);
  expect(mine).toContain('<h2 id="costs">Cost and shopping</h2>');
  expect(await pageOf('match', '', SAMPLE_BOOK)).not.toContain('name="inStock"');
  expect(await pageOf('match', '', MAKERS_BOOK)).toContain('name="inStock"');
});

test('your own page of a look-only recipe says what a look cannot keep; other pages, and those of readers, do not', async () => {
  const warning = 'Anyone with your materials can match what they see; <code>publish: no</code> keeps it to yourself.';
  expect(await pageOf('recipe', 'hush', MAKERS_BOOK)).toContain(warning);
  expect(await pageOf('recipe', 'weir-foam', MAKERS_BOOK)).not.toContain(warning);
  expect(await pageOf('recipe', 'secret', MAKERS_BOOK)).not.toContain(warning);
  expect(await pageOf('recipe', 'hush')).not.toContain(warning);
});
