import { defined } from '../values/defined.ts';
import { amountsWithCuts } from './amounts-with-cuts.ts';
import type { Batch, BatchCup, BatchStock, Measured, MeasuredCut, PlannedLine } from './batch.ts';
import type { Bench, BenchMaterial } from './bench.ts';
import type { Cut } from './cut.ts';
import { filledMl } from './filled-ml.ts';
import { type Fills, fillsOf, type Injector } from './injector.ts';
import { amountOf, scaleAmounts } from './ledger.ts';
import { type ColourError, type MeasuredAmounts, nearestMeasure } from './measured-amounts.ts';
import { isNear, isWeighable, measures, weighed, weighedAsExact } from './measures.ts';
import { purchases } from './purchases.ts';

/** How far above its limit a cup is not told of: a tenth is what the eye takes for the same height. Common practice, no source. */
export const FULLNESS_LEEWAY = 1.1;

/** How a shop works: what is lost, and how far a cup is filled. */
export interface Shop extends Bench {
  /** Plastic lost on the way, as a fraction of what the baits and sprues take. */
  readonly loss: number;
  /** Of the baits that are made, the part that is thrown away. */
  readonly rejects: number;
  /** Absent where none is reckoned with. */
  readonly injector?: Injector;
  /** What can't be got out of a cup, ml. */
  readonly leftInCupMl: number;
  /** Plastic is measured in whole marks of a measuring cup that are so far apart, ml; exactly where it is absent. */
  readonly marksMl?: number;
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
  /** g per ml of plastic; `spooned` is a liquid that is measured by volume rather than in drops. */
  readonly contents: readonly { readonly material: string; readonly gramsPerMl: number; readonly spooned?: true }[];
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

/** What is asked of a plan: so many good baits of a mold. */
export interface BatchLine {
  readonly mold: BatchMold;
  readonly baits: number;
  /** What is lost and thrown away with this mold; the shop's where it is absent. */
  readonly loss?: number;
  readonly rejects?: number;
  /** Whether the mold is filled out of the shop's injector. */
  readonly injected?: boolean;
}

/**
 * Works out a plan: how much of everything for so many good baits of these molds.
 *
 * Mixed volume of a cup = (Σ (baits made × cavity volume + shots × sprue) × (1 + loss)) × the cup's share + what stays in the injector + what stays
 * in each cup, up to the next marks of a measuring cup. Baits made = the good ones by the part that is not thrown away. A cup that would stand above its fill limit is split into equal cups.
 *
 * @param colourError for each cup by its place, ΔE00 of grams in a stated volume of plastic against the exact recipe
 * @throws RangeError if a line has no baits, or a cup holds no more than what stays in it
 */
export function planBatch(plan: {
  readonly cups: readonly ScalableCup[];
  readonly lines: readonly BatchLine[];
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
  const lines = plan.lines.map((line) => plannedLine(line, shop));
  const takenMl = plan.lines.reduce((sum, { mold, loss = shop.loss }, index) => {
    const { baits, made = baits, shots } = lines[index]!;
    return sum + (made * mold.cavityMl + shots * mold.sprueMl) * (1 + loss);
  }, 0);
  const cups = plan.cups.map((cup, index) => {
    const fills = fillsOfCup(cup, plan.lines, lines, shop.injector);
    const inInjectorMl = fills.length === 0 ? 0 : (shop.injector?.leftMl ?? 0);
    const made = batchCup(cup, takenMl * cup.share + inInjectorMl, {
      shop,
      stock,
      colourError: (ml) => plan.colourError(index, ml),
      flakesABait: (gramsPerFlake, gramsPerMl) =>
        plan.lines.map(({ mold }) => ({
          mold: mold.id,
          count: (mold.cavityMl * cup.share * gramsPerMl) / gramsPerFlake,
        })),
    });
    return fills.length === 0 ? made : { ...made, fills };
  });
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

/** What must be made for the good baits of a line. */
function plannedLine({ mold, baits, rejects }: BatchLine, shop: Shop): PlannedLine {
  if (!(Number.isInteger(baits) && baits > 0))
    throw new RangeError(`a batch needs a whole number of baits, not ${baits}`);
  const made = Math.ceil(baits / (1 - (rejects ?? shop.rejects)) - 1e-9);
  return {
    mold: mold.id,
    baits,
    ...(made === baits ? {} : { made }),
    shots: Math.ceil(made / mold.cavities),
  };
}

/** How often the injector is filled from a cup, mold by mold. */
function fillsOfCup(
  { share }: ScalableCup,
  asked: readonly BatchLine[],
  planned: readonly PlannedLine[],
  injector: Injector | undefined,
): readonly Fills[] {
  if (injector === undefined) return [];
  return asked.flatMap(({ mold, injected }, index) =>
    injected
      ? [fillsOf(injector, mold.id, share * (mold.cavities * mold.cavityMl + mold.sprueMl), planned[index]!.shots)]
      : [],
  );
}

/** What a cup of a batch is worked out with. */
interface CupTools {
  readonly shop: Shop;
  readonly stock: (material: string) => BatchStock;
  /** ΔE00 of grams in so much plastic against the exact recipe. */
  readonly colourError: (plasticMl: number) => ColourError;
  /** Flakes of so many g a piece in a bait of each mold, by g in a ml of the mixed cup. */
  readonly flakesABait: (gramsPerFlake: number, gramsPerMl: number) => NonNullable<Measured['flakesABait']>;
}

/** A cup of which so much is needed, split into equal ones where it would stand above its fill limit. */
function batchCup(cup: ScalableCup, neededMl: number, tools: CupTools): BatchCup {
  const { shop, colourError: errorIn } = tools;
  // What stays in each cup takes room in it too, so the cup's useful room is smaller by that.
  const room = filledMl(shop) - shop.leftInCupMl;
  // A little above the limit a cup is told to be right, and is not split for it.
  const split = neededMl <= room * FULLNESS_LEEWAY ? 1 : Math.ceil(neededMl / room - 1e-9);
  const plastics = toMarks(cup.plastics, (neededMl / split + shop.leftInCupMl) / cup.volumePerPlastic, shop.marksMl);
  const plasticMl = Object.values(plastics).reduce((sum, ml) => sum + ml, 0);
  const volumeMl = plasticMl * cup.volumePerPlastic;
  const exact = scaleAmounts(
    Object.fromEntries(cup.contents.map(({ material, gramsPerMl }) => [material, gramsPerMl])),
    plasticMl,
  );
  const colourError = errorIn(plasticMl);
  const stock = asSpooned(cup.contents, tools);
  const { found, brought } = amountsWithCuts({ materials: exact, plastics }, stock, shop, colourError);
  const amounts = cup.contents.flatMap(({ material }): Measured[] => {
    const left = exact[material]! - amountOf(brought.materials, material);
    const own = { ...tools, stock, colourError };
    if (left === exact[material]) return [measuredOf(material, exact, found, volumeMl, own)];
    // What a cut brings is not measured again.
    if (left < exact[material]! * ROUNDING) return [];
    const rest = { ...exact, [material]: left };
    const chosen = { ...found.chosen, [material]: nearestMeasure(left, stock(material), shop) };
    return [measuredOf(material, rest, { ...found, chosen, tooCoarse: {} }, volumeMl, own)];
  });
  return {
    name: cup.name,
    split,
    plastics: Object.entries(plastics).map(([material, ml]) => ({
      material,
      ml: ml - amountOf(brought.plastics, material),
    })),
    amounts,
    volumeMl,
    together: found.together && amounts.filter(({ tool }) => tool !== 'scale').length > 1,
    measuringDeltaE: found.deltaE,
    ...defined({ byHandDeltaE: found.byHandDeltaE }),
  };
}

// A cup that is full to a mark by the last digit is not filled to the next.
const ON_A_MARK = 1e-6;

/** Plastics of a cup, ml: so much together at least, each to the next of a measuring cup's marks. */
function toMarks(plastics: ScalableCup['plastics'], ml: number, marksMl?: number): Readonly<Record<string, number>> {
  return Object.fromEntries(
    plastics.map(({ material, fraction }) => {
      const exact = ml * fraction;
      return [material, marksMl === undefined ? exact : Math.ceil(exact / marksMl - ON_A_MARK) * marksMl];
    }),
  );
}

/** The stock as its maker measures it: what is spooned has no drops, where there are spoons. */
function asSpooned(
  contents: ScalableCup['contents'],
  { shop, stock }: Pick<CupTools, 'shop' | 'stock'>,
): CupTools['stock'] {
  const spooned = new Set(contents.flatMap((content) => (content.spooned ? [content.material] : [])));
  if (shop.spoons.length === 0 || spooned.size === 0) return stock;
  return (material) => {
    if (!spooned.has(material)) return stock(material);
    const { gramsPerDrop: _, ...others } = stock(material);
    return others;
  };
}

// Amounts that only the last digits make.
const ROUNDING = 1e-6;

/** One amount as it is measured, and what a maker should know of that. */
function measuredOf(
  material: string,
  exact: Readonly<Record<string, number>>,
  { chosen, tooCoarse }: MeasuredAmounts,
  volumeMl: number,
  { shop, stock, colourError, flakesABait }: Omit<CupTools, 'colourError'> & { readonly colourError: ColourError },
): Measured {
  const measure = chosen[material]!;
  const { cut } = measure;
  // Of what is measured: the material, or a cut of it.
  const part = cut?.bottlePerGram ?? 1;
  const handled: BenchMaterial = cut ?? stock(material);
  const grams = exact[material]! / part;
  const measuredGrams = measure.grams / part;
  const coarse = Object.hasOwn(tooCoarse, material) ? tooCoarse[material] : undefined;
  const { scaleGrams } = shop;
  const byWeight = scaleGrams === undefined ? undefined : weighedAsExact(grams, scaleGrams);
  const { gramsPerDrop } = handled;
  const { flake } = stock(material);
  const dropDeltaE =
    measure.tool === 'drops' && gramsPerDrop !== undefined
      ? colourError({ ...exact, [material]: (grams + gramsPerDrop) * part })
      : 0;
  const betterWeighed = byWeight !== undefined && (scaleGrams ?? Number.POSITIVE_INFINITY) < (gramsPerDrop ?? 0);
  const inFullCup = (grams * filledMl(shop)) / volumeMl;
  return {
    material,
    ...(cut && { cut: measuredCut(cut) }),
    grams,
    measuredGrams,
    text: measure.text,
    tool: measure.tool,
    ...defined({ byWeight }),
    ...(scaleGrams === undefined || byWeight !== undefined
      ? {}
      : { offScale: isWeighable(grams, scaleGrams) ? 'between-steps' : 'too-little' }),
    ...(coarse === undefined ? {} : { tooCoarse: { text: coarse.text, grams: coarse.grams / part } }),
    ...(asPrinted(dropDeltaE) > shop.tolerance ? { dropDeltaE, betterWeighed } : {}),
    ...defined({ flakesABait: flake && flakesABait(flake.gramsPerFlake, grams / volumeMl) }),
    ...(isNear(measuredGrams, grams) ? {} : { nearInFullCup: canMeasure(inFullCup, handled, shop) }),
  };
}

function measuredCut({ id, title, oneIn, with: diluent, bottlePerGram }: Cut): MeasuredCut {
  return { id, title, oneIn, with: diluent, bottlePerGram };
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
