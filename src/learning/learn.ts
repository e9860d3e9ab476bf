import { fitTheta } from './fit-theta.ts';
import { learnedConstants } from './learned-constants.ts';
import { learnedOptics } from './learned-optics.ts';
import type { LearnedShelf } from './learned-shelf.ts';
import type { LearningData } from './learning-data.ts';
import { ShelfEquations } from './normal-equations.ts';
import { roundedTheta } from './rounded-theta.ts';
import { type ShelfProblem, shelfProblem } from './shelf-problem.ts';
import { shelfState } from './shelf-state.ts';
import { shelfUnknowns } from './shelf-unknowns.ts';
import { translatedTheta } from './translated-theta.ts';

/**
 * Learns a shelf: the values of all unknowns that are likeliest, from what the files say and from every look together.
 *
 * The same from any order and any start; with a start that is nearly right it is found sooner.
 * Throws: RangeError, naming it, if a look has a material that is not in the data, a dose is none, or two things have one name.
 */
export function learn(data: LearningData, start?: LearnedShelf): LearnedShelf {
  const problem = shelfProblem(data);
  const theta = roundedTheta(fitTheta(new ShelfEquations(problem), startOf(problem, start)));
  const state = shelfState(problem.unknowns, theta);
  return {
    data: problem.data,
    theta: Array.from(theta),
    weights: {
      looks: problem.data.looks.map(() => 1),
      cups: {},
      labels: Object.fromEntries(problem.data.materials.map(({ id, labels }) => [id, labels.map(() => 1)])),
    },
    optics: learnedOptics(state),
    constants: learnedConstants(state),
  };
}

function startOf({ unknowns }: ShelfProblem, start?: LearnedShelf): Float64Array {
  if (!start) return new Float64Array(unknowns.count);
  return translatedTheta(start.theta, shelfUnknowns(start.data), unknowns);
}
