import { type CupState, concentrations } from '../../cup/ledger.ts';
import { SORTS } from '../../kinds/together.ts';
import { required } from '../../values/required.ts';
import type { Ingredient } from '../measure/measure-doses.ts';
import type { MatchMaterial } from '../shelf/match-material.ts';
import { filledBy, fullness, plasticDensityOf, sortOf, type TogetherBound } from '../shelf/together.ts';
import type { JointBound } from './joint-bounds.ts';

/**
 * What may not be proposed together into cups as they are before anything is added, or what `check` would warn of: of each sort no more
 * than a cup takes, with what is in it already, which plastic thins.
 */
export function togetherBounds(
  cups: readonly CupState[],
  ingredients: readonly Ingredient[],
  shelf: ReadonlyMap<string, MatchMaterial>,
  bound: TogetherBound = 'never',
): readonly JointBound[] {
  return cups.flatMap((cup, index) => {
    const plasticDensity = plasticDensityOf(cup, shelf);
    const full = fullness(concentrations(cup), (name) => required(shelf, name), bound, plasticDensity);
    return SORTS.flatMap((sort): JointBound[] => {
      const already = full.get(sort) ?? 0;
      const weights = Float64Array.from(ingredients, ({ material, cup: into, letsDown }) => {
        if (into !== index) return 0;
        if (letsDown) return -already;
        return sortOf(material) === sort ? (filledBy(material, bound, plasticDensity) ?? 0) : 0;
      });
      return weights.some((weight) => weight > 0) ? [{ weights, most: Math.max(0, 1 - already) }] : [];
    });
  });
}
