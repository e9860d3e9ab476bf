import { computed } from '../computed.ts';
import type { ChipSpec } from '../cups/chip-spec.ts';
import type { FilledCup } from '../cups/fill-cup.ts';
import type { Chip } from '../model/chip.ts';
import type { Settings } from '../model.ts';
import type { Remembered } from '../remembered.ts';
import type { Report } from '../report.ts';
import type { MaterialCore } from '../shelf/compile-material.ts';
import { compileChip } from './compile-chip.ts';

/** Compiles every chip whose ledger was kept, each by itself, by its id. */
export function compileChips(
  filled: ReadonlyMap<string, FilledCup<ChipSpec>>,
  context: {
    readonly shelf: ReadonlyMap<string, MaterialCore>;
    readonly settings: Settings;
    readonly kept: Remembered<Chip, MaterialCore>;
    readonly report: Report;
  },
): ReadonlyMap<string, Chip> {
  const { shelf, settings, kept, report } = context;
  const chips = new Map<string, Chip>();
  for (const [id, cup] of filled) {
    const chip = kept.of(id, [cup, settings], shelf, report, (telling, watched) =>
      computed(cup.spec.recipe, telling, () => compileChip(cup, watched, settings, telling)),
    );
    if (chip) chips.set(id, chip);
  }
  return chips;
}
