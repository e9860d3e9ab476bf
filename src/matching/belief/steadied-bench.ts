import type { MatchBench } from '../shelf/match-bench.ts';
import type { MatchMaterial } from '../shelf/match-material.ts';
import type { Beliefs } from './beliefs.ts';

/** A bench with the hand that looks have shown. Where there is a scale nobody knows what was weighed, and the hand is as usual. */
export function steadiedBench(
  bench: MatchBench,
  belief: Pick<Beliefs, 'hand'>,
  shelf: readonly Pick<MatchMaterial, 'id' | 'gramsPerDrop'>[],
): MatchBench {
  const { scaleGrams, drops, dropSpread, spoonSpread } = bench;
  if (scaleGrams !== undefined) return bench;
  const counted = new Set(shelf.flatMap(({ id, gramsPerDrop }) => (drops && gramsPerDrop !== undefined ? id : [])));
  return { ...bench, hand: belief.hand((id) => (counted.has(id) ? dropSpread : spoonSpread)) };
}
