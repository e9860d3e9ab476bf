import { type GroupWeights, keptWeights } from './believed-groups.ts';
import { SETTLED } from './fit-theta.ts';
import { foldedProblem, foldedWeights, straightLooks } from './folded-looks.ts';
import { learnedConstants } from './learned-constants.ts';
import { learnedOptics } from './learned-optics.ts';
import type { LearnedShelf } from './learned-shelf.ts';
import type { LearningData } from './learning-data.ts';
import { withModelMetrics } from './model-metrics.ts';
import { fitted, NEARLY, robustFit } from './robust-fit.ts';
import { type ShelfProblem, shelfProblem } from './shelf-problem.ts';
import { shelfState } from './shelf-state.ts';
import { startFromLabels } from './start-from-labels.ts';

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
  let { theta, weights } = robustFit(parts.full, startFromLabels(parts.full), isFolded ? NEARLY : SETTLED);
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
  return shelfOf(problem, theta, weights);
}

/** A fit as a learned shelf keeps it. */
export function shelfOf(problem: ShelfProblem, theta: Float64Array, weights: GroupWeights): LearnedShelf {
  const state = shelfState(problem.unknowns, theta);
  return {
    data: problem.data,
    theta: Array.from(theta),
    weights: keptWeights(problem, weights),
    optics: learnedOptics(state),
    constants: learnedConstants(state),
  };
}
