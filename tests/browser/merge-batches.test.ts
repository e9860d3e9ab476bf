import { expect, test } from 'vitest';
import type { Batch } from '../../src/book/model.ts';
import { mergeBatches } from '../../src/browser/merge-batches.ts';

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
  const merged = mergeBatches([batch(6, 3, 10), batch(7, 3.5, 10)], () => ({ packGrams: 2 }));
  expect(merged.materials).toEqual([
    { material: 'peat', grams: 13, ml: 13, cost: 6.5, stockGrams: 10, shortGrams: 3, packs: 2 },
  ]);
  expect([merged.baits, merged.cost, merged.costPerBait]).toEqual([20, 6.5, 0.325]);
});

test('mergeBatches(batches, bought) leaves a price out that one of them does not know', () => {
  const merged = mergeBatches([batch(6, undefined, undefined), batch(7, undefined, undefined)], () => ({}));
  expect(merged.materials[0]).toEqual({ material: 'peat', grams: 13, ml: 13, shortGrams: 0, packs: 0 });
  expect(merged.unpriced).toEqual(['peat']);
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
