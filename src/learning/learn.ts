import { fitWeights, type GroupWeights, keptWeights } from './believed-groups.ts';
import { fitTheta, SETTLED } from './fit-theta.ts';
import { groupTests } from './group-tests.ts';
import { learnedConstants } from './learned-constants.ts';
import { learnedOptics } from './learned-optics.ts';
import type { LearnedShelf } from './learned-shelf.ts';
import type { LearningData } from './learning-data.ts';
import { ShelfEquations } from './normal-equations.ts';
import { robustWeights } from './robust-weights.ts';
import { roundedTheta } from './rounded-theta.ts';
import { type ShelfProblem, shelfProblem } from './shelf-problem.ts';
import { shelfState } from './shelf-state.ts';
import { startFromLabels } from './start-from-labels.ts';

// After so many fits the weights stand: what is false is not believed, and what it had made look false is again.
const REFITS = 4;

// As long as weights are only being found, this is near enough: in standard deviations.
const NEARLY = 1e-3;

/**
 * Learns a shelf: the values of all unknowns that are likeliest, from what the files say and from every look together.
 *
 * What does not agree with the rest is believed less (`robustWeights`), a look that was checked never.
 * The same from any order. It begins at what the labels say, and from nowhere else: where a false look is believed at first, what is
 * likeliest then may hang on the start.
 * Throws: RangeError, naming it, if a look has a material that is not in the data, a dose is none, or two things have one name.
 */
export function learn(data: LearningData): LearnedShelf {
  const problem = shelfProblem(data);
  let weights: GroupWeights = new Map();
  let theta = fitted(problem, weights, startFromLabels(problem), NEARLY);
  for (let refit = 1; refit <= REFITS; refit++) {
    const before = weights;
    weights = robustWeights(problem, groupTests(problem, theta, weights));
    const stands = refit === REFITS || sameWeights(weights, before);
    theta = fitted(problem, weights, theta, stands ? SETTLED : NEARLY);
    if (stands) break;
  }
  const state = shelfState(problem.unknowns, theta);
  return {
    data: problem.data,
    theta: Array.from(theta),
    weights: keptWeights(problem, weights),
    optics: learnedOptics(state),
    constants: learnedConstants(state),
  };
}

function fitted(problem: ShelfProblem, weights: GroupWeights, start: Float64Array, settled: number): Float64Array {
  return roundedTheta(fitTheta(new ShelfEquations(problem, fitWeights(problem, weights)), start, settled));
}

function sameWeights(one: GroupWeights, other: GroupWeights): boolean {
  return one.size === other.size && [...one].every(([name, weight]) => other.get(name) === weight);
}
