/**
 * The cup ledger: what is really in a well-mixed cup after every addition and every pour.
 *
 * Units: plastic and volumes in ml, materials in g. A pour of v ml takes the fraction v/V of everything in a cup of V ml,
 * flake included, so it changes no concentration; every later addition goes into less plastic.
 * Mass balance holds to rounding at every step: start + added = poured + left, for each material.
 *
 * @packageDocumentation
 */

/** Amounts by the name of the material. */
export type Amounts = Readonly<Record<string, number>>;

/** What a cup holds. */
export interface CupState {
  /** ml of each plastic */
  readonly plastics: Amounts;
  /** g of each material */
  readonly materials: Amounts;
  /** g of each cut that went in as such. Its parts are among the plastics and materials. */
  readonly cuts?: Amounts;
}

/** One material that goes into a cup. */
export type PartStep =
  | { readonly kind: 'plastic'; readonly material: string; readonly ml: number }
  | { readonly kind: 'add'; readonly material: string; readonly grams: number };

/** One thing that is done to a cup. */
export type LedgerStep =
  | PartStep
  /** So many grams of a cut, which are these parts. */
  | { readonly kind: 'cut'; readonly cut: string; readonly grams: number; readonly parts: readonly PartStep[] }
  | { readonly kind: 'pour'; readonly ml: number };

/** What is returned where a log pours more than is left: the maker's mistake, so nothing is thrown. */
export interface OverPour {
  readonly leftMl: number;
  readonly wantedMl: number;
}

/** Volume that a gram of a material takes up, ml/g: the inverse of its density. 0 leaves it out. */
export type VolumePerGram = (material: string) => number;

/** A cup with nothing in it. */
export const EMPTY_CUP: CupState = { plastics: {}, materials: {} };

/** How much there is of a material, whatever its name; 0 where there is none. */
export function amountOf(amounts: Amounts, name: string): number {
  return Object.hasOwn(amounts, name) ? amounts[name]! : 0;
}

/** Sum of amounts. */
export function total(amounts: Amounts): number {
  let sum = 0;
  for (const name in amounts) sum += amounts[name]!;
  return sum;
}

/** Volume of a cup with everything in it, ml. */
export function cupVolume(cup: CupState, volumePerGram: VolumePerGram): number {
  let volume = total(cup.plastics);
  for (const name in cup.materials) volume += cup.materials[name]! * volumePerGram(name);
  return volume;
}

/** Every amount times a factor. */
export function scaleAmounts(amounts: Amounts, factor: number): Amounts {
  return Object.fromEntries(Object.entries(amounts).map(([name, amount]) => [name, amount * factor]));
}

/** A cup of another size with the same concentrations. */
export function scaleCup({ plastics, materials, cuts }: CupState, factor: number): CupState {
  return {
    plastics: scaleAmounts(plastics, factor),
    materials: scaleAmounts(materials, factor),
    ...(cuts && { cuts: scaleAmounts(cuts, factor) }),
  };
}

/** What a cup holds, in grams of material per millilitre of plastic. An empty cup has no concentrations. */
export function concentrations(cup: CupState): Amounts {
  const plastic = total(cup.plastics);
  return plastic > 0 ? scaleAmounts(cup.materials, 1 / plastic) : {};
}

const added = (amounts: Amounts, name: string, amount: number): Amounts => ({
  ...amounts,
  [name]: amountOf(amounts, name) + amount,
});

/** A cup with what was added to it. */
export function withAdded(cup: CupState, step: Exclude<LedgerStep, { kind: 'pour' }>): CupState {
  switch (step.kind) {
    case 'plastic':
      return { ...cup, plastics: added(cup.plastics, step.material, step.ml) };
    case 'add':
      return { ...cup, materials: added(cup.materials, step.material, step.grams) };
    case 'cut':
      return { ...step.parts.reduce(withAdded, cup), cuts: added(cup.cuts ?? {}, step.cut, step.grams) };
  }
}

/** A log's volumes are read off a cup by eye: a pour that is over by less than this is the whole cup. */
export const ROUNDING_ML = 1e-6;

/** Whether a cup has nothing left in it that anything could be mixed into. */
export function isEmpty(cup: CupState): boolean {
  return !(total(cup.plastics) > ROUNDING_ML);
}

/**
 * The cup after one step; an over-pour as a value.
 *
 * 100 ml with 20 g of dye, of which 30 ml are poured, and 10 g more: 20/100 + 10/70 g/ml, where the notes add up to 30/100.
 */
export function afterStep(cup: CupState, step: LedgerStep, volumePerGram: VolumePerGram): CupState | OverPour {
  switch (step.kind) {
    case 'plastic':
    case 'add':
    case 'cut':
      return withAdded(cup, step);
    case 'pour': {
      const volume = cupVolume(cup, volumePerGram);
      if (step.ml > volume + ROUNDING_ML) return { leftMl: volume, wantedMl: step.ml };
      return scaleCup(cup, volume > 0 ? Math.max(0, 1 - step.ml / volume) : 0);
    }
  }
}

/** Whether a step could not be taken. */
export function isOverPour(result: CupState | OverPour): result is OverPour {
  return 'wantedMl' in result;
}

/** What the notes on the bag add up to: everything ever added over all the plastic, as if nothing had been poured. */
export function naiveSum(start: CupState, steps: readonly LedgerStep[]): CupState {
  let cup = start;
  for (const step of steps) if (step.kind !== 'pour') cup = withAdded(cup, step);
  return cup;
}
