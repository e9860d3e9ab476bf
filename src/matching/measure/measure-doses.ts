import type { Measure } from '../../cup/bench.ts';
import { cutMeasures, isMeasurable } from '../../cup/cut-measures.ts';
import { isSure, measures } from '../../cup/measures.ts';
import { CUP_MARKS_ML, volumeText } from '../../units/volume-text.ts';
import type { Mix } from '../mix/mix.ts';
import type { MatchBench } from '../shelf/match-bench.ts';
import type { MatchMaterial } from '../shelf/match-material.ts';
import { type Choice, chooseOptions } from './choose-options.ts';
import { cutsInCup } from './cuts-in-cup.ts';

/** What can be put into a cup: a material, or plastic that lets it down. */
export interface Ingredient {
  readonly material: MatchMaterial;
  /** Index of the cup that it goes into. */
  readonly cup: number;
  /** Plastic is dosed as its share of the let-down cup's plastic. */
  readonly letsDown: boolean;
  /** Largest amount, g; of plastic in ml. */
  readonly most: number;
}

/** One measured ingredient. */
export interface MeasuredIngredient {
  readonly candidate: number;
  /** g, or ml of plastic. */
  readonly amount: number;
  readonly measure: Measure;
}

/** A cup measured out. */
export interface MeasuredDoses {
  readonly ingredients: readonly MeasuredIngredient[];
  /** Of all candidates. */
  readonly doses: Float64Array;
  readonly score: number;
}

interface Option {
  readonly amount: number;
  readonly measure?: Measure;
  /** Spoonfuls to level, and what else makes it the harder way. */
  readonly effort?: number;
}

const OPTIONS = 4;
// A spoonful more to level must gain this much ΔE00.
const EFFORT = 0.02;
// Where drops of the bottle come near, its cut must gain as much as this many spoonfuls: it is another bottle to shake.
const CUT_EFFORT = 15;
// Of more drops one more or less is hardly seen.
const FEW_DROPS = 5;
const CUT_OPTIONS = 2;
// What a cup may not hold is above any colour.
const TOO_FULL = 1e6;
// What `check` warns of must gain this much ΔE00 by rounding alone. Convention of this book.
const OVERFULL = 1;

/**
 * Rounds doses to what the bench can measure, together, for the least difference to the targets: each may be rounded away from
 * its nearest to make up for another, and what helps nobody in any measurable amount is left out.
 *
 * @param plasticMl plastic in each cup before anything is added, ml
 * @param doses g per ml of plastic; of plastic, its share of the plastic after it was added
 */
export function measureDoses(
  mix: Mix,
  ingredients: readonly Ingredient[],
  set: readonly number[],
  doses: Float64Array,
  plasticMl: readonly number[],
  bench: MatchBench,
): MeasuredDoses {
  const exactMl = plasticMl.map((ml, cup) => {
    const plastic = set.find((j) => ingredients[j]!.letsDown && ingredients[j]!.cup === cup);
    return plastic === undefined ? ml : ml + addedPlastic(doses[plastic]!, ml);
  });
  const lists = set.map((j): readonly Option[] => {
    const ingredient = ingredients[j]!;
    const ml = exactMl[ingredient.cup]!;
    return ingredient.letsDown
      ? plasticOptions(ml - plasticMl[ingredient.cup]!, ingredient, bench)
      : materialOptions(doses[j]! * ml, ingredient, ml, bench);
  });
  const into = (choice: Choice): Float64Array => {
    const ml = [...plasticMl];
    for (const [i, j] of set.entries())
      if (ingredients[j]!.letsDown) ml[ingredients[j]!.cup]! += lists[i]![choice[i]!]!.amount;
    const result = new Float64Array(mix.count);
    for (const [i, j] of set.entries()) result[j] = lists[i]![choice[i]!]!.amount / ml[ingredients[j]!.cup]!;
    return result;
  };
  const isUsual = !mix.isOverfull(doses);
  const costBy =
    (scoreOf: (mixed: Float64Array) => number) =>
    (choice: Choice): number => {
      let effort = 0;
      for (const [i, option] of choice.entries()) effort += lists[i]![option]!.effort ?? 0;
      const mixed = into(choice);
      return (
        scoreOf(mixed) +
        EFFORT * effort +
        TOO_FULL * mix.excess(mixed) +
        (isUsual && mix.isOverfull(mixed) ? OVERFULL : 0)
      );
    };
  const choice = mix.holding(doses, () =>
    chooseOptions({
      lengths: lists.map(({ length }) => length),
      cost: costBy((mixed) => mix.score(mixed)),
      estimateNear: (near) => costBy(mix.scoreNear(near ? into(near) : doses, set)),
    }),
  );
  const result = into(choice);
  if (mix.excess(result) > 0) {
    const none = new Float64Array(mix.count);
    return { ingredients: [], doses: none, score: mix.score(none) };
  }
  const measured = set.flatMap((candidate, i): MeasuredIngredient[] => {
    const { amount, measure } = lists[i]![choice[i]!]!;
    return amount > 0 && measure ? [{ candidate, amount, measure }] : [];
  });
  return { ingredients: measured, doses: result, score: mix.score(result) };
}

/** Plastic that makes up a share of the plastic after it was added, ml. */
export function addedPlastic(share: number, plasticMl: number): number {
  return (plasticMl * share) / (1 - share);
}

function plasticOptions(ml: number, { most }: Ingredient, { volume = 'ml' }: MatchBench): readonly Option[] {
  const step = CUP_MARKS_ML[volume];
  const down = Math.floor(ml / step);
  // What fills the cup to its last step is not left out by the last digit.
  const options = [down * step, (down + 1) * step]
    .filter((amount) => amount > 0 && amount <= most * (1 + 1e-9))
    .map(
      (amount): Option => ({
        amount,
        measure: { grams: amount, text: volumeText(amount, { volume }), tool: 'none', effort: 1 },
        effort: 1,
      }),
    );
  return down === 0 || options.length === 0 ? [{ amount: 0 }, ...options] : options;
}

/** Amounts about `grams` that the bench can measure, of the bottle or its cuts, nearest first, and none at all. */
function materialOptions(
  grams: number,
  { material, most }: Ingredient,
  plasticMl: number,
  bench: MatchBench,
): readonly Option[] {
  const found = new Map<string, Measure>();
  for (const about of [grams, grams * 0.8, grams * 1.25]) {
    for (const measure of measures(about, material, bench).slice(0, OPTIONS)) found.set(measure.text, measure);
  }
  const options = [...found.values()]
    .filter((measure) => measure.grams <= most * (1 + 1e-9))
    .sort((one, other) => Math.abs(one.grams - grams) - Math.abs(other.grams - grams))
    .slice(0, OPTIONS)
    .map((measure) => ({ amount: measure.grams, measure, effort: measure.effort }));
  const ofCuts = cutOptions(grams, { material, most }, plasticMl, options, bench);
  // What a scale hardly shows of the bottle is weighed of its cut.
  const sure = ofCuts.length === 0 ? options : options.filter(({ measure }) => isSure(measure, bench));
  return [...ofCuts, ...sure, { amount: 0 }];
}

/** Amounts of cuts for a dose that the bottle itself is too coarse for, or may be. */
function cutOptions(
  grams: number,
  { material, most }: Pick<Ingredient, 'material' | 'most'>,
  plasticMl: number,
  straight: readonly Option[],
  bench: MatchBench,
): readonly Option[] {
  const { cuts = [], gramsPerDrop = 0 } = material;
  const isCoarse = !isMeasurable(
    grams,
    straight.flatMap(({ measure }) => measure ?? []),
    bench,
  );
  if (cuts.length === 0 || !(isCoarse || grams <= FEW_DROPS * gramsPerDrop)) return [];
  return cutMeasures(grams, cutsInCup(grams, cuts, plasticMl), bench)
    .filter((measure) => measure.grams <= most * (1 + 1e-9))
    .slice(0, CUT_OPTIONS)
    .map((measure) => ({
      amount: measure.grams,
      measure,
      effort: measure.effort + (isCoarse ? 0 : CUT_EFFORT),
    }));
}
