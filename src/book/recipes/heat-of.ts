import type { CupHeat, HeatLimit } from '../../cup/heat-limit.ts';
import type { HeatsBorne } from '../../cup/heats-borne.ts';
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
  /** What bears fewest heats, of all whose maker or supplier says how many. */
  readonly bearsLeast?: { readonly materials: readonly string[]; readonly heats: number };
  /** Materials without a highest temperature on the shelf. */
  readonly unknown: readonly string[];
}

/** What the shelf says of the heat of a material. */
interface OnShelf {
  readonly working?: Range;
  readonly bears?: HeatsBorne;
}

type Named = { readonly material: string };

/** Heat of a recipe: the lowest limit of its cups, the range that they share, what bears fewest heats. */
export function heatOf(
  cups: readonly (CupHeat & { readonly plastics: readonly Named[]; readonly contents?: readonly Named[] })[],
  shelf: (material: string) => OnShelf | undefined,
): Heat {
  let limit: Heat['limit'];
  for (const cup of cups)
    if (cup.limit !== undefined && (limit === undefined || cup.limit.celsius < limit.celsius)) limit = cup.limit;
  const plastics = [...new Set(cups.flatMap((cup) => cup.plastics.map(({ material }) => material)))];
  const apart = plastics.map((plastic) => {
    return { plastic, ...defined({ working: shelf(plastic)?.working }) };
  });
  const shared = sharedRange(apart.map(({ working }) => working));
  return {
    ...defined({
      limit,
      bearsLeast: bearsLeast(
        cups.flatMap(({ contents = [], plastics: own }) => [...contents, ...own]),
        shelf,
      ),
    }),
    ...(shared === undefined ? { apart } : { working: shared, apart: [] }),
    unknown: [...new Set(cups.flatMap(({ limitUnknown }) => limitUnknown))],
  };
}

function bearsLeast(all: readonly Named[], shelf: (material: string) => OnShelf | undefined): Heat['bearsLeast'] {
  const stated = [...new Set(all.map(({ material }) => material))].flatMap((material) => {
    const { bears } = shelf(material) ?? {};
    return bears === undefined || bears.usual ? [] : [{ material, heats: bears.from }];
  });
  if (stated.length === 0) return undefined;
  const heats = Math.min(...stated.map((each) => each.heats));
  return { materials: stated.filter((each) => each.heats === heats).map(({ material }) => material), heats };
}
