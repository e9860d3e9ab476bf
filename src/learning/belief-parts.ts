/**
 * A learned shelf made linear at its theta: all that `Belief` asks of it.
 *
 * @packageDocumentation
 */
import { compositionPoint } from './composition-point.ts';
import type { CompositionLooker } from './composition-views.ts';
import type { LearnedShelf } from './learned-shelf.ts';
import { type LinearLook, linearLooks } from './linear-views.ts';
import type { LookErrors } from './look-covariance.ts';
import { once } from './once.ts';
import { Posterior } from './posterior.ts';
import type { ThetaDoubt } from './sensitivity.ts';
import type { CupBlock, ShelfProblem } from './shelf-problem.ts';
import type { ShelfState } from './shelf-state.ts';

/** See the top of the file. */
export interface BeliefParts {
  readonly state: ShelfState;
  readonly looker: CompositionLooker;
  /** In the order of the shelf's data. */
  readonly looks: readonly LinearLook[];
  /** Found when it is asked for the first time. */
  readonly doubt: () => ThetaDoubt;
  /** `Posterior.factorOfLabels`, found when it is asked for the first time. */
  readonly labels: () => Float64Array;
}

/** The parts of a shelf. */
export function beliefParts(shelf: LearnedShelf): BeliefParts {
  const posterior = new Posterior(shelf);
  const { problem, state, looker, weights } = posterior;
  const looks = problem.cups.flatMap((cup) =>
    linearLooks(cup, posterior.residuals(cup), errorsOf(problem, cup), weights.looks),
  );
  return {
    state,
    looker,
    looks: looks.sort((one, other) => one.place! - other.place!),
    doubt: () => ({ inverse: posterior.covariance, count: state.theta.length }),
    labels: once(() => posterior.factorOfLabels()),
  };
}

function errorsOf({ unknowns }: ShelfProblem, { cup, looks }: CupBlock): readonly LookErrors[] {
  return looks.map(({ layers, streaks, axisSd, means }) => ({
    point: compositionPoint(unknowns, layers, streaks),
    cup,
    axisSd,
    means,
  }));
}
