import { type Amounts, amountOf, type CupState, concentrations, total } from '../../cup/ledger.ts';
import type { Effect } from '../../kinds/effects.ts';
import { COLOURING_KINDS } from '../../tables/colouring-kinds.ts';
import { required } from '../../values/required.ts';
import { colours, type MatchMaterial } from './match-material.ts';
import { fullness, plasticDensityOf, type Sort, sortOf } from './together.ts';
import { withUsableCuts } from './usable-cuts.ts';

/** What may be added. */
export interface AdditionLimits {
  /** Only what is left on the shelf; what is not counted counts as there. */
  readonly inStock?: boolean;
  /** Part of what is left that a cup may take, where others are to be filled from it as well; unset: all. */
  readonly stockShare?: number;
  /** Plastic may be added to let the cup down. */
  readonly mayLetDown?: boolean;
  /** Volume to which the cup may be filled, ml; unset: three times what is in it. */
  readonly roomMl?: number;
  /** What the target does beside being of a colour: materials may do so too. */
  readonly effects?: readonly Effect[];
  /** Materials that must not be used. */
  readonly without?: readonly string[];
}

/** A material that could colour and is left out, and why. */
export type LeftOut = { readonly material: string } & WhyLeftOut;

type WhyLeftOut =
  /** It stands less heat than the plastic is poured at, °C. */
  | { readonly why: 'too-hot'; readonly highest: number; readonly pouredAt: number }
  /** It does what the target does not. */
  | { readonly why: 'effect'; readonly effect: Effect }
  /** There is none left. */
  | { readonly why: 'used-up' }
  /** The cup has as much of it as it may have. */
  | { readonly why: 'at-its-most' }
  /** The cup has as much of its sort together as a cup takes. */
  | { readonly why: 'sort-at-its-most'; readonly sort: Sort };

// Where the shelf names no most: so many typical doses. Convention of this book.
const TYPICAL_DOSES = 6;
const LEAST_DOSE = 1e-6;
// What is left of a cup's room for a sort below this part is none.
const FULL = 0.999;

/**
 * Materials that may go into a cup, each with its most in grams.
 *
 * Left out: what does not colour; what glows, or shifts its colour, where the target does not; what is at its most allowed load already; what scorches below the temperature at which the cup's
 * plastic pours; and, where only stock is asked for, what there is none of.
 */
export function usableMaterials(
  cup: CupState,
  shelf: ReadonlyMap<string, MatchMaterial>,
  limits: AdditionLimits,
): {
  readonly usable: readonly { readonly material: MatchMaterial; readonly most: number }[];
  readonly leftOut: readonly LeftOut[];
} {
  const { inStock = false, stockShare = 1, effects = [], without = [] } = limits;
  const plasticMl = total(cup.plastics);
  const contents = concentrations(cup);
  const pouredAt = pouringTemperature(cup, shelf);
  const full = fullness(contents, (name) => required(shelf, name), 'never', plasticDensityOf(cup, shelf));
  const usable: { material: MatchMaterial; most: number }[] = [];
  const leftOut: LeftOut[] = [];
  for (const material of shelf.values()) {
    if (!colours(material) || without.includes(material.id)) continue;
    const most = mostGrams(material, contents, plasticMl, inStock ? stockShare : undefined);
    const sort = sortOf(material);
    const why =
      effectFault(material, effects) ??
      whyNot(material, pouredAt, inStock) ??
      (sort !== undefined && (full.get(sort) ?? 0) >= FULL
        ? ({ why: 'sort-at-its-most', sort } as const)
        : undefined) ??
      (most <= LEAST_DOSE * plasticMl ? ({ why: 'at-its-most' } as const) : undefined);
    if (why === undefined) usable.push({ material: withUsableCuts(material, cup, shelf, pouredAt, limits), most });
    else leftOut.push({ material: material.id, ...why });
  }
  return { usable, leftOut };
}

/** Temperature that a cup must reach to be poured, °C: the lowest that all its plastics pour at; undefined where none says. */
export function pouringTemperature(cup: CupState, shelf: ReadonlyMap<string, MatchMaterial>): number | undefined {
  const from = Object.keys(cup.plastics).flatMap((name) => shelf.get(name)?.working?.from ?? []);
  return from.length > 0 ? Math.max(...from) : undefined;
}

function effectFault({ effect }: MatchMaterial, wanted: readonly Effect[]): WhyLeftOut | undefined {
  return effect === undefined || wanted.includes(effect) ? undefined : { why: 'effect', effect };
}

/** Why a material cannot be used; undefined where it can. */
function whyNot(
  { highest, stockGrams }: MatchMaterial,
  pouredAt: number | undefined,
  inStock: boolean,
): WhyLeftOut | undefined {
  if (pouredAt !== undefined && highest !== undefined && highest < pouredAt)
    return { why: 'too-hot', highest, pouredAt };
  return inStock && stockGrams !== undefined && stockGrams <= 0 ? { why: 'used-up' } : undefined;
}

function mostGrams(
  { id, most, typical, stockGrams }: MatchMaterial,
  contents: Amounts,
  plasticMl: number,
  stockShare: number | undefined,
): number {
  const load = most ?? TYPICAL_DOSES * (typical ?? COLOURING_KINDS.pigment.dose);
  const room = Math.max(0, load - amountOf(contents, id)) * plasticMl;
  return stockShare !== undefined && stockGrams !== undefined
    ? Math.min(room, Math.max(0, stockShare * stockGrams))
    : room;
}
