import { type Amounts, cupVolume } from '../../cup/ledger.ts';
import { metFlake } from '../../optics/flake.ts';
import type { OpticalConstants } from '../../optics/mixture.ts';
import { required } from '../../values/required.ts';
import type { FirstRecipeQuestion } from '../first-recipe-question.ts';
import type { MixGoal } from '../mix/mix-problem.ts';
import type { MatchMaterial, SeenShelf } from '../shelf/match-material.ts';
import { usableFlakes } from '../shelf/usable-flakes.ts';
import { type CoverWanted, type FlakeDose, flakeDoses } from '../substitutes/flake-dose.ts';
import { type FlakeChoice, nearestFlakes } from '../substitutes/flake-match.ts';
import type { FlakeDoses } from './cup-flakes.ts';

/** The flake of the shelf that stands for one of a target. */
export interface ChosenFlake extends CoverWanted {
  readonly choice: FlakeChoice;
}

/** For each flake of each part the nearest on the shelf, or of what is left there. */
export function chosenFlakes(
  { parts, limits, mold }: Pick<FirstRecipeQuestion, 'parts' | 'limits' | 'mold'>,
  shelf: ReadonlyMap<string, MatchMaterial>,
): readonly (readonly ChosenFlake[])[] {
  const there = usableFlakes(shelf.values(), limits);
  return parts.map(({ flakes = [] }) =>
    flakes.flatMap((wanted) => {
      const [choice] = nearestFlakes(wanted, there, mold);
      const material = choice && shelf.get(choice.material);
      return material ? [{ material, choice, coverage: wanted.coverage }] : [];
    }),
  );
}

/**
 * How much of the chosen flakes shows as is wanted where these are the cups of the bait.
 *
 * @param contents what else is in the cup, g per ml of plastic
 */
export function dosesAmong(
  chosen: readonly ChosenFlake[],
  { layers }: Pick<MixGoal, 'layers'>,
  cups: readonly OpticalConstants[],
  contents: Amounts,
  { shelf, optics }: SeenShelf,
): FlakeDoses {
  if (chosen.length === 0) return new Map();
  const volumePerPlastic =
    1 + cupVolume({ plastics: {}, materials: contents }, (id) => 1 / required(shelf, id).density);
  const kept = Object.entries(contents).flatMap(([name, dose]) => {
    const { flake } = required(shelf, name);
    return flake ? [metFlake(flake, dose / volumePerPlastic)] : [];
  });
  const bed = {
    layers: layers.map(({ cup, thickness }, index) => ({
      ...cups[cup]!,
      thickness,
      flakes: index === 0 ? kept : [],
    })),
    at: 0,
    volumePerPlastic,
    optics,
  };
  const doses = new Map<string, FlakeDose>();
  for (const [index, dose] of flakeDoses(chosen, bed).entries()) {
    const { id } = chosen[index]!.material;
    doses.set(id, bothOf(doses.get(id), dose));
  }
  return doses;
}

/** One flake may stand for two of a target. */
function bothOf(one: FlakeDose | undefined, other: FlakeDose): FlakeDose {
  if (!one) return other;
  return {
    gramsPerMl: one.gramsPerMl + other.gramsPerMl,
    seen: one.seen + other.seen,
    wanted: one.wanted + other.wanted,
    contrast: other.contrast,
  };
}

/** Doses of flake as amounts, g per ml of plastic. */
export function flakeAmounts(doses: FlakeDoses): Amounts {
  return Object.fromEntries([...doses].map(([material, { gramsPerMl }]) => [material, gramsPerMl]));
}

// A dose that moves by less than this part of it moves no spoon. Convention of this book.
const ALIKE = 0.05;

/** Whether doses of flake are the same but for what no spoon measures. */
export function isSettled(before: readonly FlakeDoses[], now: readonly FlakeDoses[]): boolean {
  return now.every((doses, cup) =>
    [...doses].every(([material, { gramsPerMl }]) => {
      const was = before[cup]?.get(material)?.gramsPerMl ?? 0;
      return Math.abs(gramsPerMl - was) <= ALIKE * Math.max(gramsPerMl, was);
    }),
  );
}
