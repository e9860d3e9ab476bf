import { partsOfMeasured } from '../../cup/cut-measures.ts';
import { boughtGrams } from '../../matching/proposals/proposal.ts';
import type { RecipeCup } from '../../matching/proposals/recipe-proposal.ts';
import type { MatchMaterial } from '../../matching/shelf/match-material.ts';
import { required } from '../../values/required.ts';

/** The shelf as cups leave it that are filled from it: what is not counted stays so. */
export function shelfAfter<M extends MatchMaterial>(shelf: readonly M[], cups: readonly RecipeCup[]): readonly M[] {
  const byName = new Map(shelf.map((material) => [material.id, material]));
  const taken = new Map<string, number>();
  for (const { plastic, plasticMl, amounts } of cups) {
    const measured = amounts.flatMap(({ material, grams, cut }) => partsOfMeasured(material, grams, cut));
    const bought = measured.map((part) => boughtGrams(part, byName));
    const filled = { material: plastic, grams: plasticMl * required(byName, plastic).gramsPerMl };
    for (const { material, grams } of [filled, ...bought]) taken.set(material, (taken.get(material) ?? 0) + grams);
  }
  return shelf.map((material) => {
    const grams = taken.get(material.id);
    const { stockGrams } = material;
    return grams === undefined || stockGrams === undefined
      ? material
      : { ...material, stockGrams: Math.max(0, stockGrams - grams) };
  });
}
