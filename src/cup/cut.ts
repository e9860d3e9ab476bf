import { amountOf, type CupState, type PartStep } from './ledger.ts';

/**
 * A dilution of a bottle: so much of it, let down for doses that are too small to measure. It is nothing of its own in a cup: what goes in
 * is its two parts.
 */
export interface Cut {
  readonly id: string;
  readonly title: string;
  /** The bottle. */
  readonly of: string;
  /** What it is cut with. */
  readonly with: string;
  /** One part of the bottle in so many parts by volume, in all. */
  readonly oneIn: number;
  /** What a millilitre and a drop of it weigh, g. */
  readonly gramsPerMl: number;
  readonly gramsPerDrop: number;
  /** g of the bottle in a gram; the rest is what it is cut with. */
  readonly bottlePerGram: number;
  /** ml of the plastic in a gram, where that is what it is cut with. */
  readonly plasticPerGram?: number;
}

/** Two liquids by volume: densities in g/ml, as volumes simply add up. */
export function dilution(
  bottle: number,
  diluent: number,
  oneIn: number,
): { readonly gramsPerMl: number; readonly bottlePerGram: number; readonly diluentMlPerGram: number } {
  const gramsPerMl = (bottle + (oneIn - 1) * diluent) / oneIn;
  return {
    gramsPerMl,
    bottlePerGram: bottle / (oneIn * gramsPerMl),
    diluentMlPerGram: (oneIn - 1) / (oneIn * gramsPerMl),
  };
}

/** What goes into a cup with so many grams of a cut: the bottle, and what it is cut with. */
export function partsOfCut(cut: Cut, grams: number): readonly PartStep[] {
  const { of, with: diluent, bottlePerGram, plasticPerGram } = cut;
  return [
    { kind: 'add', material: of, grams: grams * bottlePerGram },
    plasticPerGram === undefined
      ? { kind: 'add', material: diluent, grams: grams * (1 - bottlePerGram) }
      : { kind: 'plastic', material: diluent, ml: grams * plasticPerGram },
  ];
}

// What only the last digits leave of an amount is nothing.
const ROUNDING = 1e-9;

/**
 * A cup without a material. With a bottle goes what its cuts have brought with it, so that whoever gives another dose of it, straight or
 * cut, need not think of that.
 *
 * @param cutOf a cut by its name
 */
export function withoutMaterial(cup: CupState, id: string, cutOf: (name: string) => Cut | undefined): CupState {
  const materials: Record<string, number> = { ...cup.materials };
  const plastics: Record<string, number> = { ...cup.plastics };
  const cuts: Record<string, number> = { ...cup.cuts };
  for (const name of Object.keys(cuts)) {
    const cut = cutOf(name);
    if (cut?.of !== id) continue;
    for (const part of partsOfCut(cut, cuts[name]!)) {
      const [amounts, much] = part.kind === 'plastic' ? [plastics, part.ml] : [materials, part.grams];
      // The cup may have another plastic by now.
      const before = amountOf(amounts, part.material);
      const left = before - much;
      if (left > before * ROUNDING) amounts[part.material] = left;
      else delete amounts[part.material];
    }
    delete cuts[name];
  }
  delete materials[id];
  return { plastics, materials, ...(cup.cuts && { cuts }) };
}

/** A cup without the cuts that went into it: without their bottles, and without what they brought. */
export function withoutCuts(cup: CupState, cutOf: (name: string) => Cut | undefined): CupState {
  return Object.keys(cup.cuts ?? {}).reduce((left, name) => {
    const cut = cutOf(name);
    return cut ? withoutMaterial(left, cut.of, cutOf) : left;
  }, cup);
}
