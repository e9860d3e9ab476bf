import { expect, test } from 'vitest';
import { firstRecipeFor, substitutesFor } from '../../src/book/match/ask-matching.ts';
import type { Batch } from '../../src/book/model.ts';
import { bookWith, file, recipeOf } from './sample.ts';

const colorant = (title: string, colour: string, stock: string): string =>
  file(`title: ${title}\n${stock}\nlook: { kind: pigment, colour: "${colour}", dose: 12 drops per 100 ml }`);

/** The example book, whose peat has this stock, with a colorant near to it and a target of its colour. */
const stocked = (stock: string): ReturnType<typeof bookWith> =>
  bookWith({
    'shelf/colorants/peat.md': colorant('Peat', '#5b4327', `price: 6\npack: 1 fl oz\n${stock}`),
    'shelf/colorants/bark.md': colorant('Bark', '#5a4429', stock),
    'targets/elver.md': file('title: Elver\nmold: minnow\nover-white: "#5b4327"\nover-black: "#574025"'),
  });
const ask = { most: 2, inStock: true, plasticMl: 120 };

test.each(['stock: 0', 'stock: 0 fl oz', 'stock: 0 ml', 'stock: 0 g'])('%s means run out', (stock) => {
  const book = stocked(stock);
  expect(book.materials.find(({ id }) => id === 'peat')).toMatchObject({ stockGrams: 0, byVolume: true });
  const { batch, cups } = recipeOf(book, 'smoke');
  const bought = (batch as Batch).materials.find(({ material }) => material === 'peat')!;
  expect(bought).toMatchObject({ stockGrams: 0, shortGrams: bought.grams, packs: 1 });
  const [first] = firstRecipeFor(book, book.targets[0]!, ask);
  expect(first!.recipe.leftOut).toContainEqual({ material: 'peat', why: 'used-up' });
  expect(JSON.stringify(first!.recipe.proposals)).not.toContain('peat');
  const instead = (inStock: boolean): ReturnType<typeof substitutesFor> =>
    substitutesFor(book, recipeOf(book, 'smoke'), cups[0]!, 'peat', { inStock });
  expect(JSON.stringify(instead(false))).toContain('bark');
  expect(instead(true)).toMatchObject({ swaps: [], recipes: [] });
  expect(instead(true).leftOut).toContainEqual({ material: 'bark', why: 'used-up' });
});

test('a material without `stock` counts as being there', () => {
  const book = stocked('highest: 190 °C');
  expect(book.materials.find(({ id }) => id === 'peat')).not.toHaveProperty('stockGrams');
  const [first] = firstRecipeFor(book, book.targets[0]!, ask);
  expect(JSON.stringify(first!.recipe.proposals)).toMatch(/peat|bark/);
  expect((recipeOf(book, 'smoke').batch as Batch).materials.every(({ shortGrams }) => shortGrams === 0)).toBe(true);
});

test.each([
  ['200 ml', 80],
  ['240 ml', undefined],
])(
  'of %s of plastic the second side of a bait gets what the first leaves, though each was seen by itself',
  (stock, leftMl) => {
    const book = bookWith({
      'shelf/plastics/supple.md': file(`title: Supple\nprice: 18\npack: 1 l\nstock: ${stock}`),
      'targets/elver.md': file(
        'title: Elver\nmold: minnow\nplastic: supple\napart: true\nparts:\n  back: { over-white: "#5b4327", over-black: "#574025" }\n  belly: { over-white: "#8a6a44", over-black: "#5d4c36" }',
      ),
    });
    const [back, belly] = firstRecipeFor(book, book.targets[0]!, ask);
    expect(back!.recipe.proposals).not.toEqual([]);
    if (leftMl === undefined) expect(belly!.recipe.proposals).not.toEqual([]);
    else expect(belly!.recipe.advice).toMatchObject({ because: 'short-of-plastic', askedMl: 120, leftMl });
  },
);
