import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Batch, Book } from '../../src/book/model.ts';
import { baitsFrom, plannedBatch } from '../../src/browser/planned-batch.ts';
import { batchCups, batchTakes } from '../../src/render/batch-view.ts';
import { bookIndex } from '../../src/render/book-index.ts';
import { embeddedJson } from '../../src/render/html.ts';
import {
  type PlannerData,
  plannedNames,
  plannedOnShelf,
  plannerData,
  plannerShelf,
} from '../../src/render/planner-data.ts';
import { roundingApart } from '../../src/render/recipe/rounding-apart.ts';
import { MAKERS_BOOK, pageOf, SAMPLE_BOOK } from '../render/sample-book.ts';

const asWritten = <T>(data: T): T => JSON.parse(embeddedJson(data).toString()) as T;

/** A recipe's data as a page has it: written as JSON and read again, with the shelf that all pages load. */
function pageData(id: string, book: Book = SAMPLE_BOOK): PlannerData {
  const { materials, molds } = bookIndex(book);
  const recipe = book.recipes.find((each) => each.id === id)!;
  const { recipes } = plannerData(
    { optics: book.optics, materials, molds, settings: book.settings, edition: book.edition },
    [recipe],
    (material) => material,
  );
  return plannedOnShelf(
    asWritten(recipes[0]!),
    asWritten(plannerShelf(book)),
    (material) => `../../shelf/${material}/`,
  );
}

test.each(SAMPLE_BOOK.recipes.map(({ id }) => id))(
  'plannedBatch(data, recipe, lines) of %s is the batch that the build made',
  (id) => {
    const data = pageData(id, MAKERS_BOOK);
    const { batch } = MAKERS_BOOK.recipes.find((recipe) => recipe.id === id)!;
    const planned = plannedBatch(data, data.recipes[0]!, batch.lines);
    expect(planned.lines).toEqual(batch.lines);
    expect(planned.cups.map(({ amounts, split }) => [split, amounts.map(({ text }) => text)])).toEqual(
      batch.cups.map(({ amounts, split }) => [split, amounts.map(({ text }) => text)]),
    );
    expect((planned as Batch).cost).toBeCloseTo((batch as Batch).cost, 6);
  },
);

test.each([MAKERS_BOOK, SAMPLE_BOOK])(
  'the planner writes what the page says already, edition $edition',
  async (book) => {
    const data = pageData('alder-smoke', book);
    const [recipe] = data.recipes;
    const page = await pageOf('recipe', 'alder-smoke', book);
    const batch = plannedBatch(data, recipe!, [{ mold: recipe!.mold, baits: recipe!.baits }]);
    // What rounding does to the colour stands in *How far off*.
    const names = { ...plannedNames(data, recipe!), roundingSaidElsewhere: true } as const;
    expect(page).toContain(batchCups(batch, names).toString());
    expect(page).toContain(roundingApart(batch.cups, names).toString());
    expect(page).toContain(batchTakes(batch, plannedNames(data, recipe!)).toString());
  },
);

test('plannedBatch(data, recipe, lines) needs more plastic for more baits, in proportion but for what stays in the cups', () => {
  const data = pageData('alder-smoke');
  const plastic = (baits: number): number =>
    plannedBatch(data, data.recipes[0]!, [{ mold: 'minnow-3', baits }]).cups.reduce(
      (sum, { plastics, split }) => sum + split * plastics.reduce((all, { ml }) => all + ml, 0),
      0,
    );
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 1, max: 500 }), (one, more) => {
      expect(plastic(one + more)).toBeGreaterThan(plastic(one));
    }),
    { numRuns: 25 },
  );
});

test('plannedBatch(data, recipe, lines) names what the data does not have', () => {
  const data = pageData('alder-smoke');
  expect(() => plannedBatch(data, data.recipes[0]!, [{ mold: 'no-such-mold', baits: 1 }])).toThrow(/no-such-mold/);
});

test('baitsFrom(text) takes whole numbers that a batch can have', () => {
  expect(['12', ' 7 ', '1', '100000'].map(baitsFrom)).toEqual([12, 7, 1, 100_000]);
  expect(['', '0', '-3', '1.5', 'ten', '100001', '1e9'].map(baitsFrom)).toEqual(new Array(7).fill(undefined));
});
