import { expect, test } from 'vitest';
import type { Batch, Book } from '../../src/book/model.ts';
import { dayText } from '../../src/render/day-text.ts';
import { paths } from '../../src/render/links.ts';
import { PAGES, searchRecords } from '../../src/render/pages.ts';
import { DEMO_BOOK } from './demo-book.ts';
import { MAKERS_BOOK, SAMPLE_BOOK } from './sample-book.ts';

const records = searchRecords(SAMPLE_BOOK);
const recordOf = (url: string) => records.find((record) => record.url === url)!;

test('searchRecords(book) leads to pages that are there', () => {
  const urls = new Set(PAGES.flatMap((kind) => kind.items(SAMPLE_BOOK).map((item) => kind.url(item))));
  expect(records.map(({ url }) => urls.has(url))).toEqual(records.map(() => true));
});

test('searchRecords(book) knows a colour by its materials, flake, pattern, notes and rounds', () => {
  const record = recordOf(paths.recipe('alder-smoke'));
  expect(record.filters.pattern).toEqual(['laminate']);
  expect(record.filters.material).toContain('Copper hexagon');
  expect(record.filters['flake-size']).toEqual(['0.008 in', '0.040 in']);
  expect(recordOf(paths.recipe('weir-foam')).content).toMatch(/Foam below the weir.*you can see through it/);
});

test('searchRecords(book) calls clear and see-through colours translucent', () => {
  const content = (opacity: string): readonly string[] =>
    searchRecords(DEMO_BOOK).flatMap((record) => (record.filters.opacity?.[0] === opacity ? [record.content] : []));
  for (const opacity of ['clear', 'see-through']) {
    expect(content(opacity).length).toBeGreaterThan(0);
    for (const each of content(opacity)) expect(each).toContain('translucent');
  }
  expect(content('opaque').join()).not.toContain('translucent');
});

test('searchRecords(book) tells of a look no more than its look', () => {
  const record = recordOf(paths.recipe('hush'));
  expect(Object.keys(record.filters).sort()).toEqual(['hue', 'kind', 'lightness', 'opacity', 'pattern']);
  expect(JSON.stringify(record)).not.toMatch(/Lamp|Peat/);
});

test('searchRecords(book) holds only texts, and no filter without a value', () => {
  for (const { meta, sort, filters } of records) {
    for (const value of [...Object.values(meta), ...Object.values(sort)]) expect(typeof value).toBe('string');
    for (const values of Object.values(filters)) expect(values.length).toBeGreaterThan(0);
  }
});

test('searchRecords(book) knows what the shelf has enough for where it is the maker’s, and tells readers nothing of it', () => {
  const stock = (book: Book) => searchRecords(book).flatMap(({ url, filters }) => (filters.stock ? [url] : []));
  const enough = MAKERS_BOOK.recipes.filter(({ batch }) =>
    (batch as Batch).materials.every(({ shortGrams }) => shortGrams === 0),
  );
  expect(MAKERS_BOOK.materials.some(({ stockGrams }) => stockGrams !== undefined)).toBe(true);
  expect(enough).not.toEqual([]);
  expect(stock(MAKERS_BOOK)).toEqual(enough.map(({ id }) => paths.recipe(id)));
  expect(stock(SAMPLE_BOOK)).toEqual([]);
  const none = MAKERS_BOOK.materials.map(({ stockGrams: _, ...material }) => material);
  expect(stock({ ...MAKERS_BOOK, materials: none })).toEqual([]);
});

test('searchRecords(book) has the day of a recipe in words and in figures', () => {
  const recipe = SAMPLE_BOOK.recipes.find(({ made }) => made !== undefined)!;
  expect(recordOf(paths.recipe(recipe.id)).content).toContain(`${dayText(recipe.made!)}. ${recipe.made}`);
});
