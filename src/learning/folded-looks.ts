/**
 * Books with very many looks: which of them the fit goes by in full, and how the others are folded in.
 *
 * The rule: up to `MOST_IN_FULL` looks are all in full. Of more, whole cups are taken in the order of how seldom their rarest material (or
 * camera) is seen, then by name: first those with a material that is in fewer than `ENOUGH_OF_ONE` of the looks taken so far, then the others,
 * as long as there is room. The rest is believed by what these say of it, and its colours count as straight lines in theta, found anew where
 * the fit has moved to.
 *
 * @packageDocumentation
 */
import type { GroupWeights } from './believed-groups.ts';
import { fitWeights } from './believed-groups.ts';
import { CurvedBlocks } from './curved-block.ts';
import { factorizeSturdy } from './dense-cholesky.ts';
import { inverseDense } from './dense-inverse.ts';
import { cupTests, type GroupTest } from './group-tests.ts';
import { LeavingOut } from './left-out.ts';
import { withModelMetrics } from './model-metrics.ts';
import { ShelfEquations, type StraightLooks } from './normal-equations.ts';
import { robustWeights } from './robust-weights.ts';
import type { CupBlock, ShelfProblem } from './shelf-problem.ts';
import { shelfState } from './shelf-state.ts';

/** Looks that the fit goes by in full. Convention of this book: what one processor does in a second or two. */
export const MOST_IN_FULL = 600;
/** Looks of a material that say most of what looks can say of it. Convention of this book. */
const ENOUGH_OF_ONE = 40;
/** Weights within a cup hang on each other: so often they are found anew. */
const ROUNDS_OF_WEIGHTS = 3;

/** A problem in two. */
export interface FoldedProblem {
  /** The labels, and the cups in full. */
  readonly full: ShelfProblem;
  /** The other cups, and no label. */
  readonly folded: ShelfProblem;
}

/** Parts a problem by the rule at the top of the file. */
export function foldedProblem(problem: ShelfProblem): FoldedProblem {
  const taken = problem.data.looks.length > MOST_IN_FULL ? cupsInFull(problem) : new Set(problem.cups);
  return {
    full: { ...problem, cups: problem.cups.filter((cup) => taken.has(cup)) },
    folded: { ...problem, cups: problem.cups.filter((cup) => !taken.has(cup)), labels: [] },
  };
}

function cupsInFull({ cups }: ShelfProblem): ReadonlySet<CupBlock> {
  const named = new Map(cups.map((cup) => [cup, namesIn(cup)]));
  const seen = new Map<string, number>();
  for (const [cup, names] of named) for (const name of names) seen.set(name, (seen.get(name) ?? 0) + cup.looks.length);
  const rarest = (cup: CupBlock): number => Math.min(...named.get(cup)!.map((name) => seen.get(name)!));
  const inOrder = cups.map((cup) => ({ cup, rarity: rarest(cup) })).sort((one, other) => one.rarity - other.rarity);
  const taken = new Set<CupBlock>();
  const takenOf = new Map<string, number>();
  let looks = 0;
  const take = (wanted: (names: readonly string[]) => boolean): void => {
    for (const { cup } of inOrder) {
      const names = named.get(cup)!;
      if (taken.has(cup) || looks + cup.looks.length > MOST_IN_FULL || !wanted(names)) continue;
      taken.add(cup);
      looks += cup.looks.length;
      for (const name of names) takenOf.set(name, (takenOf.get(name) ?? 0) + cup.looks.length);
    }
  };
  take((names) => names.some((name) => (takenOf.get(name) ?? 0) < ENOUGH_OF_ONE));
  take(() => true);
  return taken;
}

/** Materials and cameras of a cup. */
function namesIn({ looks }: CupBlock): readonly string[] {
  const names = new Set<string>();
  for (const { layers, camera } of looks) {
    if (camera !== undefined) names.add(`camera ${camera}`);
    for (const { plastics, contents } of layers)
      for (const [id] of [...plastics, ...contents]) names.add(`material ${id}`);
  }
  return [...names];
}

/** How far the folded looks are believed, by what a fit of the others says of them. */
export function foldedWeights(
  { full, folded }: FoldedProblem,
  theta: Float64Array,
  weights: GroupWeights,
): GroupWeights {
  const n = theta.length;
  const H = new ShelfEquations(withModelMetrics(full, theta), fitWeights(full, weights)).at(theta, true).curvature!;
  factorizeSturdy(H, n);
  const covariance = inverseDense(H, n);
  const state = shelfState(full.unknowns, theta);
  const curved = new CurvedBlocks(folded);
  const leaving = (block: CupBlock, itemWeights: readonly number[]): LeavingOut =>
    new LeavingOut(curved.of(block, itemWeights), state, covariance, false);
  const all = new Map(weights);
  for (const block of withModelMetrics(folded, theta).cups) {
    let own: GroupWeights = new Map();
    for (let round = 0; round < ROUNDS_OF_WEIGHTS; round++) {
      const tests: readonly GroupTest[] = cupTests(block, own, leaving);
      own = robustWeights(block.looks, tests);
      if (own.size === 0) break;
    }
    for (const [name, weight] of own) all.set(name, weight);
  }
  return all;
}

/** The folded looks as straight lines from a theta on. */
export function straightLooks({ folded }: FoldedProblem, theta: Float64Array, weights: GroupWeights): StraightLooks {
  return new ShelfEquations(withModelMetrics(folded, theta), fitWeights(folded, weights)).straightFrom(theta);
}
