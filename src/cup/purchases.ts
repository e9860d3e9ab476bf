import { defined } from '../values/defined.ts';
import type { BatchCup, BatchMaterial, BatchStock } from './batch.ts';
import { bottleGrams } from './cut-measures.ts';

/** What the cups of a batch take of each material, and what must be bought for it. Of a cut that is its two parts. */
export function purchases(cups: readonly BatchCup[], stock: (material: string) => BatchStock): BatchMaterial[] {
  const needed = new Map<string, number>();
  const need = (material: string, grams: number): void =>
    void needed.set(material, (needed.get(material) ?? 0) + grams);
  for (const cup of cups) {
    for (const { material, ml } of cup.plastics) need(material, ml * stock(material).gramsPerMl * cup.split);
    for (const amount of cup.amounts) {
      const { material, cut, measuredGrams } = amount;
      const bottle = bottleGrams(amount, measuredGrams);
      need(material, bottle * cup.split);
      if (cut) need(cut.with, (measuredGrams - bottle) * cup.split);
    }
  }
  return [...needed].map(([material, grams]) => {
    const { gramsPerMl, price, packGrams, stockGrams } = stock(material);
    const shortGrams = stockGrams === undefined ? 0 : Math.max(0, grams - stockGrams);
    return {
      material,
      grams,
      ml: grams / gramsPerMl,
      ...(price === undefined || packGrams === undefined ? {} : { cost: (grams / packGrams) * price }),
      ...defined({ stockGrams }),
      shortGrams,
      packs: shortGrams > 0 && packGrams !== undefined ? Math.ceil(shortGrams / packGrams) : 0,
    };
  });
}
