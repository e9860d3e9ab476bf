/**
 * Fits in which what does not agree with the rest is believed less.
 *
 * @packageDocumentation
 */
import { fitWeights, type GroupWeights } from './believed-groups.ts';
import { CurvedBlocks } from './curved-block.ts';
import { fitTheta, SETTLED } from './fit-theta.ts';
import { groupTests } from './group-tests.ts';
import { withModelMetrics } from './model-metrics.ts';
import { ShelfEquations, type StraightLooks } from './normal-equations.ts';
import { robustWeights } from './robust-weights.ts';
import { roundedTheta } from './rounded-theta.ts';
import type { ShelfProblem } from './shelf-problem.ts';

// After so many fits the weights stand: what is false is not believed, and what it had made look false is again.
const REFITS = 4;
// After so many metrics are where they stay.
const LEAST_REFITS = 3;

/** As long as weights are only being found, this is near enough: in standard deviations. */
export const NEARLY = 1e-3;

/** What a fit has come to. */
export interface Fitted {
  readonly theta: Float64Array;
  readonly weights: GroupWeights;
}

/**
 * A fit in which what does not agree with the rest is believed less. Metrics are taken at the colours that were seen first, and at those of the
 * fit before from then on.
 */
export function robustFit(problem: ShelfProblem, start: Float64Array, settled: number = SETTLED): Fitted {
  let weights: GroupWeights = new Map();
  let theta = fitted(problem, weights, start, NEARLY);
  for (let refit = 1; refit <= REFITS; refit++) {
    const before = weights;
    const { measured, curved, ...tested } = testedAt(problem, theta, weights);
    weights = tested.weights;
    const stands = refit === REFITS || (refit >= LEAST_REFITS && sameWeights(weights, before));
    theta = fitted(measured, weights, theta, stands ? settled : NEARLY, undefined, curved);
    if (stands) break;
  }
  return { theta, weights };
}

/** The problem as it stands at a theta: with its metrics there, and how far what was seen is believed by what it is off by there. */
export function testedAt(
  problem: ShelfProblem,
  theta: Float64Array,
  before: GroupWeights,
): { readonly measured: ShelfProblem; readonly curved: CurvedBlocks; readonly weights: GroupWeights } {
  const measured = withModelMetrics(problem, theta);
  const curved = new CurvedBlocks(measured);
  return { measured, curved, weights: robustWeights(problem.data.looks, groupTests(measured, theta, before, curved)) };
}

/** The theta that costs least, rounded. */
export function fitted(
  problem: ShelfProblem,
  weights: GroupWeights,
  start: Float64Array,
  settled: number,
  straight?: StraightLooks,
  curved?: CurvedBlocks,
): Float64Array {
  const equations = new ShelfEquations(problem, fitWeights(problem, weights), straight, curved);
  return roundedTheta(fitTheta(equations, start, settled));
}

function sameWeights(one: GroupWeights, other: GroupWeights): boolean {
  return one.size === other.size && [...one].every(([name, weight]) => other.get(name) === weight);
}
