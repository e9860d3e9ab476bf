import { pouredAt } from '../../cup/heat-limit.ts';
import { inOrderOfWork } from '../../kinds/goes-in.ts';
import { required } from '../../values/required.ts';
import type { MatchMaterial } from './match-material.ts';

/**
 * Amounts in the order in which they go into a cup of these plastics, and of what goes in together first what there is most of, as a maker
 * begins with it.
 */
export function inPouringOrder<T extends { readonly material: string; readonly grams: number }>(
  amounts: readonly T[],
  plastics: readonly string[],
  shelf: ReadonlyMap<string, MatchMaterial>,
): readonly T[] {
  const mostFirst = [...amounts].sort(
    (one, other) => other.grams - one.grams || (one.material < other.material ? -1 : 1),
  );
  return inOrderOfWork(mostFirst, (id) => required(shelf, id), pouredAt(plastics.map((id) => required(shelf, id))));
}
