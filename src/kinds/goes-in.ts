import { ADDITIVE_USES, type AdditiveUse } from './additive-uses.ts';
import { MATERIAL_KINDS, type MaterialKind } from './kinds.ts';

/** When a material goes into a cup, the first first. */
const STAGES = ['cold', 'wetted', 'stirred-in', 'sinks', 'off-heat'] as const;

export type Stage = (typeof STAGES)[number];

/** What hangs on a material when it goes in. */
export interface GoingIn {
  readonly kind: MaterialKind;
  readonly use?: AdditiveUse;
  /** Absent for what is not a liquid. */
  readonly gramsPerDrop?: number;
  /** °C */
  readonly highest?: number;
}

/**
 * When a material goes into a cup. What its file does not say the use of goes in cold where it is a liquid, and with what sinks where it is not;
 * what bears less than the plastic is poured at waits until it has melted, or is off the heat.
 *
 * @param pouredAt of the cup's plastics, °C
 */
export function stageOf({ kind, use, gramsPerDrop, highest }: GoingIn, pouredAt: number): Stage {
  const bearsLess = highest !== undefined && highest < pouredAt;
  const { goesIn } = MATERIAL_KINDS[kind];
  switch (goesIn) {
    case 'first':
    case 'stirred-in':
      return 'stirred-in';
    case 'wetted':
      return bearsLess ? 'stirred-in' : 'wetted';
    case 'sinks':
      return 'sinks';
    case 'by-use':
      if (use !== undefined) return ADDITIVE_USES[use].goesIn;
      if (gramsPerDrop === undefined) return 'sinks';
      return bearsLess ? 'off-heat' : 'cold';
  }
}

/** Amounts in the order in which they go into a cup. */
export function inOrderOfWork<T extends { readonly material: string }>(
  amounts: readonly T[],
  materialOf: (id: string) => GoingIn,
  pouredAt: number,
): readonly T[] {
  const place = ({ material }: T): number => STAGES.indexOf(stageOf(materialOf(material), pouredAt));
  return [...amounts].sort((one, other) => place(one) - place(other));
}
