import { type Amounts, type CupState, total } from '../../cup/ledger.ts';
import { ADDITIVE_USES, type AdditiveUse } from '../../kinds/additive-uses.ts';
import type { MaterialKind } from '../../kinds/kinds.ts';
import { type Sort, sortOf, TOGETHER } from '../../kinds/together.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';

export { type Sort, sortOf } from '../../kinds/together.ts';

/** What is to be known of a material to count it together with others. */
export interface Counted {
  readonly kind: MaterialKind;
  readonly use?: AdditiveUse;
  /** g/ml */
  readonly density: number;
  /** What its file allows, g per ml of plastic. */
  readonly most?: number;
}

/** Which of the two bounds is meant: that beyond which a cup is warned of, or that beyond which nothing is proposed. */
export type TogetherBound = 'warned' | 'never';

/**
 * The part of what a cup takes of its sort that 1 g/ml of a material fills; undefined of what is counted with nothing. What the
 * material's own file allows stands above the bound of its sort: so much of it alone fills the cup.
 *
 * @param plasticDensity g/ml
 */
export function filledBy(material: Counted, bound: TogetherBound, plasticDensity: number): number | undefined {
  const sort = sortOf(material);
  if (sort === undefined) return undefined;
  const { by, [bound]: part } = TOGETHER[sort];
  if (part === undefined) return undefined;
  const most = part * (by === 'volume' ? material.density : plasticDensity);
  return 1 / Math.max(most, material.most ?? 0);
}

// Of an additive that says nothing of itself: a liquid may be softener, and salt is heavy. Common practice, no source.
const MOST_OF_ANYTHING = 0.67;

/**
 * Most of a material whose file has no `most`, g per ml of plastic: as of its sort together.
 *
 * @param plasticDensity g/ml
 */
export function usualMost({ kind, use, density }: Counted, plasticDensity: number): number {
  const filled = filledBy({ kind, density, ...defined({ use }) }, 'warned', plasticDensity);
  if (filled !== undefined) return 1 / filled;
  const { most = MOST_OF_ANYTHING } = use === undefined ? {} : ADDITIVE_USES[use];
  return most * plasticDensity;
}

/** How full contents, g/ml, are of each sort that is in them: 1 is all that a cup takes. */
export function fullness(
  contents: Amounts,
  materialOf: (name: string) => Counted,
  bound: TogetherBound,
  plasticDensity: number,
): ReadonlyMap<Sort, number> {
  const full = new Map<Sort, number>();
  for (const [name, dose] of Object.entries(contents)) {
    const material = materialOf(name);
    const sort = sortOf(material);
    const filled = filledBy(material, bound, plasticDensity);
    if (sort === undefined || filled === undefined) continue;
    full.set(sort, (full.get(sort) ?? 0) + dose * filled);
  }
  return full;
}

/** g/ml of the plastic that a cup is of. */
export function plasticDensityOf(
  { plastics }: CupState,
  shelf: ReadonlyMap<string, { readonly density: number }>,
): number {
  const ml = total(plastics);
  return Object.entries(plastics).reduce((sum, [name, part]) => sum + (part / ml) * required(shelf, name).density, 0);
}
