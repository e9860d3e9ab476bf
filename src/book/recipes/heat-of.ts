import type { CupHeat, HeatLimit } from '../../cup/heat-limit.ts';
import { type Range, sharedRange } from '../../units/shared-range.ts';
import { defined } from '../../values/defined.ts';

/** The heat that a recipe's cups can take together. */
export interface Heat {
  /** Lowest limit of its cups. */
  readonly limit?: HeatLimit;
  /** Pouring range that all its plastics share. */
  readonly working?: Range;
  /** Its plastics where they share none: each with the supplier's range, or without one. */
  readonly apart: readonly { readonly plastic: string; readonly working?: Range }[];
  /** Materials without a highest temperature on the shelf. */
  readonly unknown: readonly string[];
}

/** Heat of a recipe: the lowest limit of its cups, the range that they share. */
export function heatOf(
  cups: readonly (CupHeat & { readonly plastics: readonly { readonly material: string }[] })[],
  rangeOf: (plastic: string) => Range | undefined,
): Heat {
  let limit: Heat['limit'];
  for (const cup of cups)
    if (cup.limit !== undefined && (limit === undefined || cup.limit.celsius < limit.celsius)) limit = cup.limit;
  const plastics = [...new Set(cups.flatMap((cup) => cup.plastics.map(({ material }) => material)))];
  const apart = plastics.map((plastic) => {
    const working = rangeOf(plastic);
    return { plastic, ...defined({ working }) };
  });
  const shared = sharedRange(apart.map(({ working }) => working));
  return {
    ...defined({ limit }),
    ...(shared === undefined ? { apart } : { working: shared, apart: [] }),
    unknown: [...new Set(cups.flatMap(({ limitUnknown }) => limitUnknown))],
  };
}
