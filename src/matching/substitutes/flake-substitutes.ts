import { amountOf, cupVolume, total } from '../../cup/ledger.ts';
import { measures } from '../../cup/measures.ts';
import { metFlake } from '../../optics/flake.ts';
import { seenCoverage } from '../../optics/seen-coverage.ts';
import { required } from '../../values/required.ts';
import { baseOfCup } from '../mix/cup-model.ts';
import { cupFlakes } from '../proposals/cup-flakes.ts';
import type { MatchMaterial } from '../shelf/match-material.ts';
import { usableFlakes } from '../shelf/usable-flakes.ts';
import { flakeDose } from './flake-dose.ts';
import { flakeOf, nearestFlakes } from './flake-match.ts';
import type { FlakeSubstitute, SubstituteQuestion, Substitution } from './substitution.ts';

/** The flakes nearest to the one that there is none of, by colour, size and finish, as much of each as is seen of that one. */
export function flakeSubstitutes(
  { cup, thicknessMm, material, optics, bench, limits, mold, count = 5 }: SubstituteQuestion,
  shelf: ReadonlyMap<string, MatchMaterial>,
): Substitution {
  const lost = required(shelf, material);
  const plasticMl = total(cup.plastics);
  const { colour, acrossMm, finish } = flakeOf(lost) ?? {
    colour: '#808080',
    acrossMm: lost.flake!.sizeMm,
    finish: 'metallic',
  };
  // What the flake does already, its substitute may go on doing.
  const effects = finish === 'fluorescent' ? (['fluorescent'] as const) : [];
  const others = usableFlakes(shelf.values(), { ...limits, effects }).filter(({ id }) => id !== material);
  const volumeMl = cupVolume(cup, (id) => 1 / required(shelf, id).density);
  const met = Object.keys(cup.materials).flatMap((id) => {
    const { flake } = required(shelf, id);
    return flake && id !== material ? [metFlake(flake, cup.materials[id]! / volumeMl)] : [];
  });
  const layer = { ...baseOfCup(cup, (id) => required(shelf, id), optics).mix, thickness: thicknessMm };
  const lostMet = metFlake(lost.flake!, cup.materials[material]! / volumeMl);
  const seen = seenCoverage([{ ...layer, flakes: [lostMet, ...met] }], optics)[0]![0]!.coverage;
  const bed = { layers: [{ ...layer, flakes: met }], at: 0, optics, volumePerPlastic: volumeMl / plasticMl };
  const flakes = nearestFlakes({ hex: colour, sizeMm: acrossMm, finish }, others, mold)
    .slice(0, count)
    .map((choice): FlakeSubstitute => {
      const other = required(shelf, choice.material);
      const dose = flakeDose(other, bed, seen);
      const measure = measures(dose.gramsPerMl * plasticMl, other, bench)[0]!;
      const had = amountOf(cup.materials, choice.material);
      const instead = { ...cup.materials, [material]: 0, [choice.material]: had + measure.grams };
      const amounts = Object.entries(instead).map(([id, grams]) => ({ material: id, grams }));
      const {
        seen: shows,
        contrast,
        perMl,
      } = cupFlakes({ plasticMl, amounts }, [layer], { shelf, optics }).find(
        (each) => each.material === choice.material,
      )!;
      return { ...choice, grams: measure.grams, text: measure.text, seen: shows, contrast, perMl };
    });
  const advice: Substitution['advice'] =
    flakes.length > 0 ? { kind: 'swap' } : { kind: 'cannot', because: 'no-other-flake' };
  return { advice, lost: lost.title, swaps: [], recipes: [], flakes };
}
