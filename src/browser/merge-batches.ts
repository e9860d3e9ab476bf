import type { Batch, BatchMaterial, Material } from '../book/model.ts';

/** What the shopping list needs of a material. */
export type Bought = Pick<Material, 'packGrams'>;

/**
 * Several recipes' batches as one, for cost and shopping: a material that two of them take is taken from one shelf.
 *
 * Units: as in `Batch`. The cups are those of all, in order.
 */
export function mergeBatches(batches: readonly Batch[], bought: (material: string) => Bought): Batch {
  const materials = new Map<string, BatchMaterial>();
  for (const material of batches.flatMap((batch) => batch.materials)) {
    const known = materials.get(material.material);
    materials.set(
      material.material,
      known === undefined ? material : added(known, material, bought(material.material)),
    );
  }
  const cost = batches.reduce((sum, batch) => sum + batch.cost, 0);
  const baits = batches.reduce((sum, batch) => sum + batch.baits, 0);
  return {
    lines: batches.flatMap((batch) => batch.lines),
    baits,
    cups: batches.flatMap((batch) => batch.cups),
    materials: [...materials.values()],
    cost,
    costPerBait: baits > 0 ? cost / baits : 0,
    unpriced: [...new Set(batches.flatMap((batch) => batch.unpriced))],
  };
}

function added(one: BatchMaterial, other: BatchMaterial, { packGrams }: Bought): BatchMaterial {
  const grams = one.grams + other.grams;
  const shortGrams = one.stockGrams === undefined ? 0 : Math.max(0, grams - one.stockGrams);
  return {
    material: one.material,
    grams,
    ml: one.ml + other.ml,
    ...(one.cost === undefined || other.cost === undefined ? {} : { cost: one.cost + other.cost }),
    ...(one.stockGrams === undefined ? {} : { stockGrams: one.stockGrams }),
    shortGrams,
    packs: shortGrams > 0 && packGrams !== undefined ? Math.ceil(shortGrams / packGrams) : 0,
  };
}
