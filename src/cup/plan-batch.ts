import { defined } from '../values/defined.ts';
import type { Bench, BenchMaterial } from './bench.ts';
import { filledMl } from './filled-ml.ts';
import { scaleAmounts } from './ledger.ts';
import { type ColourError, measuredAmounts } from './measured-amounts.ts';
import { isNear, isWeighable, measures, weighed, weighedAsExact } from './measures.ts';

/** How far above its limit a cup is not told of: a tenth is what the eye takes for the same height. Common practice, no source. */
export const FULLNESS_LEEWAY = 1.1;

/** How a shop works: what is lost, and how far a cup is filled. */
export interface Shop extends Bench {
  /** Plastic lost on the way, as a fraction of what the baits and sprues take. */
  readonly loss: number;
  /** What can't be got out of a cup, ml. */
  readonly leftInCupMl: number;
  /** Size of a cup, ml, and the fraction to which it is filled. */
  readonly cupMl: number;
  readonly fill: number;
  /** ΔE00 that the maker allows. */
  readonly tolerance: number;
}

/** A cup's repeatable recipe, ready to be scaled. */
export interface ScalableCup {
  readonly name: string;
  /** Share of the bait's volume. */
  readonly share: number;
  /** Shares of the plastic's volume. */
  readonly plastics: readonly { readonly material: string; readonly fraction: number }[];
  /** g per ml of plastic. */
  readonly contents: readonly { readonly material: string; readonly gramsPerMl: number }[];
  /** Volume of the cup with everything in it, per ml of plastic. */
  readonly volumePerPlastic: number;
}

/** A mold as far as a plan needs it. */
export interface BatchMold {
  readonly id: string;
  readonly cavities: number;
  readonly cavityMl: number;
  /** Plastic left in the sprues each time the mold is filled, ml. */
  readonly sprueMl: number;
}

/** A material as the plan meets it: handled, bought, stocked. Masses in g. */
export interface BatchStock extends BenchMaterial {
  readonly price?: number;
  readonly packGrams?: number;
  readonly stockGrams?: number;
}

/** One measured amount. */
export interface Measured {
  readonly material: string;
  /** Exact, g in one cup. */
  readonly grams: number;
  /** Measured, g. */
  readonly measuredGrams: number;
  /** "22 drops", "1/4 tsp + 1/8 tsp", "0.42 g" */
  readonly text: string;
  readonly tool: 'drops' | 'spoons' | 'scale' | 'none';
  /** The exact amount as the scale shows it, if there is one that does. */
  readonly byWeight?: string;
  /** Why there is a scale that does not show the exact amount: half a step is more than a fifth of it, or it lies between two steps. */
  readonly offScale?: 'too-little' | 'between-steps';
  /** Drops or spoons that the scale stands in for, since they come out too far from it. */
  readonly tooCoarse?: { readonly text: string; readonly grams: number };
  /** Of drops: ΔE00 by which one more moves the colour, where that is more than the tolerance. */
  readonly dropDeltaE?: number;
  /** Of such drops: whether there is a scale that shows less than a drop, and the amount. */
  readonly betterWeighed?: boolean;
  /** Of a measure that comes out far off: whether one comes near in a cup that is as full as it may be. */
  readonly nearInFullCup?: boolean;
}

/** A cup of a batch. */
export interface BatchCup {
  readonly name: string;
  /** Equal cups that it is split into. */
  readonly split: number;
  /** In each of the equal cups: */
  readonly plastics: readonly { readonly material: string; readonly ml: number }[];
  readonly amounts: readonly Measured[];
  /** Volume of each with everything in it, ml. */
  readonly volumeMl: number;
  /** Whether one measure makes up for another, so that all are measured so or all are weighed. */
  readonly together: boolean;
  /** ΔE00 between the exact and the measured cup. */
  readonly measuringDeltaE: number;
  /** ΔE00 that drops and spoons alone would leave, where something is weighed for the colour's sake. */
  readonly byHandDeltaE?: number;
}

/** What a batch takes of one material. */
export interface TakenMaterial {
  readonly material: string;
  readonly grams: number;
  readonly ml: number;
}

/** What a batch takes of one material, and what must be bought for it. */
export interface BatchMaterial extends TakenMaterial {
  readonly cost?: number;
  /** g on the shelf, if counted. */
  readonly stockGrams?: number;
  /** g missing. */
  readonly shortGrams: number;
  /** Packs to buy. */
  readonly packs: number;
}

/** A plan made out: what it makes, and what that takes. */
export interface BatchAmounts {
  readonly lines: readonly { readonly mold: string; readonly baits: number; readonly shots: number }[];
  readonly baits: number;
  readonly cups: readonly BatchCup[];
  readonly materials: readonly TakenMaterial[];
}

/** A plan with its cost and shopping, for whoever has the shelf. */
export interface Batch extends BatchAmounts {
  readonly materials: readonly BatchMaterial[];
  /** Of everything whose price is known. */
  readonly cost: number;
  readonly costPerBait: number;
  readonly unpriced: readonly string[];
}

/**
 * Works out a plan: how much of everything for so many baits of these molds.
 *
 * Mixed volume of a cup = (Σ baits × cavity volume + Σ shots × sprue) × the cup's share × (1 + loss) + what stays in each cup.
 * A cup that would stand above its fill limit is split into equal cups.
 *
 * @param colourError for each cup by its place, ΔE00 of grams in a stated volume of plastic against the exact recipe
 * @throws RangeError if a line has no baits, or a cup holds no more than what stays in it
 */
export function planBatch(plan: {
  readonly cups: readonly ScalableCup[];
  readonly lines: readonly { readonly mold: BatchMold; readonly baits: number }[];
  readonly shop: Shop;
  readonly stock: (material: string) => BatchStock;
  readonly colourError: (cup: number, plasticMl: number) => ColourError;
}): Batch {
  const { shop, stock } = plan;
  if (!(filledMl(shop) > shop.leftInCupMl)) {
    throw new RangeError(
      `a cup filled with ${filledMl(shop)} ml pours nothing if ${shop.leftInCupMl} ml stay in it: give a larger cup`,
    );
  }
  const lines = plan.lines.map(({ mold, baits }) => {
    if (!(Number.isInteger(baits) && baits > 0))
      throw new RangeError(`a batch needs a whole number of baits, not ${baits}`);
    return { mold: mold.id, baits, shots: Math.ceil(baits / mold.cavities) };
  });
  const baitsMl = plan.lines.reduce(
    (sum, { mold, baits }, index) => sum + baits * mold.cavityMl + lines[index]!.shots * mold.sprueMl,
    0,
  );
  const cups = plan.cups.map((cup, index) =>
    batchCup(cup, baitsMl * cup.share * (1 + shop.loss), {
      shop,
      stock,
      colourError: (ml) => plan.colourError(index, ml),
    }),
  );
  const materials = purchases(cups, stock);
  const baits = lines.reduce((sum, line) => sum + line.baits, 0);
  const cost = materials.reduce((sum, material) => sum + (material.cost ?? 0), 0);
  return {
    lines,
    baits,
    cups,
    materials,
    cost,
    costPerBait: cost / baits,
    unpriced: materials.filter((material) => material.cost === undefined).map((material) => material.material),
  };
}

/** What a cup of a batch is worked out with. */
interface CupTools {
  readonly shop: Shop;
  readonly stock: (material: string) => BatchStock;
  /** ΔE00 of grams in so much plastic against the exact recipe. */
  readonly colourError: (plasticMl: number) => ColourError;
}

/** A cup of which so much is needed, split into equal ones where it would stand above its fill limit. */
function batchCup(cup: ScalableCup, neededMl: number, { shop, stock, colourError: errorIn }: CupTools): BatchCup {
  // What stays in each cup takes room in it too, so the cup's useful room is smaller by that.
  const room = filledMl(shop) - shop.leftInCupMl;
  // A little above the limit a cup is told to be right, and is not split for it.
  const split = neededMl <= room * FULLNESS_LEEWAY ? 1 : Math.ceil(neededMl / room - 1e-9);
  const volumeMl = neededMl / split + shop.leftInCupMl;
  const plasticMl = volumeMl / cup.volumePerPlastic;
  const exact = scaleAmounts(
    Object.fromEntries(cup.contents.map(({ material, gramsPerMl }) => [material, gramsPerMl])),
    plasticMl,
  );
  const colourError = errorIn(plasticMl);
  const found = measuredAmounts(exact, stock, shop, colourError, shop.tolerance);
  return {
    name: cup.name,
    split,
    plastics: cup.plastics.map(({ material, fraction }) => ({ material, ml: plasticMl * fraction })),
    amounts: cup.contents.map(({ material }) =>
      measuredOf(material, exact, found, volumeMl, { shop, stock, colourError }),
    ),
    volumeMl,
    together: found.together,
    measuringDeltaE: found.deltaE,
    ...defined({ byHandDeltaE: found.byHandDeltaE }),
  };
}

/** One amount as it is measured, and what a maker should know of that. */
function measuredOf(
  material: string,
  exact: Readonly<Record<string, number>>,
  { chosen, tooCoarse }: ReturnType<typeof measuredAmounts>,
  volumeMl: number,
  { shop, stock, colourError }: Pick<CupTools, 'shop' | 'stock'> & { readonly colourError: ColourError },
): Measured {
  const measure = chosen[material]!;
  const grams = exact[material]!;
  const coarse = tooCoarse[material];
  const { scaleGrams } = shop;
  const byWeight = scaleGrams === undefined ? undefined : weighedAsExact(grams, scaleGrams);
  const { gramsPerDrop } = stock(material);
  const dropDeltaE =
    measure.tool === 'drops' && gramsPerDrop !== undefined
      ? colourError({ ...exact, [material]: grams + gramsPerDrop })
      : 0;
  const betterWeighed = byWeight !== undefined && (scaleGrams ?? Number.POSITIVE_INFINITY) < (gramsPerDrop ?? 0);
  const inFullCup = (grams * filledMl(shop)) / volumeMl;
  return {
    material,
    grams,
    measuredGrams: measure.grams,
    text: measure.text,
    tool: measure.tool,
    ...defined({ byWeight }),
    ...(scaleGrams === undefined || byWeight !== undefined
      ? {}
      : { offScale: isWeighable(grams, scaleGrams) ? 'between-steps' : 'too-little' }),
    ...(coarse === undefined ? {} : { tooCoarse: { text: coarse.text, grams: coarse.grams } }),
    ...(asPrinted(dropDeltaE) > shop.tolerance ? { dropDeltaE, betterWeighed } : {}),
    ...(isNear(measure.grams, grams) ? {} : { nearInFullCup: canMeasure(inFullCup, stock(material), shop) }),
  };
}

/** A colour difference as it is shown: what reads as within the tolerance is not said to be beyond it. */
export function asPrinted(deltaE: number): number {
  return Math.round(deltaE * 10) / 10;
}

/** Whether a tool of the bench comes near an amount, g. */
function canMeasure(grams: number, material: BenchMaterial, bench: Bench): boolean {
  const byScale = bench.scaleGrams === undefined ? [] : [weighed(grams, bench.scaleGrams)];
  return [...measures(grams, material, bench), ...byScale].some((measure) => isNear(measure.grams, grams));
}

function purchases(cups: readonly BatchCup[], stock: (material: string) => BatchStock): BatchMaterial[] {
  const needed = new Map<string, number>();
  const need = (material: string, grams: number): void =>
    void needed.set(material, (needed.get(material) ?? 0) + grams);
  for (const cup of cups) {
    for (const { material, ml } of cup.plastics) need(material, ml * stock(material).gramsPerMl * cup.split);
    for (const { material, measuredGrams } of cup.amounts) need(material, measuredGrams * cup.split);
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
