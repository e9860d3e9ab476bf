import type { CupState } from '../../cup/ledger.ts';
import type { MatchMaterial } from './match-material.ts';

/**
 * A bottle with those of its cuts that a cup can be given: what they are cut with is on the shelf, may be used, and is at home there: a plastic
 * of the cup, or an additive that takes its heat.
 *
 * @param pouredAt °C; undefined where the plastics do not say
 */
export function withUsableCuts(
  material: MatchMaterial,
  { plastics }: Pick<CupState, 'plastics'>,
  shelf: ReadonlyMap<string, MatchMaterial>,
  pouredAt: number | undefined,
  { inStock = false, without = [] }: { readonly inStock?: boolean; readonly without?: readonly string[] },
): MatchMaterial {
  const { cuts, ...others } = material;
  const usable = cuts?.filter((cut) => {
    const diluent = shelf.get(cut.with);
    if (!diluent || without.includes(cut.with) || without.includes(cut.id)) return false;
    if (diluent.kind === 'plastic' && !Object.hasOwn(plastics, cut.with)) return false;
    if (pouredAt !== undefined && diluent.highest !== undefined && diluent.highest < pouredAt) return false;
    return !(inStock && diluent.stockGrams !== undefined && diluent.stockGrams <= 0);
  });
  if (usable?.length === cuts?.length) return material;
  return usable === undefined || usable.length === 0 ? others : { ...others, cuts: usable };
}
