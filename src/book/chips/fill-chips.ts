import { computed } from '../computed.ts';
import { type ChipSpec, chipSpec } from '../cups/chip-spec.ts';
import type { CupMaterial, CupShelf } from '../cups/cup-shelf.ts';
import { type FilledCup, fillCup } from '../cups/fill-cup.ts';
import type { Things } from '../read/read-things.ts';
import type { Remembered } from '../remembered.ts';
import type { Report } from '../report.ts';

/** Keeps the ledger of every chip, by its id; without those that cannot be filled. */
export function fillChips(
  { chips }: Pick<Things, 'chips'>,
  shelf: CupShelf,
  kept: Remembered<FilledCup<ChipSpec>, CupMaterial>,
  report: Report,
): ReadonlyMap<string, FilledCup<ChipSpec>> {
  const filled = new Map<string, FilledCup<ChipSpec>>();
  for (const [id, chip] of chips) {
    const cup = kept.of(id, [chip, shelf.plastic], shelf.materials, report, (telling, materials) =>
      computed(chip, telling, () => fillCup(chipSpec(chip), undefined, { ...shelf, materials }, telling)),
    );
    if (cup) filled.set(id, cup);
  }
  return filled;
}
