import type { Measure } from '../../cup/bench.ts';
import { inverseMetric, type LocalMetric, localMetric } from '../../optics/local-metric.ts';
import type { Ingredient } from '../measure/measure-doses.ts';
import type { Mix } from '../mix/mix.ts';
import type { MatchBench } from '../shelf/match-bench.ts';

/** How doses were measured; unset: as the bench usually would. */
export interface Measures {
  readonly toolOf?: (candidate: number) => Measure['tool'];
  /** Plastic in each cup then, ml; unset: scatter of weighed amounts counts as none. */
  readonly plasticMl?: readonly number[];
}

/** How the measures scatter the colours of some doses: each amount by itself. */
export interface DoseScatter {
  /** ΔE00, one standard deviation, in the view where it is largest. */
  readonly scatter: number;
  /** A column for each amount: what one standard deviation of it does to Lab, view by view. */
  readonly moves: readonly Float64Array[];
}

/** How far drops, spoons or the scale scatter the colours, by their slopes. */
export function doseScatter(
  {
    mix,
    ingredients,
    bench,
  }: { readonly mix: Mix; readonly ingredients: readonly Ingredient[]; readonly bench: MatchBench },
  doses: Float64Array,
  { toolOf, plasticMl }: Measures = {},
): DoseScatter {
  const measured = [...doses.keys()].filter((j) => doses[j]! > 0 && !ingredients[j]!.letsDown);
  if (measured.length === 0) return { scatter: 0, moves: [] };
  const { slopes } = mix.slopes(doses, measured);
  const squares = new Float64Array(mix.rows / 3);
  const back = mix.targets.map((target) => inverseMetric(localMetric(target)));
  const moves = measured.map((j) => {
    const { material, cup } = ingredients[j]!;
    const tool = toolOf?.(j) ?? (material.gramsPerDrop === undefined ? 'spoons' : 'drops');
    const by = doses[j]! * spreadOf(tool, bench, doses[j]! * (plasticMl?.[cup] ?? Number.POSITIVE_INFINITY));
    const moved = Float64Array.from({ length: mix.rows }, (_, row) => by * slopes[row * mix.count + j]!);
    for (let row = 0; row < mix.rows; row++) squares[Math.floor(row / 3)]! += moved[row]! ** 2;
    return inLab(moved, back);
  });
  return { scatter: Math.sqrt(Math.max(0, ...squares)), moves };
}

/** Steps that were counted in the metric of each view's target, in Lab. */
function inLab(moved: Float64Array, back: readonly LocalMetric[]): Float64Array {
  return Float64Array.from(moved, (_, row) => {
    const M = back[Math.floor(row / 3)]!;
    const from = row - (row % 3);
    return [0, 1, 2].reduce((sum, i) => sum + M[3 * (row % 3) + i]! * moved[from + i]!, 0);
  });
}

/** One standard deviation of an amount in g, as a part of it, by the hand that measures. */
function spreadOf(
  tool: Measure['tool'],
  { dropSpread, spoonSpread, scaleGrams, hand = 1 }: MatchBench,
  grams: number,
): number {
  switch (tool) {
    // What is weighed is off by up to half a step, evenly: a twelfth of its square.
    case 'scale':
      return scaleGrams === undefined ? 0 : scaleGrams / Math.sqrt(12) / grams;
    case 'drops':
      return hand * dropSpread;
    case 'spoons':
      return hand * spoonSpread;
    case 'none':
      return 0;
  }
}
