import { required } from '../../values/required.ts';
import type { MatchMaterial } from './match-material.ts';

/** What there is too little of on the shelf, and what is left of it. */
export interface ShortStock {
  readonly material: string;
  readonly title: string;
  /** As it is measured: plastic by volume, what is dropped in drops, anything else by weight. */
  readonly left: { readonly amount: number; readonly unit: 'ml' | 'drop' | 'g' };
}

// Of what is weighed out of a bottle the last digit is the scale's.
const ROUNDING = 1e-6;

/**
 * What is asked for more of than is left on the shelf; undefined where all of it is there, or not counted.
 *
 * @param asked g of each material, a plastic too
 */
export function shortStock(
  asked: Iterable<readonly [material: string, grams: number]>,
  shelf: ReadonlyMap<string, MatchMaterial>,
): readonly ShortStock[] | undefined {
  const short = [...asked].flatMap(([id, grams]): ShortStock[] => {
    const material = required(shelf, id);
    const { stockGrams, title } = material;
    return stockGrams !== undefined && grams > stockGrams + ROUNDING
      ? [{ material: id, title, left: leftOf(material, stockGrams > ROUNDING ? stockGrams : 0) }]
      : [];
  });
  return short.length === 0 ? undefined : short;
}

function leftOf({ kind, gramsPerDrop, gramsPerMl }: MatchMaterial, grams: number): ShortStock['left'] {
  if (kind === 'plastic') return { amount: grams / gramsPerMl, unit: 'ml' };
  return gramsPerDrop === undefined
    ? { amount: grams, unit: 'g' }
    : { amount: grams / gramsPerDrop + (grams > 0 ? ROUNDING : 0), unit: 'drop' };
}

/** Plastic that there is too little of. */
export interface ShortPlastic {
  readonly title: string;
  readonly askedMl: number;
  readonly leftMl: number;
}

/** The first plastic that cups take more of than is left; undefined where there is enough of each, or it is not counted. */
export function shortPlastic(
  cups: readonly { readonly plastic: string; readonly plasticMl: number }[],
  shelf: ReadonlyMap<string, MatchMaterial>,
): ShortPlastic | undefined {
  for (const { plastic } of cups) {
    const askedMl = cups.reduce((sum, cup) => sum + (cup.plastic === plastic ? cup.plasticMl : 0), 0);
    const { title, stockGrams, gramsPerMl } = required(shelf, plastic);
    if (stockGrams !== undefined && askedMl * gramsPerMl > stockGrams + ROUNDING)
      return { title, askedMl, leftMl: Math.max(0, stockGrams) / gramsPerMl };
  }
  return undefined;
}
