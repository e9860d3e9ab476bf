import type { Bench, BenchMaterial, Measure } from './bench.ts';
import { cutMeasures, isMeasurable, weighedOf } from './cut-measures.ts';
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

/** What weighing must gain before drops and spoons are put away for it, ΔE00: a convention of this book. */
export const WORTH_WEIGHING = 0.5;

/** How the amounts of a cup are measured. */
export interface MeasuredAmounts {
  /** The measure of each material. */
  readonly chosen: Readonly<Record<string, Measure>>;
  /** Drops or spoons that come near no amount, and which the scale or a cut stands in for. */
  readonly tooCoarse: Readonly<Record<string, Measure>>;
  /** Whether one measure makes up for another. */
  readonly together: boolean;
  /** Colour error that is left, ΔE00. */
  readonly deltaE: number;
  /** What drops and spoons alone would leave, ΔE00, where something is weighed for the colour's sake. */
  readonly byHandDeltaE?: number;
}

/**
 * Rounds the amounts of one cup to what the bench can measure, together, for the least colour error.
 *
 * Rounding each to its nearest would let errors add up; here one may be rounded away from its nearest to make up for another,
 * but never out of what is near. An amount that neither drops nor spoons come near is weighed where there is a scale. Where
 * they all come near and the colour still comes out off, the fewest amounts are weighed that mend it.
 *
 * @param exact grams of each material in one cup
 * @param tolerance ΔE00 that the maker allows
 */
export function measuredAmounts(
  exact: Amounts,
  material: (name: string) => BenchMaterial,
  bench: Bench,
  colourError: ColourError,
  tolerance: number = Number.POSITIVE_INFINITY,
): MeasuredAmounts {
  const names = Object.keys(exact).sort();
  const ways = names.map((name) => waysToMeasure(exact[name]!, material(name), bench));
  const straight = bestMeasures(
    names.map((name, index) => ({ name, options: ways[index]!.options })),
    exact,
    colourError,
  );
  const byHand = withCuts(straight, exact, material, bench, colourError, tolerance);
  const best = withScale(byHand, exact, material, bench, colourError, tolerance);
  return {
    chosen: Object.fromEntries(best.rows.map(({ name, measure }) => [name, measure])),
    tooCoarse: Object.fromEntries(
      names.flatMap((name, index) => {
        const { tooCoarse } = ways[index]!;
        return tooCoarse === undefined ? [] : [[name, tooCoarse]];
      }),
    ),
    together: belongTogether(best, exact, colourError),
    deltaE: best.deltaE,
    ...(best === byHand ? {} : { byHandDeltaE: byHand.deltaE }),
  };
}

/** A material with the measures to choose from, the nearest first. */
interface Choice {
  readonly name: string;
  readonly options: readonly Measure[];
}

/** Measures that were chosen together, and the colour error that they leave, ΔE00. */
interface Chosen {
  readonly rows: readonly (Choice & { readonly measure: Measure })[];
  readonly deltaE: number;
}

/** Grams of each material as measured. */
function gramsOf({ rows }: Pick<Chosen, 'rows'>): Amounts {
  return Object.fromEntries(rows.map(({ name, measure }) => [name, measure.grams]));
}

/** Of all measures of each material, those that together leave the least error with the least effort. */
function bestMeasures(choices: readonly Choice[], exact: Amounts, colourError: ColourError): Chosen {
  const options = choices.map((choice) => choice.options);
  const rowsOf = (choice: readonly number[]): Chosen['rows'] =>
    choices.map((each, index) => ({ ...each, measure: each.options[choice[index]!]! }));
  const errorOf = (choice: readonly number[]): number => {
    const grams = gramsOf({ rows: rowsOf(choice) });
    return (
      colourError(grams) +
      AMISS * choices.reduce((sum, { name }) => sum + Math.abs(grams[name]! / exact[name]! - 1) ** 2, 0)
    );
  };
  const effortOf = (choice: readonly number[]): number =>
    choice.reduce((sum, option, index) => sum + options[index]![option]!.effort, 0);

  let best = choices.map(() => 0);
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
  const rows = rowsOf(best);
  return { rows, deltaE: colourError(gramsOf({ rows })) };
}

/** The same with one amount after another counted of its cut instead, that which gains most first, until the colour is right or nothing gains. */
function withCuts(
  straight: Chosen,
  exact: Amounts,
  material: (name: string) => BenchMaterial,
  bench: Bench,
  colourError: ColourError,
  tolerance: number,
): Chosen {
  const byCut = new Map(
    straight.rows.map(({ name }) => [name, cutMeasures(exact[name]!, material(name).cuts ?? [], bench)] as const),
  );
  return improved(
    straight,
    Math.min(tolerance, tolerance / 2 + WORTH_WEIGHING),
    (row) => {
      const options = row.measure.cut ? [] : (byCut.get(row.name) ?? []);
      return options.length === 0 ? undefined : { ...row, options: options.slice(0, 3) };
    },
    exact,
    colourError,
  );
}

/** The same with one amount after another weighed instead, that which gains most first, until the colour is right or nothing gains. */
function withScale(
  byHand: Chosen,
  exact: Amounts,
  material: (name: string) => BenchMaterial,
  { scaleGrams }: Bench,
  colourError: ColourError,
  tolerance: number,
): Chosen {
  if (scaleGrams === undefined) return byHand;
  const onScale = (choice: Choice): Choice => ({
    ...choice,
    options: [weighedOf(exact[choice.name]!, material(choice.name).cuts ?? [], scaleGrams)],
  });
  const least = bestMeasures(byHand.rows.map(onScale), exact, colourError).deltaE;
  const enough = Math.max(least, Math.min(tolerance, Math.max(least, tolerance / 2) + WORTH_WEIGHING));
  return improved(
    byHand,
    enough,
    (row) => (BY_HAND.has(row.measure.tool) ? onScale(row) : undefined),
    exact,
    colourError,
  );
}

/** What was chosen, with one amount after another measured otherwise, that which gains most first, until it is near enough or nothing gains. */
function improved(
  chosen: Chosen,
  enough: number,
  otherwise: (row: Chosen['rows'][number]) => Choice | undefined,
  exact: Amounts,
  colourError: ColourError,
): Chosen {
  let best = chosen;
  while (best.deltaE > enough) {
    const tried = best.rows.flatMap((row) => {
      const other = otherwise(row);
      return other === undefined
        ? []
        : [
            bestMeasures(
              best.rows.map((each) => (each === row ? other : each)),
              exact,
              colourError,
            ),
          ];
    });
    const next = tried.reduce((one, other) => (other.deltaE < one.deltaE ? other : one), best);
    if (next.deltaE > best.deltaE - INDIFFERENT) break;
    best = next;
  }
  return best;
}

const BY_HAND: ReadonlySet<Measure['tool']> = new Set(['drops', 'spoons']);

/**
 * Whether one measure makes up for another: an amount that goes by hand stands off its nearest measure for the colour's sake, or
 * somebody who weighs one of them exactly, and the others as chosen, sees the difference.
 */
function belongTogether(chosen: Chosen, exact: Amounts, colourError: ColourError): boolean {
  const byHand = chosen.rows.filter(({ measure }) => BY_HAND.has(measure.tool));
  if (byHand.length < 2) return false;
  const instead = (name: string, grams: number): number => colourError({ ...gramsOf(chosen), [name]: grams });
  return byHand.some(
    ({ name, options, measure }) =>
      instead(name, exact[name]!) > chosen.deltaE + NOTICED ||
      (measure !== options[0] && instead(name, options[0]!.grams) > chosen.deltaE + INDIFFERENT),
  );
}

/** How a bench measures an amount by itself, g. */
export function nearestMeasure(grams: number, material: BenchMaterial, bench: Bench): Measure {
  return waysToMeasure(grams, material, bench).options[0]!;
}

/** The measures to choose from: those that come near; else those of a cut; else the scale or the nearest, whichever is nearer. */
function waysToMeasure(
  grams: number,
  material: BenchMaterial,
  bench: Bench,
): { readonly options: readonly Measure[]; readonly tooCoarse?: Measure } {
  const { scaleGrams } = bench;
  const byHand = measures(grams, material, bench);
  const near = byHand.filter((measure) => isNear(measure.grams, grams));
  const nearest = byHand[0]!;
  const byCut = isMeasurable(grams, byHand, bench) ? [] : cutMeasures(grams, material.cuts ?? [], bench);
  if (byCut.length > 0) return { options: byCut.slice(0, 3), tooCoarse: nearest };
  if (near.length > 0) return { options: near.slice(0, 3) };
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
