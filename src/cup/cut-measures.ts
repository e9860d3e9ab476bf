import type { Bench, Measure } from './bench.ts';
import { type Cut, partsOfCut } from './cut.ts';
import { type Amounts, amountOf, type CupState, EMPTY_CUP, type PartStep, total, withAdded } from './ledger.ts';
import { isNear, isSure, isWeighable, measures, weighed } from './measures.ts';

// What a cut may bring into a cup besides what the recipe has of it, as a part of the plastic's volume: less than softener is measured to.
// Convention of this book.
const UNSEEN = 0.01;

/**
 * The cuts by which a dose of a bottle can be measured without making another cup of it: what they are cut with is in the recipe, in as much
 * as they bring, or is so little that it is none.
 *
 * @param grams of the bottle
 * @param contents g of what is in the cup, and ml of its plastics
 */
export function fittingCuts(
  grams: number,
  cuts: readonly Cut[],
  contents: { readonly materials: Amounts; readonly plastics: Amounts },
): readonly Cut[] {
  const plasticMl = total(contents.plastics);
  return cuts.filter((cut) => {
    const ofCut = grams / cut.bottlePerGram;
    if (cut.plasticPerGram !== undefined)
      return ofCut * cut.plasticPerGram <= amountOf(contents.plastics, cut.with) && ofCut < plasticMl;
    const brought = ofCut * (1 - cut.bottlePerGram);
    return (
      brought <= amountOf(contents.materials, cut.with) * (1 + 1e-6) || ofCut / cut.gramsPerMl <= UNSEEN * plasticMl
    );
  });
}

/** The strongest first, whichever order they lie on the shelf in. */
function byStrength(cuts: readonly Cut[]): readonly Cut[] {
  return [...cuts].sort((one, other) => one.oneIn - other.oneIn);
}

/** Measures of a bottle by its cuts that come near a dose: nearest first, those of the strongest cut before others as near. */
export function cutMeasures(grams: number, cuts: readonly Cut[], bench: Bench): readonly Measure[] {
  return byStrength(cuts).flatMap((cut) =>
    measures(grams / cut.bottlePerGram, cut, bench).flatMap((measure): Measure[] => {
      const bottle = measure.grams * cut.bottlePerGram;
      return isNear(bottle, grams) && isSure(measure, bench) && measure.tool !== 'none'
        ? [{ ...measure, grams: bottle, cut }]
        : [];
    }),
  );
}

/** A dose of a bottle by the scale: of its strongest cut that will do, where the scale is too coarse for the bottle itself and not for that. */
export function weighedOf(grams: number, cuts: readonly Cut[], scaleGrams: number): Measure {
  const cut = isWeighable(grams, scaleGrams)
    ? undefined
    : byStrength(cuts).find(({ bottlePerGram }) => isWeighable(grams / bottlePerGram, scaleGrams));
  if (!cut) return weighed(grams, scaleGrams);
  const measure = weighed(grams / cut.bottlePerGram, scaleGrams);
  return { ...measure, grams: measure.grams * cut.bottlePerGram, cut };
}

/** What the exact doses that are measured of cuts are cut with: g of materials, ml of plastics. */
export function broughtByCuts(exact: Amounts, chosen: Readonly<Record<string, Measure>>): CupState {
  return Object.entries(chosen).reduce((cup, [name, { cut }]): CupState => {
    const diluent = cut && partsOfCut(cut, exact[name]! / cut.bottlePerGram)[1];
    return diluent ? withAdded(cup, diluent) : cup;
  }, EMPTY_CUP);
}

/** Of what cuts bring into a cup together, that of which it has less; what is so little that it is none is not counted. */
export function bringTooMuch(
  brought: CupState,
  { materials, plastics }: Pick<CupState, 'materials' | 'plastics'>,
  gramsPerMl: (material: string) => number,
): readonly string[] {
  const isMore = (ofCuts: number, there: number): boolean => ofCuts > there * (1 + 1e-6);
  const unseenMl = UNSEEN * total(plastics);
  return [
    ...Object.keys(brought.plastics).filter((name) => isMore(brought.plastics[name]!, amountOf(plastics, name))),
    ...Object.keys(brought.materials).filter((name) => {
      const grams = brought.materials[name]!;
      return isMore(grams, amountOf(materials, name)) && grams / gramsPerMl(name) > unseenMl;
    }),
  ];
}

/** What goes into a cup with so many grams of a material, straight or measured of a cut. */
export function partsOfMeasured(material: string, grams: number, cut: Cut | undefined): readonly PartStep[] {
  return cut ? partsOfCut(cut, grams / cut.bottlePerGram) : [{ kind: 'add', material, grams }];
}

/** Whether a bench measures a dose of a bottle by itself: a measure comes near, and a scale is fine enough for it. */
export function isMeasurable(grams: number, straight: readonly Measure[], { scaleGrams = 0 }: Bench): boolean {
  return straight.some(
    (measure) => isNear(measure.grams, grams) && (measure.tool !== 'scale' || isWeighable(grams, scaleGrams)),
  );
}

/** Grams of the material itself in an amount that may be of a cut. */
export function bottleGrams({ cut }: { readonly cut?: Pick<Cut, 'bottlePerGram'> }, grams: number): number {
  return grams * (cut?.bottlePerGram ?? 1);
}
