/**
 * What may be false by itself: a look, all that was noted of a cup from some round on, a label. And how far each is believed.
 *
 * @packageDocumentation
 */
import type { Weights } from './learned-shelf.ts';
import type { FitWeights } from './normal-equations.ts';
import type { CupBlock, ShelfProblem } from './shelf-problem.ts';

/** All looks of a cup from a round on. */
export interface CupFrom {
  readonly cup: string;
  readonly round: number;
}

/** One of them. */
export type BelievedGroup =
  | { readonly kind: 'look'; readonly key: string }
  | ({ readonly kind: 'cup' } & CupFrom)
  | { readonly kind: 'label'; readonly material: string; readonly index: number };

/** A name of a group that no other has. */
export function groupName(group: BelievedGroup): string {
  switch (group.kind) {
    case 'look':
      return JSON.stringify(['look', group.key]);
    case 'cup':
      return JSON.stringify(['cup', group.cup, group.round]);
    case 'label':
      return JSON.stringify(['label', group.material, group.index]);
  }
}

/** By `groupName`; what is not in it is believed as noted. */
export type GroupWeights = ReadonlyMap<string, number>;

/**
 * The rounds of a cup from which on all may be false together, rising.
 *
 * A single look is a group by itself already; and a look that was checked says that the log was right up to there.
 */
export function doubtfulRounds({ looks }: CupBlock): readonly number[] {
  const checked = Math.max(Number.NEGATIVE_INFINITY, ...looks.flatMap(({ checked, round }) => (checked ? round : [])));
  const rounds = [...new Set(looks.map(({ round }) => round))];
  return rounds.filter((from) => from > checked && looks.filter(({ round }) => round >= from).length > 1);
}

/** The weights of looks and labels that make up those of groups. */
export function fitWeights({ data, cups, labels }: ShelfProblem, weights: GroupWeights): FitWeights {
  const looks = new Float64Array(data.looks.length);
  for (const block of cups) {
    const product = cupWeights(block, weights);
    for (const [i, place] of block.places.entries()) looks[place] = product[i]!;
  }
  return {
    looks,
    labels: Float64Array.from(labels, ({ material, index }) => weightOf(weights, { kind: 'label', material, index })),
  };
}

/** How far each look of a cup is believed: its own weight times those of its cup from rounds up to its own. Rounded to three digits. */
export function cupWeights(block: CupBlock, weights: GroupWeights): readonly number[] {
  const { cup } = block;
  const fromRounds = doubtfulRounds(block).map((round) => ({
    round,
    weight: weightOf(weights, { kind: 'cup', cup, round }),
  }));
  return block.looks.map(({ key, round }) => {
    let product = weightOf(weights, { kind: 'look', key });
    for (const from of fromRounds) if (from.round <= round) product *= from.weight;
    return Number(Math.max(LEAST_TOGETHER, product).toPrecision(3));
  });
}

/** How far a group is believed. */
export function weightOf(weights: GroupWeights, group: BelievedGroup): number {
  return weights.get(groupName(group)) ?? 1;
}

/** What several weights make together at least: less tells nothing, and would only cost digits. */
const LEAST_TOGETHER = 1e-4;

/** Weights as a learned shelf keeps them. */
export function keptWeights(problem: ShelfProblem, weights: GroupWeights): Weights {
  const cups = problem.cups.flatMap((block) => {
    const rounds = doubtfulRounds(block).flatMap((round) => {
      const weight = weightOf(weights, { kind: 'cup', cup: block.cup, round });
      return weight < 1 ? [[round, weight] as const] : [];
    });
    return rounds.length > 0 ? [[block.cup, Object.fromEntries(rounds)] as const] : [];
  });
  return {
    looks: Array.from(fitWeights(problem, weights).looks),
    looksAlone: problem.data.looks.map(({ key }) => weightOf(weights, { kind: 'look', key })),
    cups: Object.fromEntries(cups),
    labels: Object.fromEntries(
      problem.data.materials.map(({ id, labels }) => [
        id,
        labels.map((_, index) => weightOf(weights, { kind: 'label', material: id, index })),
      ]),
    ),
  };
}

/** The weights of groups that a learned shelf has kept. */
export function groupWeights(
  { data }: Pick<ShelfProblem, 'data'>,
  { looksAlone, cups, labels }: Weights,
): GroupWeights {
  const weights = new Map<string, number>();
  for (const [i, { key }] of data.looks.entries())
    if (looksAlone[i]! < 1) weights.set(groupName({ kind: 'look', key }), looksAlone[i]!);
  for (const [cup, rounds] of Object.entries(cups))
    for (const [round, weight] of Object.entries(rounds))
      weights.set(groupName({ kind: 'cup', cup, round: Number(round) }), weight);
  for (const [material, each] of Object.entries(labels))
    for (const [index, weight] of each.entries())
      if (weight < 1) weights.set(groupName({ kind: 'label', material, index }), weight);
  return weights;
}
