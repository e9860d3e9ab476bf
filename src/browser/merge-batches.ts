import type { Material } from '../book/model/shelf.ts';
import type { Batch, BatchAmounts, BatchMaterial } from '../book/model.ts';
import { defined } from '../values/defined.ts';

/** What the shopping list needs of a material. */
export type Bought = Pick<Material, 'packGrams'>;

/**
 * Several recipes' batches as one: a material that two of them take is taken from one shelf. With cost and shopping where each has them.
 *
 * Units: as in `Batch`. The cups are those of all, in order.
 */
export function mergeBatches(
  batches: readonly BatchAmounts[],
  bought: (material: string) => Bought,
): BatchAmounts | Batch {
  const materials = new Map<string, BatchAmounts['materials'][number]>();
  for (const material of batches.flatMap((batch) => batch.materials)) {
    const known = materials.get(material.material);
    materials.set(
      material.material,
      known === undefined ? material : added(known, material, bought(material.material)),
    );
  }
  const baits = batches.reduce((sum, batch) => sum + batch.baits, 0);
  const amounts: BatchAmounts = {
    lines: batches.flatMap((batch) => batch.lines),
    baits,
    cups: batches.flatMap((batch) => batch.cups),
    materials: [...materials.values()],
  };
  const costed = batches.filter((batch): batch is Batch => 'cost' in batch);
  if (costed.length < batches.length) return amounts;
  const cost = costed.reduce((sum, batch) => sum + batch.cost, 0);
  return {
    ...amounts,
    cost,
    costPerBait: baits > 0 ? cost / baits : 0,
    unpriced: [...new Set(costed.flatMap((batch) => batch.unpriced))],
  };
}

type Taken = BatchAmounts['materials'][number] | BatchMaterial;

function added(one: Taken, other: Taken, { packGrams }: Bought): Taken {
  const sum = { material: one.material, grams: one.grams + other.grams, ml: one.ml + other.ml };
  if (!('shortGrams' in one && 'shortGrams' in other)) return sum;
  const shortGrams = one.stockGrams === undefined ? 0 : Math.max(0, sum.grams - one.stockGrams);
  return {
    ...sum,
    ...(one.cost === undefined || other.cost === undefined ? {} : { cost: one.cost + other.cost }),
    ...defined({ stockGrams: one.stockGrams }),
    shortGrams,
    packs: shortGrams > 0 && packGrams !== undefined ? Math.ceil(shortGrams / packGrams) : 0,
  };
}
