import type { SeenPair } from '../physics/eye.ts';
import { seenPour } from '../physics/pour.ts';
import type { Chance } from './chance.ts';
import type { Bottle, World } from './world.ts';

/** Thickness of every test pour and bait of the bench. */
export const POUR_MM = 6;

/** Of an addition, what hand and eye are off by. */
const ADDITION_DEVIATION = 0.03;

/** What is really in a cup: plastic, and of each bottle so many grams of the product, by its id. */
export interface TrueCup {
  readonly plasticMl: number;
  readonly grams: Readonly<Record<string, number>>;
}

/** A cup of plain plastic. */
export function plainCup(plasticMl: number): TrueCup {
  return { plasticMl, grams: {} };
}

/**
 * A cup with an amount put in that is noted as so many grams: of what is in the bottle, measured with the bottle's own drops or spoonfuls
 * unless it was weighed.
 */
export function withAmount(
  cup: TrueCup,
  { product, strength, measure }: Bottle,
  notedGrams: number,
  isWeighed: boolean,
  chance: Chance,
): TrueCup {
  const real = notedGrams * strength * (isWeighed ? 1 : measure) * Math.max(0.5, 1 + chance.normal(ADDITION_DEVIATION));
  return { ...cup, grams: { ...cup.grams, [product.id]: (cup.grams[product.id] ?? 0) + real } };
}

/** A cup with clear plastic added. */
export function withPlastic(cup: TrueCup, ml: number): TrueCup {
  return { ...cup, plasticMl: cup.plasticMl + ml };
}

/** What is left of a cup after a pour, of all that is in it alike. */
export function poured({ plasticMl, grams }: TrueCup, ml: number, world: World): TrueCup {
  const volume = Object.entries(grams).reduce(
    (sum, [id, each]) => sum + each / bottle(world, id).product.density,
    plasticMl,
  );
  const left = Math.max(0, 1 - ml / volume);
  return {
    plasticMl: plasticMl * left,
    grams: Object.fromEntries(Object.entries(grams).map(([id, each]) => [id, each * left])),
  };
}

/** What a cup looks like in truth, poured at a thickness, mm. */
export function trueLook({ plasticMl, grams }: TrueCup, world: World, thicknessMm: number = POUR_MM): SeenPair {
  return seenPour({
    plastic: world.plastic,
    contents: Object.entries(grams).map(([id, each]) => ({
      substance: bottle(world, id).nominal,
      gramsPerMl: each / plasticMl,
    })),
    thicknessMm,
  });
}

/** A bottle of a world by the id of its product. */
export function bottle({ shelf, others }: World, id: string): Bottle {
  const found = [...shelf, ...others].find(({ product }) => product.id === id);
  if (!found) throw new RangeError(`no bottle of ${id} in this world`);
  return found;
}
