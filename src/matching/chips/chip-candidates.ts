import type { Bench, Measure } from '../../cup/bench.ts';
import { measures } from '../../cup/measures.ts';
import { MATERIAL_KINDS } from '../../kinds/kinds.ts';
import { formatDecimal } from '../../units/format-quantity.ts';
import type { MatchMaterial } from '../shelf/match-material.ts';

/** What goes into a chip of one material. */
export interface ChipDose {
  readonly material: string;
  readonly measure: Measure;
  /** As a file has it. */
  readonly written: string;
}

/** A chip that could be poured. */
export interface ChipToPour {
  readonly plasticMl: number;
  readonly thicknessMm: number;
  /** What the chip is of: one bottle, and the white that goes with it, if any does; or two bottles. */
  readonly doses: readonly ChipDose[];
}

/** What of a material a chip hangs on. */
export type ChipMaterial = Pick<
  MatchMaterial,
  'id' | 'kind' | 'typical' | 'most' | 'effect' | 'stockGrams' | 'gramsPerMl' | 'gramsPerDrop'
>;

/** What chips are poured with. */
export interface ChipShelf {
  /** Materials that have K and S. */
  readonly shelf: readonly ChipMaterial[];
  /** What is added where a chip is to be cloudy. Unset: nothing. */
  readonly white?: string;
  readonly bench: Bench;
  readonly plasticMl: number;
  readonly thicknessMm: number;
}

// Parts of the usual dose: of strong bottles less than a quarter teaches most (our own study on simulated benches).
const PARTS = [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1];

// Of the usual dose of a white: a drop or so, and enough to make a chip cloudy.
const WHITE_PARTS = [1 / 20, 3 / 20];

/**
 * Every chip that the bench can measure out: each colouring material that is there, alone and with a white, from one drop or the
 * smallest spoon to its usual dose. In the order of the names.
 */
export function chipCandidates({ shelf, white, bench, plasticMl, thicknessMm }: ChipShelf): readonly ChipToPour[] {
  const there = shelf
    .filter((material) => isChipMaterial(material) && material.stockGrams !== 0)
    .sort((one, other) => (one.id < other.id ? -1 : 1));
  const whitener = there.find(({ id }) => id === white);
  const whites = whitener === undefined ? [] : dosesOf(whitener, WHITE_PARTS, bench, plasticMl);
  return there.flatMap((material) =>
    dosesOf(material, PARTS, bench, plasticMl).flatMap((dose): ChipToPour[] =>
      [[], ...(material === whitener ? [] : whites.map((each) => [each]))].map((withIt) => ({
        plasticMl,
        thicknessMm,
        doses: [dose, ...withIt],
      })),
    ),
  );
}

/** Whether plastic is coloured with a material, and does nothing else that no colour here can show. */
export function isChipMaterial({ kind, typical, effect }: ChipMaterial): boolean {
  return MATERIAL_KINDS[kind].colours && typical !== undefined && effect === undefined;
}

/** Doses that the bench measures in one go near parts of the usual one, each once. */
function dosesOf(
  material: ChipMaterial,
  parts: readonly number[],
  bench: Bench,
  plasticMl: number,
): readonly ChipDose[] {
  const { id, typical, most = Number.POSITIVE_INFINITY } = material;
  if (typical === undefined) return [];
  const byGrams = new Map<number, Measure>();
  for (const part of parts) {
    const measure = easiest(measures(part * typical * plasticMl, material, bench));
    if (measure !== undefined && measure.grams <= most * plasticMl * (1 + ROUNDING))
      byGrams.set(measure.grams, measure);
  }
  return [...byGrams.values()].map((measure) => ({ material: id, measure, written: writtenAs(measure) }));
}

/** What takes fewest spoonfuls, and of those the nearest: it matters little how much goes into a chip, so long as it is known. */
function easiest(found: readonly Measure[]): Measure | undefined {
  return found.reduce<Measure | undefined>(
    (best, each) => (best && best.effort <= each.effort ? best : each),
    undefined,
  );
}

function writtenAs({ tool, effort, text, grams }: Measure): string {
  return tool === 'drops' || (tool === 'spoons' && effort === 1) ? text : `${formatDecimal(grams)} g`;
}

const ROUNDING = 1e-9;
