import { flakeOf } from '../substitutes/flake-match.ts';
import type { MatchMaterial } from './match-material.ts';
import type { AdditionLimits } from './usable-materials.ts';

/** The flakes of a shelf that may be proposed: none that is fluorescent where nothing else is to be, and, where only stock is asked for, none that has run out. */
export function usableFlakes(
  shelf: Iterable<MatchMaterial>,
  { inStock = false, effects = [] }: Pick<AdditionLimits, 'inStock' | 'effects'> = {},
): readonly MatchMaterial[] {
  const glows = effects.includes('fluorescent');
  return [...shelf].filter((material) => {
    const { stockGrams } = material;
    const flake = flakeOf(material);
    return (
      flake !== undefined &&
      (glows || flake.finish !== 'fluorescent') &&
      (!inStock || stockGrams === undefined || stockGrams > 0)
    );
  });
}
