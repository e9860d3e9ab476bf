import { amountOf } from '../../cup/ledger.ts';
import { measures } from '../../cup/measures.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import type { JudgedCup } from '../judged-cup.ts';
import { bodyLayers, layersOfPart } from '../mix/layers-of-part.ts';
import type { NextAdditionQuestion } from '../next-addition-question.ts';
import type { MatchMaterial } from '../shelf/match-material.ts';
import { usableFlakes } from '../shelf/usable-flakes.ts';
import { nearestFlakes, type WantedFlake } from '../substitutes/flake-match.ts';
import { type CupFlake, cupFlakes } from './cup-flakes.ts';
import { type ChosenFlake, dosesAmong } from './wanted-flakes.ts';

/** A flake of a cup as it is seen now, and how much more of it shows what is wanted. */
export interface FlakeNow extends CupFlake {
  /** Absent where there is enough but for what a spoon rounds. */
  readonly more?: { readonly grams: number; readonly text: string };
}

/** A flake of the cup stands for a wanted one up to this distance of theirs: see `FlakeChoice`. Convention of this book. */
const STANDS_FOR = 20;

/** More than this part of a dose is missing before anybody is told. Convention of this book: a spoon rounds as much. */
const MISSING = 0.25;

/** What is seen of the flake in a cup now, beside what its target wants; what the cup has none of yet comes last. */
export function flakesNow(
  { cup, target, shelf, optics, problem }: Pick<JudgedCup, 'cup' | 'target' | 'shelf' | 'optics' | 'problem'>,
  { flakes = [], bench, limits }: Pick<NextAdditionQuestion, 'flakes' | 'bench' | 'limits'>,
): readonly FlakeNow[] {
  const { cups, plasticMl } = problem;
  if (!(plasticMl > 0)) return [];
  const chosen = standIns({ cup, flakes, ...defined({ limits }) }, shelf);
  const wantedIds = new Set(chosen.map(({ material }) => material.id));
  const contents = Object.fromEntries(
    Object.entries(cup.materials).flatMap(([id, grams]) => (wantedIds.has(id) ? [] : [[id, grams / plasticMl]])),
  );
  const doses = dosesAmong(chosen, { layers: layersOfPart(target, []) }, cups, contents, { shelf, optics });
  const amounts = Object.entries(cup.materials).map(([material, grams]) => ({ material, grams }));
  const seen = cupFlakes({ plasticMl, amounts }, bodyLayers([cups[0]!], 0, target), { shelf, optics }, doses);
  const none = [...wantedIds].filter((id) => !(amountOf(cup.materials, id) > 0));
  return [
    ...seen,
    ...none.map((id): CupFlake => {
      const { contrast, wanted } = required(doses, id);
      return { material: id, title: required(shelf, id).title, seen: 0, contrast, wanted, perMl: 0 };
    }),
  ].map((flake): FlakeNow => {
    const whole = (doses.get(flake.material)?.gramsPerMl ?? 0) * plasticMl;
    const missing = whole - amountOf(cup.materials, flake.material);
    if (!(missing > MISSING * whole)) return flake;
    const { grams, text } = measures(missing, required(shelf, flake.material), bench)[0]!;
    return { ...flake, more: { grams, text } };
  });
}

/** For each flake that is wanted on so much of the face the one of the cup that is like it, or else the nearest on the shelf. */
export function standIns(
  { cup, flakes = [], limits }: Pick<NextAdditionQuestion, 'cup' | 'flakes' | 'limits'>,
  shelf: ReadonlyMap<string, MatchMaterial>,
): readonly ChosenFlake[] {
  return flakes.flatMap((wanted) => (wanted.coverage === undefined ? [] : standFor(wanted, cup, shelf, limits)));
}

function standFor(
  wanted: WantedFlake,
  cup: JudgedCup['cup'],
  shelf: ReadonlyMap<string, MatchMaterial>,
  limits: NextAdditionQuestion['limits'],
): readonly ChosenFlake[] {
  const inCup = [...shelf.values()].filter(({ id }) => amountOf(cup.materials, id) > 0);
  const like = nearestFlakes(wanted, inCup).find(({ distance }) => distance <= STANDS_FOR);
  const choice = like ?? nearestFlakes(wanted, usableFlakes(shelf.values(), limits))[0];
  return choice ? [{ material: required(shelf, choice.material), choice, coverage: wanted.coverage }] : [];
}
