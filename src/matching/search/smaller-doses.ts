import type { Ingredient } from '../measure/measure-doses.ts';
import type { FoundDoses } from './find-doses.ts';

/** Parts of an addition that are thought of: of a bottle that is hardly known, half a dose may be the better bet. */
const PARTS = [0.75, 0.5] as const;

/** Three quarters, and half, of the amounts of a set; the score stays that of the whole. */
export function smallerDoses(found: FoundDoses, ingredients: readonly Ingredient[]): readonly FoundDoses[] {
  return PARTS.map((part) => ({ ...found, doses: partOfAmounts(found, ingredients, part) }));
}

/** Doses are per ml of the plastic that is in the cup then, and of plastic the share of it. */
function partOfAmounts({ set, doses }: FoundDoses, ingredients: readonly Ingredient[], part: number): Float64Array {
  const less = new Float64Array(doses.length);
  const grown = (cup: number): number => {
    const plastic = set.find((j) => ingredients[j]!.letsDown && ingredients[j]!.cup === cup);
    return plastic === undefined ? 0 : doses[plastic]! / (1 - doses[plastic]!);
  };
  for (const j of set) {
    const { cup, letsDown } = ingredients[j]!;
    const more = grown(cup);
    less[j] = letsDown ? (part * more) / (1 + part * more) : (part * doses[j]! * (1 + more)) / (1 + part * more);
  }
  return less;
}
