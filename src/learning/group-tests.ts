/**
 * Each look, each cup from some round on, and each label, held against all that else was seen.
 *
 * @packageDocumentation
 */
import {
  type BelievedGroup,
  cupWeights,
  doubtfulRounds,
  fitWeights,
  type GroupWeights,
  groupWeights,
  weightOf,
} from './believed-groups.ts';
import { CurvedBlocks } from './curved-block.ts';
import { factorizeSturdy } from './dense-cholesky.ts';
import { inverseDense } from './dense-inverse.ts';
import type { LearnedShelf } from './learned-shelf.ts';
import { LeavingOut, type Misfit } from './left-out.ts';
import { withModelMetrics } from './model-metrics.ts';
import { ShelfEquations } from './normal-equations.ts';
import { type CupBlock, type SeenBlock, type ShelfProblem, shelfProblem } from './shelf-problem.ts';
import { shelfState } from './shelf-state.ts';

/** How a group agrees with the rest when it is taken as noted, and how far it is believed: 1 as noted. */
export type GroupTest = BelievedGroup &
  Misfit & {
    readonly weight: number;
    /** What its weight goes by: chi²/dof, of a cup with each of its looks believed only as far as that look itself is. */
    readonly unlike: number;
  };

/** The tests of a learned shelf: those of its looks, of cups from some round on, and of labels. */
export function lookTests(shelf: LearnedShelf): readonly GroupTest[] {
  const theta = Float64Array.from(shelf.theta);
  const problem = withModelMetrics(shelfProblem(shelf.data), theta);
  return groupTests(problem, theta, groupWeights(problem, shelf.weights));
}

/** The same of a fit. */
export function groupTests(
  problem: ShelfProblem,
  theta: Float64Array,
  weights: GroupWeights,
  curved: CurvedBlocks = new CurvedBlocks(problem),
): readonly GroupTest[] {
  const n = theta.length;
  const all = fitWeights(problem, weights);
  const H = new ShelfEquations(problem, all, undefined, curved).at(theta, true).curvature!;
  factorizeSturdy(H, n);
  const covariance = inverseDense(H, n, seenTogether([...problem.cups, ...problem.labels], n));
  const state = shelfState(problem.unknowns, theta);
  const leaving = (block: SeenBlock, itemWeights: readonly number[]): LeavingOut =>
    new LeavingOut(curved.of(block, itemWeights), state, covariance);
  const ofLabels = problem.labels.map((block): GroupTest => {
    const group: BelievedGroup = { kind: 'label', material: block.material, index: block.index };
    const weight = weightOf(weights, group);
    const misfit = leaving(block, [weight]).misfit([0], [weight], [1]);
    return { ...group, ...misfit, weight, unlike: misfit.chi2 / misfit.dof };
  });
  return [...problem.cups.flatMap((block) => cupTests(block, weights, leaving)), ...ofLabels];
}

/** Which pairs of unknowns any block depends on: n × n, 1 in the lower triangle. */
function seenTogether(blocks: readonly SeenBlock[], n: number): Uint8Array {
  const pairs = new Uint8Array(n * n);
  for (const { columns } of blocks)
    for (let i = 0; i < columns.length; i++) for (let j = 0; j <= i; j++) pairs[columns[i]! * n + columns[j]!] = 1;
  return pairs;
}

/** The tests of a cup. */
export function cupTests(
  block: CupBlock,
  weights: GroupWeights,
  leaving: (block: CupBlock, itemWeights: readonly number[]) => LeavingOut,
): readonly GroupTest[] {
  const itemWeights = cupWeights(block, weights);
  const left = leaving(block, itemWeights);
  const noted = itemWeights.map(() => 1);
  const alone = block.looks.map(({ key }) => weightOf(weights, { kind: 'look', key }));
  return groupsOf(block).map(({ group, items }): GroupTest => {
    const misfit = left.misfit(items, itemWeights, noted);
    // What one of its looks can be blamed for is no fault of the cup.
    const hasBlame = group.kind === 'cup' && items.some((i) => alone[i]! < 1);
    const blamed = hasBlame ? left.misfit(items, itemWeights, alone) : misfit;
    return { ...group, ...misfit, weight: weightOf(weights, group), unlike: blamed.chi2 / blamed.dof };
  });
}

/** What of a cup may be false by itself, and the places of its looks. */
function groupsOf(block: CupBlock): readonly { readonly group: BelievedGroup; readonly items: readonly number[] }[] {
  const { cup, looks } = block;
  return [
    ...looks.map(({ key }, i) => ({ group: { kind: 'look', key } as const, items: [i] })),
    ...doubtfulRounds(block).map((round) => ({
      group: { kind: 'cup', cup, round } as const,
      items: looks.flatMap((look, i) => (look.round >= round ? i : [])),
    })),
  ];
}
