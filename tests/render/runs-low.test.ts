import { expect, test } from 'vitest';
import { runsLow } from '../../src/render/material/runs-low.ts';
import { allByRole, byRole, wordsIn } from '../page-dom.ts';
import { MAKERS_BOOK, readPage, SAMPLE_BOOK } from './sample-book.ts';

/** Grams of a material that the colour which takes most of it takes for its batch. */
const most = (id: string): number =>
  Math.max(
    ...MAKERS_BOOK.recipes.map(({ batch }) => batch.materials.find(({ material }) => material === id)?.grams ?? 0),
  );

/** The maker's book with so many batches left of each of some materials, and no other stock counted. */
const withLeft = (batches: Readonly<Record<string, number>>) => ({
  ...MAKERS_BOOK,
  materials: MAKERS_BOOK.materials.map(({ stockGrams: _, ...material }) => {
    const left = batches[material.id];
    return left === undefined ? material : { ...material, stockGrams: left * most(material.id) };
  }),
});

const [one, other, third] = MAKERS_BOOK.materials.filter(({ id }) => most(id) > 0).map(({ id }) => id);

test('runsLow(book) has what is enough for fewer than two batches, the least first', () => {
  const low = runsLow(withLeft({ [one!]: 1.9, [other!]: 0, [third!]: 2.1 }));
  expect(low.map(({ material }) => material.id)).toEqual([other, one]);
  expect(low.map(({ batches }) => Number(batches.toFixed(3)))).toEqual([0, 1.9]);
});

test('the shelf begins with what runs low, and marks it again in its place; readers are told of no stock', async () => {
  const page = await readPage('shelf', '', withLeft({ [one!]: 1.5, [other!]: 0 }));
  const section = byRole(page, 'region', { name: /^Runs low/ });
  expect(allByRole(page, 'region')[0]).toBe(section);
  const [first, second] = allByRole(section, 'listitem').map(wordsIn);
  expect(first).toMatch(/none left, not enough for a batch of /);
  expect(second).toMatch(/ left, enough for one batch of /);
  expect(page.querySelectorAll('.shelf .shortage')).toHaveLength(2);
  expect(allByRole(await readPage('shelf', '', SAMPLE_BOOK), 'region', { name: /^Runs low/ })).toEqual([]);
});
