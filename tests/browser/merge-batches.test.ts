import { expect, test } from 'vitest';
import type { Batch } from '../../src/book/model.ts';
import { mergeBatches } from '../../src/browser/merge-batches.ts';

/** Of batches with costs. */
const merged = (...asked: Parameters<typeof mergeBatches>): Batch => mergeBatches(...asked) as Batch;

const batch = (grams: number, cost: number | undefined, stockGrams: number | undefined): Batch => ({
  lines: [{ mold: 'minnow-3', baits: 10, shots: 5 }],
  baits: 10,
  cups: [],
  materials: [
    {
      material: 'peat',
      grams,
      ml: grams,
      shortGrams: stockGrams === undefined ? 0 : Math.max(0, grams - stockGrams),
      packs: 0,
      ...(cost === undefined ? {} : { cost }),
      ...(stockGrams === undefined ? {} : { stockGrams }),
    },
  ],
  cost: cost ?? 0,
  costPerBait: (cost ?? 0) / 10,
  unpriced: cost === undefined ? ['peat'] : [],
});

test('mergeBatches(batches, bought) takes what two batches need from one shelf', () => {
  const all = merged([batch(6, 3, 10), batch(7, 3.5, 10)], () => ({ packGrams: 2 }));
  expect(all.materials).toEqual([
    { material: 'peat', grams: 13, ml: 13, cost: 6.5, stockGrams: 10, shortGrams: 3, packs: 2 },
  ]);
  expect([all.baits, all.cost, all.costPerBait]).toEqual([20, 6.5, 0.325]);
});

test('mergeBatches(batches, bought) leaves a price out that one of them does not know', () => {
  const all = merged([batch(6, undefined, undefined), batch(7, undefined, undefined)], () => ({}));
  expect(all.materials[0]).toEqual({ material: 'peat', grams: 13, ml: 13, shortGrams: 0, packs: 0 });
  expect(all.unpriced).toEqual(['peat']);
});

test('mergeBatches(batches, bought) of none is empty and costs nothing', () => {
  expect(mergeBatches([], () => ({}))).toEqual({
    lines: [],
    baits: 0,
    cups: [],
    materials: [],
    cost: 0,
    costPerBait: 0,
    unpriced: [],
  });
});

test('mergeBatches(batches, bought) of batches without costs has the amounts alone', () => {
  const { lines, baits, cups, materials } = batch(6, undefined, undefined);
  const amounts = {
    lines,
    baits,
    cups,
    materials: materials.map(({ material, grams, ml }) => ({ material, grams, ml })),
  };
  expect(mergeBatches([amounts, amounts], () => ({}))).toEqual({
    lines: [...lines, ...lines],
    baits: 20,
    cups: [],
    materials: [{ material: 'peat', grams: 12, ml: 12 }],
  });
});
