import { partsOfCut } from '../../cup/cut.ts';
import { boughtGrams } from '../../matching/proposals/proposal.ts';
import type { MatchPageData, MatchPageMaterial } from '../../render/pages/match.ts';
import { required } from '../../values/required.ts';
import { cutsIn } from './page-shelf.ts';
import { cupLogs, plasticOf, type Work, type WorkStep } from './work.ts';

/**
 * The shelf as a match leaves it. `stock` in a file is what is left on the shelf, and what was put into a match is not in the book yet, so
 * that is taken off here: what went into each cup, those that were given up too, and what is to be mixed.
 *
 * @param anew cups that are to be begun anew: a log without a look is not kept then, and counts as not done
 */
export function shelfLeft(
  work: Pick<Work, 'cups' | 'sides' | 'plastic' | 'plasticMl'>,
  { materials }: Pick<MatchPageData, 'materials'>,
  anew: readonly number[] = [],
): readonly MatchPageMaterial[] {
  const taken = new Map<string, number>();
  const take = (material: string, grams: number): void => {
    taken.set(material, (taken.get(material) ?? 0) + grams);
  };
  const cuts = cutsIn({ materials });
  const byName = new Map(materials.map((material) => [material.id, material]));
  const takeAmount = (id: string, grams: number): void => {
    const cut = cuts.get(id);
    const parts = cut ? partsOfCut(cut, grams) : [{ kind: 'add' as const, material: id, grams }];
    for (const part of parts) {
      const bought = boughtGrams(part, byName);
      take(bought.material, bought.grams);
    }
  };
  for (const [index, { steps }] of work.cups.entries()) {
    const plastic = plasticOf(work, index);
    const { gramsPerMl } = required(materials, plastic);
    const logs = cupLogs(steps);
    const stays = !anew.includes(index) || logs.at(-1)!.some((step) => step.do === 'see');
    for (const log of stays ? logs : logs.slice(0, -1)) {
      if (log.length > 0) take(plastic, work.plasticMl * gramsPerMl);
      for (const step of log) takeStep(step, takeAmount, (ml) => take(plastic, ml * gramsPerMl));
    }
  }
  return materials.map((material) => {
    const { id, stockGrams } = material;
    const grams = taken.get(id);
    return stockGrams === undefined || grams === undefined
      ? material
      : { ...material, stockGrams: Math.max(0, stockGrams - grams) };
  });
}

function takeStep(step: WorkStep, take: (material: string, grams: number) => void, thin: (ml: number) => void): void {
  if (step.do === 'add') for (const { material, grams } of step.amounts) take(material, grams);
  else if (step.do === 'plastic') thin(step.ml);
}
