import { expect, test } from 'vitest';
import { makersBook } from '../../src/book/publish/makers-book.ts';
import { FILES } from '../../src/render/data-files.ts';
import { plannerData } from '../../src/render/planner-data.ts';
import { DEMO_BOOK, WHOLE_DEMO_BOOK } from './demo-book.ts';

const recipeData = FILES.find(({ kind }) => kind === 'recipe-data')!;

test.each([
  ['shared', DEMO_BOOK],
  ['maker’s', makersBook(WHOLE_DEMO_BOOK)],
] as const)('a recipe as data has all that a batch of it is planned with, in the %s edition', (_, book) => {
  const molds = new Map(book.molds.map((mold) => [mold.id, mold]));
  const cuts = new Set<string>();
  for (const id of recipeData.items(book)) {
    const { recipe, materials, settings, edition } = JSON.parse(recipeData.text(book, id, {}));
    const shop = { materials: new Map(materials.map((each: { id: string }) => [each.id, each])), molds };
    const planned = plannerData({ ...shop, settings, edition } as never, [recipe], (material) => material);
    for (const material of planned.materials) for (const cut of material.cuts ?? []) cuts.add(cut.id);
  }
  expect([...cuts]).toEqual(['mill-blue-cut']);
});
