import type { Bench, BenchMaterial, Measure } from './bench.ts';
import type { Amounts } from './ledger.ts';
import { isNear, measures, weighed } from './measures.ts';

/** Colour difference, ΔE00, between the exact cup and one that holds these grams of its materials. */
export type ColourError = (grams: Amounts) => number;

// All combinations of this many are tried; above it each amount is improved in turn.
const MOST_COMBINATIONS = 200;
// Differences below this are not seen, so the measure with less effort is taken.
const INDIFFERENT = 0.02;
// A step of the colour that begins to be seen, ΔE00; common practice, no source.
const NOTICED = 0.5;
// What a dose that is all wrong counts for beside the colour, ΔE00: flake hardly moves the mean colour, but half of it is
// seen to be half of it.
const AMISS = 8;

/**
 * Rounds the amounts of one cup to what the bench can measure, together, for the least colour error.
 *
 * Rounding each to its nearest would let errors add up; here one may be rounded away from its nearest to make up for another,
 * but never out of what is near. An amount that neither drops nor spoons come near is weighed where there is a scale.
 *
 * @param exact grams of each material in one cup
 * @returns the measure of each material, what drops or spoons would have been where the scale stands in for them, whether the
 * measures belong together because one makes up for another, and the colour error that is left
 */
export function measuredAmounts(
  exact: Amounts,
  material: (name: string) => BenchMaterial,
  bench: Bench,
  colourError: ColourError,
): {
  readonly chosen: Readonly<Record<string, Measure>>;
  readonly tooCoarse: Readonly<Record<string, Measure>>;
  readonly together: boolean;
  readonly deltaE: number;
} {
  const names = Object.keys(exact).sort();
  const ways = names.map((name) => waysToMeasure(exact[name]!, measures(exact[name]!, material(name), bench), bench));
  const options = ways.map((way) => way.options);
  const gramsOf = (choice: readonly number[]): Amounts =>
    Object.fromEntries(names.map((name, index) => [name, options[index]![choice[index]!]!.grams]));
  const errorOf = (choice: readonly number[]): number => {
    const grams = gramsOf(choice);
    return (
      colourError(grams) + AMISS * names.reduce((sum, name) => sum + Math.abs(grams[name]! / exact[name]! - 1) ** 2, 0)
    );
  };
  const effortOf = (choice: readonly number[]): number =>
    choice.reduce((sum, option, index) => sum + options[index]![option]!.effort, 0);

  let best = names.map(() => 0);
  let bestError = errorOf(best);
  const consider = (choice: number[]): void => {
    const error = errorOf(choice);
    const easier = effortOf(choice) < effortOf(best);
    if (error < bestError - INDIFFERENT || (easier && error < bestError + INDIFFERENT)) {
      best = choice;
      bestError = error;
    }
  };
  const combinations = options.reduce((product, list) => product * list.length, 1);
  if (combinations <= MOST_COMBINATIONS) {
    for (let number = 1; number < combinations; number++) consider(digits(number, options));
  } else {
    for (const [index, list] of options.entries()) {
      for (const option of list.keys()) consider(best.with(index, option));
    }
  }
  return {
    chosen: Object.fromEntries(names.map((name, index) => [name, options[index]![best[index]!]!])),
    tooCoarse: Object.fromEntries(
      names.flatMap((name, index) => {
        const { tooCoarse } = ways[index]!;
        return tooCoarse === undefined ? [] : [[name, tooCoarse]];
      }),
    ),
    together: belongTogether(
      exact,
      gramsOf(best),
      names.filter((_, index) => BY_HAND.has(options[index]![best[index]!]!.tool)),
      colourError,
    ),
    deltaE: colourError(gramsOf(best)),
  };
}

const BY_HAND: ReadonlySet<Measure['tool']> = new Set(['drops', 'spoons']);

/** Whether somebody who weighs one of the amounts that go by hand exactly, and the others as chosen, sees the difference. */
function belongTogether(exact: Amounts, chosen: Amounts, byHand: readonly string[], colourError: ColourError): boolean {
  if (byHand.length < 2) return false;
  const allowed = colourError(chosen) + NOTICED;
  return byHand.some((name) => colourError({ ...chosen, [name]: exact[name]! }) > allowed);
}

/** The measures to choose from: those that come near; else the scale or the nearest, whichever is nearer. */
function waysToMeasure(
  grams: number,
  byHand: readonly Measure[],
  { scaleGrams }: Bench,
): { readonly options: readonly Measure[]; readonly tooCoarse?: Measure } {
  const near = byHand.filter((measure) => isNear(measure.grams, grams));
  if (near.length > 0) return { options: near.slice(0, 3) };
  const nearest = byHand[0]!;
  if (scaleGrams === undefined || nearest.tool === 'scale') return { options: [nearest] };
  const scale = weighed(grams, scaleGrams);
  return Math.abs(scale.grams - grams) < Math.abs(nearest.grams - grams)
    ? { options: [scale], tooCoarse: nearest }
    : { options: [nearest] };
}

/** The digits of a number whose places have as many values as each list is long. */
function digits(number: number, lists: readonly (readonly unknown[])[]): number[] {
  let rest = number;
  return lists.map((list) => {
    const digit = rest % list.length;
    rest = Math.floor(rest / list.length);
    return digit;
  });
}
