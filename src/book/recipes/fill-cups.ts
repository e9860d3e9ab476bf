import { computed } from '../computed.ts';
import type { CupMaterial, CupShelf } from '../cups/cup-shelf.ts';
import { type CupSpec, cupKey } from '../cups/cup-specs.ts';
import { type FilledCup, fillCup } from '../cups/fill-cup.ts';
import type { Remembered } from '../remembered.ts';
import type { Report } from '../report.ts';

/** Keeps the ledger of every cup, parents first; without those that cannot be filled. */
export function fillCups(
  cups: readonly CupSpec[],
  shelf: CupShelf,
  kept: Remembered<FilledCup, CupMaterial>,
  report: Report,
): ReadonlyMap<string, FilledCup> {
  const filled = new Map<string, FilledCup>();
  for (const spec of cups) {
    const { recipe, name, path, inheritedShare, from } = spec;
    const parent = from && filled.get(cupKey(from.recipe, from.cup));
    const key = cupKey(recipe.id, name);
    // What the file says of the cup is the recipe's, at that path.
    const inputs = [recipe, JSON.stringify([path, inheritedShare, from]), parent, shelf.plastic];
    const cup = kept.of(key, inputs, shelf.materials, report, (telling, materials) =>
      computed(recipe, telling, () => fillCup(spec, parent, { ...shelf, materials }, telling)),
    );
    if (cup) filled.set(key, cup);
  }
  return filled;
}
