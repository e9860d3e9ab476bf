import { cupVolume } from '../../cup/ledger.ts';
import { flakesPerMl, metFlake } from '../../optics/flake.ts';
import { seenCoverage } from '../../optics/seen-coverage.ts';
import type { Layer } from '../../optics/stack.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import type { SeenShelf } from '../shelf/match-material.ts';
import type { FlakeDose } from '../substitutes/flake-dose.ts';

/** A flake of a cup as it is seen in the bait. */
export interface CupFlake {
  readonly material: string;
  readonly title: string;
  /** Share of the face that is taken for it, and ΔE00 from the body: see `SeenFlake`. */
  readonly seen: number;
  readonly contrast: number;
  /** Share of the face that the target wants of it. */
  readonly wanted?: number;
  /** The cup takes no more of it, and that shows less than is wanted. */
  readonly atMost?: true;
  /** In a ml of the cup with everything in it. */
  readonly perMl: number;
}

/** What is wanted of the flakes of a cup, and how much of each that takes. */
export type FlakeDoses = ReadonlyMap<string, FlakeDose>;

// What is short of the wanted by less than this part of it is rounding, and not the cup.
const SHORT = 0.02;

/** What is seen of the flake in a cup, which is the nearest of the layers. */
export function cupFlakes(
  { plasticMl, amounts }: CupOfFlake,
  [own, ...behind]: readonly Layer[],
  { shelf, optics }: SeenShelf,
  doses?: FlakeDoses,
): readonly CupFlake[] {
  const there = amounts.flatMap(({ material, grams }) => {
    const { flake, title } = required(shelf, material);
    return flake && grams > 0 ? [{ material, title, flake, grams }] : [];
  });
  if (!own || there.length === 0) return [];
  const materials = Object.fromEntries(amounts.map(({ material, grams }) => [material, grams]));
  const volumeMl = cupVolume({ plastics: { plastic: plasticMl }, materials }, (id) => 1 / required(shelf, id).density);
  const met = there.map(({ flake, grams }) => metFlake(flake, grams / volumeMl));
  const layers = [{ ...own, flakes: met }, ...behind.map((layer) => ({ ...layer, flakes: [] }))];
  const [seen] = seenCoverage(layers, optics);
  return there.map(({ material, title, flake, grams }, index): CupFlake => {
    const { coverage, contrast } = seen![index]!;
    const dose = doses?.get(material);
    const atMost = dose && dose.seen < (1 - SHORT) * dose.wanted ? (true as const) : undefined;
    return {
      material,
      title,
      seen: coverage,
      contrast,
      ...defined({ wanted: dose?.wanted, atMost }),
      perMl: flakesPerMl(grams / volumeMl, flake),
    };
  });
}

interface CupOfFlake {
  readonly plasticMl: number;
  readonly amounts: readonly { readonly material: string; readonly grams: number }[];
}
