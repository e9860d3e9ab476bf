import type { Bench } from '../../cup/bench.ts';
import type { Cut } from '../../cup/cut.ts';
import { weighedOf } from '../../cup/cut-measures.ts';
import { defined } from '../../values/defined.ts';
import type { Mix } from '../mix/mix.ts';
import { leastDoses } from '../search/least-doses.ts';
import { refineDoses } from '../search/refine-doses.ts';
import { cutsInCup } from './cuts-in-cup.ts';
import type { Ingredient, MeasuredDoses } from './measure-doses.ts';

/** An amount as the scale shows it. */
export interface Weight {
  readonly grams: number;
  /** "0.12 g" */
  readonly text: string;
  /** It is weighed of this cut: the text is what the scale shows, the grams are those of the bottle in that. */
  readonly cut?: Cut;
}

/** Measured doses weighed instead. */
export interface WeighedDoses {
  /** Of each material that was measured, by candidate. */
  readonly weights: ReadonlyMap<number, Weight>;
  /** Of all candidates, as `MixProblem` counts them. */
  readonly doses: Float64Array;
  /** Largest ΔE00 that they leave. */
  readonly deltaE: number;
}

/**
 * What to weigh instead of drops and spoons: the same materials, with the same plastic added, each in the best amount by the scale's
 * step. Not the weights of the drops and spoons, which are rounded to make up for one another. Undefined without a scale, where
 * everything is weighed already, and where the scale is too coarse to do about as well.
 *
 * @param exact doses before they were measured, g per ml of plastic
 * @param plasticMl plastic in each cup before anything is added, ml
 */
export function weighDoses(
  mix: Mix,
  ingredients: readonly Ingredient[],
  measured: MeasuredDoses,
  exact: Float64Array,
  plasticMl: readonly number[],
  { scaleGrams }: Bench,
): WeighedDoses | undefined {
  const materials = measured.ingredients.filter(({ candidate }) => !ingredients[candidate]!.letsDown);
  if (scaleGrams === undefined || materials.every(({ measure }) => measure.tool === 'scale')) return undefined;
  const ml = [...plasticMl];
  for (const { candidate, amount } of measured.ingredients)
    if (ingredients[candidate]!.letsDown) ml[ingredients[candidate]!.cup]! += amount;
  const at = (dose: (candidate: number) => number): WeighedDoses | undefined => {
    const doses = measured.doses.slice();
    const weights = new Map<number, Weight>();
    for (const { candidate } of materials) {
      const plastic = ml[ingredients[candidate]!.cup]!;
      const { cuts = [] } = ingredients[candidate]!.material;
      const grams = dose(candidate) * plastic;
      const weight = weightOf(grams, scaleGrams, cutsInCup(grams, cuts, plastic));
      weights.set(candidate, weight);
      doses[candidate] = weight.grams / plastic;
    }
    return mix.excess(doses) > 0 ? undefined : { weights, doses, deltaE: mix.worst(doses) };
  };
  const start = measured.doses.slice();
  const set = materials.map(({ candidate }) => candidate);
  for (const candidate of set) start[candidate] = exact[candidate]!;
  const refined = mix.holding(start, () => leastDoses(mix, set, refineDoses(mix, set, start).doses));
  const best = at((candidate) => refined[candidate]!);
  const asMeasured = at((candidate) => measured.doses[candidate]!);
  const weighed = best && asMeasured && asMeasured.deltaE < best.deltaE ? asMeasured : (best ?? asMeasured);
  return weighed && weighed.deltaE <= mix.worst(measured.doses) + AS_GOOD ? weighed : undefined;
}

/** Weighing is no choice where it leaves this much more than drops and spoons do, ΔE00. Convention of this book. */
const AS_GOOD = 1;

/** An amount by the scale's step: of a cut, where that is too coarse for the bottle itself. */
export function weightOf(exactGrams: number, scaleGrams: number, cuts: readonly Cut[] = []): Weight {
  const { grams, text, cut } = weighedOf(exactGrams, cuts, scaleGrams);
  return { grams, text, ...defined({ cut }) };
}

/** Weighing is worth a word where it gains this much, ΔE00. */
export const WORTH_A_WORD = 0.1;
