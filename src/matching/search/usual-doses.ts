import { excess } from '../mix/joint-bounds.ts';
import { Mix } from '../mix/mix.ts';
import type { MixProblem } from '../mix/mix-problem.ts';
import type { FoundDoses } from './find-doses.ts';
import { refineDoses } from './refine-doses.ts';

/**
 * Doses that go beyond what cups usually hold, brought back within it where that stays within tolerance: the last tenth of a difference
 * is not worth a cup that `check` warns of. All others stay as they are.
 */
export function usualDoses(
  found: readonly FoundDoses[],
  problem: MixProblem,
  tolerance: number,
): readonly FoundDoses[] {
  const { usual = [] } = problem;
  let mix: Mix | undefined;
  const less = found.map((each) => {
    if (excess(usual, each.doses) === 0) return each;
    mix ??= new Mix({ ...problem, together: usual });
    const { doses } = refineDoses(mix, each.set, each.doses);
    if (excess(usual, doses) > 0 || mix.worst(doses) > tolerance) return each;
    return { set: each.set.filter((j) => doses[j]! > 0), doses, score: mix.score(doses) };
  });
  return less.filter(({ set }) => set.length > 0).sort((one, other) => one.score - other.score);
}
