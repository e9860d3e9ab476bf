import fc from 'fast-check';
import jsqr from 'jsqr';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { blockHeight, room, textWidthOf } from '../../src/render/card/block-height.ts';
import type { CardContent, CardRow } from '../../src/render/card/content.ts';
import { cardContent } from '../../src/render/card/content.ts';
import { cardsOf, duplexSheets } from '../../src/render/card/duplex-sheets.ts';
import { CARD_FORMATS, fitCard } from '../../src/render/card/fit.ts';
import { qrCode } from '../../src/render/card/qr.ts';
import { lineCount, textWidth } from '../../src/render/card/text-lines.ts';
import { allByRole, byRole, wordsIn } from '../page-dom.ts';
import { WHOLE_DEMO_BOOK } from './demo-book.ts';
import { kindOf, readPage, SAMPLE_BOOK } from './sample-book.ts';

const recipe = SAMPLE_BOOK.recipes.find(({ id }) => id === 'alder-smoke')!;
const content = cardContent(SAMPLE_BOOK, recipe);

const row = (name: string): CardRow => ({
  measure: '1 tsp + 1/2 tsp + 1 pinch',
  weighs: '= 12.01\u00a0g',
  name,
  weight: 'or\u00a012.34\u00a0g',
  note: 'by scale: 1/8 tsp would be 2.4 times too much',
  plastic: false,
});

/** A card with so many cups and rows. */
function crowded(cups: number, rows: number, name: string): CardContent {
  return {
    ...content,
    title: name,
    cups: Array.from({ length: cups }, (_, index) => ({
      name: `${name} ${index}`,
      share: '25 % of the bait',
      split: '3 equal cups, each:',
      hex: '#808080',
      rows: Array.from({ length: rows }, () => row(name)),
      notes: ['What rounding does to the colour: you won’t see it (ΔE 0.6).'],
    })),
  };
}

test('cardContent(book, recipe) states every plastic and material of every cup', () => {
  expect(content.cups.map(({ name, rows }) => [name, rows.length])).toEqual(
    recipe.batch.cups.map(({ name, plastics, amounts }) => [name, plastics.length + amounts.length]),
  );
  expect(content.address).toBe('https://book.example/deep/colours/alder-smoke/?baits=24&mold=minnow-3');
  expect(content.heat[0]).toBe('Never above 182 °C (Copper hexagon sets the limit).');
  expect(content.cautions[0]).toBe('Read the supplier’s safety data sheet first.');
  expect(content.cautions.at(-1)).toMatch(/^Burnt\? Don’t pull the plastic off\. .*20 minutes/);
});

test('two sides of A6 have room for nearly every recipe of the demo book, in the one size of type', () => {
  const many = WHOLE_DEMO_BOOK.recipes.filter(
    (each) => fitCard(cardContent(WHOLE_DEMO_BOOK, each), CARD_FORMATS.a6).sides.length > 2,
  );
  expect(many.map(({ id }) => id)).toEqual(['otter-steps', 'zibeline-tuesday']);
});

test('cardContent(book, recipe) says what the scale has measured, and which drops are better weighed', () => {
  const [cup, ...others] = recipe.batch.cups;
  const [amount] = cup!.amounts;
  const drops = { ...amount!, text: '2 drops', tool: 'drops' as const, measuredGrams: amount!.grams };
  const amounts = [
    { ...drops, dropDeltaE: 3.5, betterWeighed: true },
    { ...drops, text: '0.17 g', tool: 'scale' as const },
  ];
  const batch = { ...recipe.batch, cups: [{ ...cup!, amounts, together: false }, ...others] };
  const rows = cardContent(SAMPLE_BOOK, { ...recipe, batch }).cups[0]!.rows.filter(({ plastic }) => !plastic);
  expect(rows.map(({ note }) => note?.replaceAll('\u00a0', ' '))).toEqual([
    'better weighed; about 6300 flakes a bait',
    'about 6300 flakes a bait',
  ]);
  expect(rows.at(-1)!.weight).toBe('by\u00a0scale');
});

test('cardContent(book, recipe) offers no weight that the scale does not show, and says what it truly is', () => {
  const [cup, ...others] = recipe.batch.cups;
  const { byWeight: _, ...amount } = cup!.amounts[0]!;
  const spooned = { ...amount, text: '1/4 tsp', tool: 'spoons' as const, grams: 0.7089, measuredGrams: 0.5 };
  const amounts = [
    { ...spooned, offScale: 'too-little' as const },
    { ...spooned, offScale: 'too-little' as const, measuredGrams: 0.7 },
    { ...spooned, grams: 0.84, byWeight: '0.03 oz (0.85 g)' },
    spooned,
  ];
  const batch = { ...recipe.batch, cups: [{ ...cup!, amounts, together: false }, ...others] };
  const rows = cardContent(SAMPLE_BOOK, { ...recipe, batch }).cups[0]!.rows.filter(({ plastic }) => !plastic);
  expect(rows.map(({ weight }) => weight)).toEqual([
    'exactly 0.71\u00a0g',
    undefined,
    'or\u00a00.03\u00a0oz (0.85\u00a0g)',
    undefined,
  ]);
});

test('a measure breaks after its plus signs and nowhere else', () => {
  const measures = content.cups.flatMap(({ rows }) => rows.map(({ measure }) => measure));
  expect(measures.length).toBeGreaterThan(0);
  for (const measure of measures)
    expect(
      measure
        .split(' ')
        .slice(0, -1)
        .every((part) => part.endsWith('+')),
    ).toBe(true);
  expect(lineCount('1/8\u00a0tsp\u00a0+ 1\u00a0pinch', 5, 26)).toBe(2);
});

test('fitCard(content, format) loses no row and no part, whatever there is to say', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 4 }),
      fc.integer({ min: 1, max: 14 }),
      fc.constantFrom('Peat', 'A material with quite a long name .040', 'Unbreakable'.repeat(5)),
      fc.constantFrom(...Object.values(CARD_FORMATS)),
      (cups, rows, name, format) => {
        const { sides } = fitCard(crowded(cups, rows, name), format);
        const blocks = sides.flat();
        const shown = blocks.flatMap((block) => (block.kind === 'cup' ? block.rows : []));
        expect(shown.length).toBe(cups * rows);
        expect(blocks.flatMap((block) => (block.kind === 'cup' ? block.notes : [])).length).toBe(cups);
        const rest = blocks.flatMap(({ kind }) => (kind === 'cup' ? [] : [kind]));
        expect([...rest].sort()).toEqual(['cautions', 'heat', 'steps']);
        expect(blocks[0]!.kind).toBe('cup');
        for (const own of sides) {
          const names = own.flatMap((block) => (block.kind === 'cup' ? [block.cup.name] : []));
          expect(new Set(names).size).toBe(names.length);
        }
      },
    ),
  );
});

test('a side holds no more than it has room for, unless one row or one step alone is higher', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 4 }),
      fc.integer({ min: 1, max: 14 }),
      fc.integer({ min: 1, max: 60 }),
      fc.constantFrom('Peat', 'A material with quite a long name .040'),
      fc.constantFrom(...Object.values(CARD_FORMATS)),
      (cups, rows, steps, name, format) => {
        const many = {
          ...crowded(cups, rows, name),
          steps: Array.from({ length: steps }, () => [`${name}. `.repeat(4)]),
        };
        const { sides, spare } = fitCard(many, format);
        const width = textWidthOf(format.widthMm);
        for (const [index, side] of sides.entries()) {
          const used = side.reduce((sum, block) => sum + blockHeight(block, many, width), 0);
          expect(used).toBeLessThanOrEqual(room(many, format, index === 0));
        }
        expect(spare).toBeGreaterThanOrEqual(0);
        const shown = sides.flatMap((side) => side.flatMap((block) => (block.kind === 'steps' ? block.steps : [])));
        expect(shown).toEqual(many.steps);
      },
    ),
  );
});

test('fitCard(two long cups) needs two sides: the cautions stand below the first cup where there is room', () => {
  const short: CardRow = { measure: '12 drops', name: 'Peat', weight: 'or\u00a00.58\u00a0g', plastic: false };
  const long: CardRow = { ...short, measure: '1/2\u00a0tsp\u00a0+ 1/4\u00a0tsp\u00a0+ 1\u00a0smidgen' };
  const [cup] = content.cups;
  const cups = [Array.from({ length: 5 }, () => short), [...Array.from({ length: 4 }, () => short), long, long, long]];
  const twoCups = {
    ...content,
    title: 'Wet Chapel',
    heat: ['Never above 182 °C. Pour at 160 to 175 °C.'],
    cups: cups.map((rows, index) => ({ ...cup!, name: `cup ${index}`, rows, notes: [] })),
  };
  const { sides } = fitCard(twoCups, CARD_FORMATS.a6);
  expect(sides.map((blocks) => blocks.map(({ kind }) => kind))).toEqual([
    ['cup', 'cautions'],
    ['cup', 'heat', 'steps'],
  ]);
});

test('every side has name, batch and maximum temperature in its head, and the same words at its foot', async () => {
  for (const kind of ['recipe-card', 'recipe-card-4x6'])
    for (const { id, title } of SAMPLE_BOOK.recipes) {
      const sides = allByRole(await readPage(kind, id), 'article');
      expect(sides.length).toBeGreaterThan(0);
      for (const [index, side] of sides.entries()) {
        const head = wordsIn(side.querySelector('header')!);
        expect(head).toContain(title);
        expect(head).toMatch(/\d+ baits? of .* Poured Lot Never above 18[25] °C$/);
        expect(wordsIn(side)).toMatch(
          new RegExp(`Hot vinyl burns: goggles, gloves, hood\\. Side ${index + 1} of ${sides.length}$`),
        );
      }
    }
});

test('a recipe without a known maximum says so in the same place', () => {
  const cups = recipe.cups.map(({ limit: _, ...cup }) => cup);
  expect(cardContent(SAMPLE_BOOK, { ...recipe, cups }).limit).toEqual({
    words: 'No maximum on file: read the data sheets.',
  });
});

test('a page of a card says how many cards its sides are on, and how they are printed', async () => {
  const told = new Map<number, string>();
  for (const kind of ['recipe-card', 'recipe-card-4x6'])
    for (const { id } of SAMPLE_BOOK.recipes) {
      const page = await readPage(kind, id);
      told.set(allByRole(page, 'article').length, /\d sides on [^.]+/.exec(wordsIn(page))?.[0] ?? 'one side');
    }
  expect(told.get(2)).toBe('2 sides on one card: print on both sides, flipped on the long edge');
  expect(told.get(3)).toBe('3 sides on 2 cards: print on both sides, flipped on the long edge');
});

test('duplexSheets(cards) keeps the cards of a recipe on one sheet, and every back behind its front', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 12 }), { maxLength: 30 }), (counts) => {
      const recipes = counts.map((count, recipe) => Array.from({ length: count }, (_, side) => `${recipe}.${side}`));
      const sheets = duplexSheets(recipes.map(cardsOf));
      // Turned on the long edge: what lay left lies right.
      const turned = ([a, b, c, d]: readonly (string | undefined)[]): readonly (string | undefined)[] => [b, a, d, c];
      const found = sheets.flatMap(({ fronts, backs }) =>
        fronts.flatMap((front, place) => (front === undefined ? [] : [[front, turned(backs)[place]]])),
      );
      const sides = recipes.flatMap((each) => cardsOf(each).map(({ front, back }) => [front, back]));
      expect([...found].sort()).toEqual([...sides].sort());
      for (const [recipe, count] of counts.entries()) {
        const on = sheets.filter(({ fronts }) => fronts.some((front) => front?.startsWith(`${recipe}.`)));
        expect(on.length).toBe(Math.max(1, Math.ceil(Math.ceil(count / 2) / 4)));
      }
    }),
  );
});

test('fitCard(content, format) carries no single row over to the next side', () => {
  const plain: CardRow = { measure: '12 drops', name: 'Peat', weight: 'or\u00a00.58\u00a0g', plastic: false };
  const [cup] = content.cups;
  for (const format of Object.values(CARD_FORMATS)) {
    for (let rows = 2; rows <= 12; rows++) {
      const one = { ...content, cups: [{ ...cup!, rows: Array.from({ length: rows }, () => plain), notes: [] }] };
      const pieces = fitCard(one, format).sides.flatMap((blocks) =>
        blocks.flatMap((block) => (block.kind === 'cup' ? [block.rows.length] : [])),
      );
      expect({ format: format.name, pieces, stray: pieces.length > 1 && pieces.at(-1) === 1 }).toMatchObject({
        stray: false,
      });
    }
  }
});

test('qrCode(text, label) is read back by another library', async () => {
  const text = 'https://book.example/deep/colours/alder-smoke/';
  const svg = qrCode(text, 'x')
    .toString()
    .replace('<svg ', '<svg xmlns="http://www.w3.org/2000/svg" width="300" height="300" ');
  const { data, info } = await sharp(Buffer.from(svg)).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  expect(jsqr(new Uint8ClampedArray(data), info.width, info.height)?.data).toBe(text);
});

test('a book without an address has cards without a code, and says so', async () => {
  const { address: _, ...rest } = SAMPLE_BOOK;
  const page = await readPage('recipe-card', 'alder-smoke', rest);
  expect(allByRole(page, 'img', { name: /^QR/ })).toEqual([]);
  expect(wordsIn(page)).toContain('No QR code');
});

test('lineCount(text, size, width) breaks between words, and words that are too long', () => {
  expect(lineCount('', 4, 40)).toBe(1);
  expect(lineCount('one', 4, 40)).toBe(1);
  expect(lineCount('one two three four five six seven eight', 4, 40)).toBe(
    Math.ceil(textWidth('one two three four five six seven eight') / 10),
  );
  expect(lineCount('x'.repeat(100), 4, 40)).toBeGreaterThanOrEqual(5);
  expect(lineCount('one two\u00a0three four', 4, 22)).toBe(3);
});

/** A book with so many copies of a recipe, R1 to R… */
const bookWith = (count: number): typeof SAMPLE_BOOK => ({
  ...SAMPLE_BOOK,
  recipes: Array.from({ length: count }, (_, index) => ({ ...recipe, id: `r${index + 1}`, title: `R${index + 1}` })),
});

test('all cards of a small book are on one page of sheets', () => {
  const book = bookWith(48);
  expect(kindOf('cards-a4').items(book)).toEqual(['']);
  expect(kindOf('cards-a4').url('')).toBe('cards/a4/');
});

test('the cards of a large book are on pages of sheets, each once, with links between them', async () => {
  const book = bookWith(100);
  for (const [kind, path] of [
    ['cards-a4', 'cards/a4/'],
    ['cards-letter', 'cards/letter/'],
  ] as const) {
    const { items, url } = kindOf(kind);
    expect(items(book).map(url)).toEqual([path, `${path}2/`, `${path}3/`]);
    const pages = await Promise.all(items(book).map((item) => readPage(kind, item, book)));
    const shown = pages.map((page) => [
      ...new Set([...page.querySelectorAll('[data-card]')].map((card) => card.getAttribute('data-card'))),
    ]);
    expect(shown.map(({ length }) => length)).toEqual([48, 48, 4]);
    expect(shown.flat()).toEqual(book.recipes.map(({ id }) => id));
    const onward = pages.map((page) =>
      allByRole(page, 'link', { name: /page$/ }).map((each) => [wordsIn(each), each.getAttribute('href')]),
    );
    expect(onward).toEqual([
      [['Next page', `../../${path}2/`]],
      [
        ['Previous page', `../../../${path}`],
        ['Next page', `../../../${path}3/`],
      ],
      [['Previous page', `../../../${path}2/`]],
    ]);
    expect(wordsIn(byRole(pages[1]!, 'heading', { name: /^Cards on/ }))).toMatch(/, page 2 of 3$/);
  }
});

test('Cards leads to every page of sheets, each by its first and its last recipe', async () => {
  const links = allByRole(await readPage('cards', '', bookWith(100)), 'link', { name: /^Cards on A4/ });
  expect(links.map((each) => [wordsIn(each), each.getAttribute('href')])).toEqual([
    ['R1 to R48', '../cards/a4/'],
    ['R49 to R96', '../cards/a4/2/'],
    ['R97 to R100', '../cards/a4/3/'],
  ]);
});
