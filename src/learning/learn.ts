import { fitWeights, type GroupWeights, keptWeights } from './believed-groups.ts';
import { CurvedBlocks } from './curved-block.ts';
import { fitTheta, SETTLED } from './fit-theta.ts';
import { foldedProblem, foldedWeights, straightLooks } from './folded-looks.ts';
import { groupTests } from './group-tests.ts';
import { learnedConstants } from './learned-constants.ts';
import { learnedOptics } from './learned-optics.ts';
import type { LearnedShelf } from './learned-shelf.ts';
import type { LearningData } from './learning-data.ts';
import { withModelMetrics } from './model-metrics.ts';
import { ShelfEquations, type StraightLooks } from './normal-equations.ts';
import { robustWeights } from './robust-weights.ts';
import { roundedTheta } from './rounded-theta.ts';
import { type ShelfProblem, shelfProblem } from './shelf-problem.ts';
import { shelfState } from './shelf-state.ts';
import { startFromLabels } from './start-from-labels.ts';

// After so many fits the weights stand: what is false is not believed, and what it had made look false is again.
const REFITS = 4;
// After so many metrics are where they stay.
const LEAST_REFITS = 3;

// As long as weights are only being found, this is near enough: in standard deviations.
const NEARLY = 1e-3;

// So often the straight lines of folded looks are found, each time where the last fit has led.
const FOLDS = 3;

/**
 * Learns a shelf: the values of all unknowns that are likeliest, from what the files say and from every look together.
 *
 * What does not agree with the rest is believed less (`robustWeights`), a look that was checked never.
 * Of very many looks some are folded in: see `folded-looks.ts`.
 * The same from any order. It begins at what the labels say, and from nowhere else: where a false look is believed at first, what is
 * likeliest then may hang on the start.
 * Throws: RangeError, naming it, if a look has a material that is not in the data, a dose is none, or two things have one name.
 */
export function learn(data: LearningData): LearnedShelf {
  const problem = shelfProblem(data);
  const parts = foldedProblem(problem);
  const isFolded = parts.folded.cups.length > 0;
  let { theta, weights } = robustFit(parts.full, isFolded ? NEARLY : SETTLED);
  if (isFolded) {
    weights = foldedWeights(parts, theta, weights);
    for (let pass = 1; pass <= FOLDS; pass++)
      theta = fitted(
        withModelMetrics(parts.full, theta),
        weights,
        theta,
        pass === FOLDS ? SETTLED : NEARLY,
        straightLooks(parts, theta, weights),
      );
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

/**
 * A fit in which what does not agree with the rest is believed less. Metrics are taken at the colours that were seen first, and at those of the
 * fit before from then on.
 */
function robustFit(problem: ShelfProblem, settled: number): { theta: Float64Array; weights: GroupWeights } {
  let weights: GroupWeights = new Map();
  let theta = fitted(problem, weights, startFromLabels(problem), NEARLY);
  for (let refit = 1; refit <= REFITS; refit++) {
    const before = weights;
    const measured = withModelMetrics(problem, theta);
    const curved = new CurvedBlocks(measured);
    weights = robustWeights(problem.data.looks, groupTests(measured, theta, weights, curved));
    const stands = refit === REFITS || (refit >= LEAST_REFITS && sameWeights(weights, before));
    theta = fitted(measured, weights, theta, stands ? settled : NEARLY, undefined, curved);
    if (stands) break;
  }
  return { theta, weights };
}

function fitted(
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
