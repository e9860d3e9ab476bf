import { total } from '../../cup/ledger.ts';
import { measures } from '../../cup/measures.ts';
import { flakeCoverage, flakesPerMm } from '../../optics/flake.ts';
import { required } from '../../values/required.ts';
import type { MatchMaterial } from '../shelf/match-material.ts';
import { flakeDose, flakeOf, nearestFlakes } from './flake-match.ts';
import type { FlakeSubstitute, SubstituteQuestion, Substitution } from './substitution.ts';

/** The flakes nearest to the one that there is none of, by colour, size and finish, as much of each as covers the same. */
export function flakeSubstitutes(
  { cup, thicknessMm, material, bench, limits, mold, count = 5 }: SubstituteQuestion,
  shelf: ReadonlyMap<string, MatchMaterial>,
): Substitution {
  const lost = required(shelf, material);
  const plasticMl = total(cup.plastics);
  const cover = flakeCoverage([{ perMm: flakesPerMm(cup.materials[material]! / plasticMl, lost.flake!) }], thicknessMm);
  const { colour, acrossMm, finish } = flakeOf(lost) ?? {
    colour: '#808080',
    acrossMm: lost.flake!.sizeMm,
    finish: 'metallic',
  };
  const others = [...shelf.values()].filter(
    ({ id, stockGrams }) => id !== material && (!limits?.inStock || stockGrams === undefined || stockGrams > 0),
  );
  const flakes = nearestFlakes({ hex: colour, sizeMm: acrossMm, finish }, others, mold)
    .slice(0, count)
    .map((choice): FlakeSubstitute => {
      const other = required(shelf, choice.material);
      const measure = measures(flakeDose(other, thicknessMm, cover) * plasticMl, other, bench)[0]!;
      return { ...choice, grams: measure.grams, text: measure.text };
    });
  const advice: Substitution['advice'] =
    flakes.length > 0 ? { kind: 'swap' } : { kind: 'cannot', because: 'no-other-flake' };
  return { advice, lost: lost.title, swaps: [], recipes: [], flakes };
}
