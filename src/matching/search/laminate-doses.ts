import type { JointBound } from '../mix/joint-bounds.ts';
import { Mix } from '../mix/mix.ts';
import type { MixCandidate, MixCup, MixProblem } from '../mix/mix-problem.ts';
import { type FoundDoses, findDoses } from './find-doses.ts';
import { refineDoses } from './refine-doses.ts';

// Sets of each side that are tried with sets of the other.
const SETS = 5;
const ROUNDS = 2;

/**
 * Doses for two cups that are seen through one another, found together: each side's sets with the other side held, in turn, and then
 * the best of both in every pairing, both sides' doses at once.
 *
 * @param problem two cups, and candidates for both
 * @param start K and S of each cup to begin with, per mm
 * @param size most materials in each cup
 * @param among candidates of each of which some sets are worked out as well (see `findDoses`)
 */
export function laminateDoses(
  problem: MixProblem,
  start: readonly MixCup[],
  size: number,
  among: readonly number[] = [],
): readonly FoundDoses[] {
  const mix = new Mix(problem);
  const sides = [0, 1].map((cup) => problem.candidates.flatMap((candidate, j) => (candidate.cup === cup ? [j] : [])));
  const held = [...start];
  const found: (readonly FoundDoses[])[] = [[], []];
  for (let round = 0; round < ROUNDS; round++) {
    for (const cup of [0, 1]) {
      const others = [...held];
      others[cup] = problem.cups[cup]!;
      const columns = sides[cup]!.map((j) => problem.candidates[j]! as MixCandidate);
      // Until the other side is more than a guess, only what this side shows is asked.
      const goals = round === 0 && cup === 0 ? problem.goals.slice(0, 1) : problem.goals;
      const together = boundsOf(problem, sides[cup]!);
      const side = new Mix({ cups: others, goals, candidates: columns, optics: problem.optics, together });
      const place = [...others];
      place[cup] = held[cup]!;
      found[cup] = findDoses(side, [place], {
        size,
        keep: 5,
        among: sides[cup]!.flatMap((j, at) => (among.includes(j) ? [at] : [])),
      });
      const [best] = found[cup]!;
      if (best) held[cup] = side.cupsWith(best.doses)[cup]!;
    }
  }
  const tried: FoundDoses[] = [];
  for (const near of found[0]!.slice(0, SETS)) {
    for (const far of found[1]!.slice(0, SETS)) {
      const doses = new Float64Array(mix.count);
      for (const i of near.set) doses[sides[0]![i]!] = near.doses[i]!;
      for (const i of far.set) doses[sides[1]![i]!] = far.doses[i]!;
      const set = [...near.set.map((i) => sides[0]![i]!), ...far.set.map((i) => sides[1]![i]!)];
      const refined = refineDoses(mix, set, doses).doses;
      tried.push({ set: set.filter((j) => refined[j]! > 0), doses: refined, score: mix.score(refined) });
    }
  }
  return tried.sort((one, other) => one.score - other.score);
}

/** The bounds of a problem on some of its candidates, where they concern them. */
function boundsOf({ together = [] }: MixProblem, columns: readonly number[]): readonly JointBound[] {
  return together.flatMap(({ weights, most }) => {
    const own = Float64Array.from(columns, (j) => weights[j]!);
    return own.some((weight) => weight > 0) ? [{ weights: own, most }] : [];
  });
}
