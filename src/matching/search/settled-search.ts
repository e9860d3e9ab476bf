import { type CupState, scaleAmounts } from '../../cup/ledger.ts';
import type { BelievedViews } from '../../learning/believed-views.ts';
import type { SpreadFlake } from '../../optics/flake.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import { askedAs, contentsOf, contentsWith } from '../belief/looked-layers.ts';
import { offsetsNear } from '../belief/offsets-near.ts';
import { REACHED_FOR } from '../conventions.ts';
import { cupsBegun, type FirstRecipeQuestion } from '../first-recipe-question.ts';
import type { Ingredient } from '../measure/measure-doses.ts';
import { baseOfCup } from '../mix/cup-model.ts';
import { layersOfPart, withBehind } from '../mix/layers-of-part.ts';
import { Mix } from '../mix/mix.ts';
import type { MixCandidate, MixCup, MixGoal, MixProblem } from '../mix/mix-problem.ts';
import { togetherBounds } from '../mix/together-bounds.ts';
import type { FlakeDoses } from '../proposals/cup-flakes.ts';
import { nearestBottles } from '../proposals/figures.ts';
import { type ChosenFlake, dosesAmong, flakeAmounts, isSettled } from '../proposals/wanted-flakes.ts';
import type { MatchMaterial } from '../shelf/match-material.ts';
import { type LeftOut, usableMaterials } from '../shelf/usable-materials.ts';
import { targetConstants } from '../target/target-constants.ts';
import type { TargetPart } from '../target/target-part.ts';
import { type FoundDoses, findDoses } from './find-doses.ts';
import { laminateDoses } from './laminate-doses.ts';
import { usualDoses } from './usual-doses.ts';

/** Colours that were found for cups with so much flake in them. */
export interface ColourSearch {
  /** Before any of the ingredients is in. */
  readonly cups: readonly CupState[];
  readonly mix: Mix;
  readonly ingredients: readonly Ingredient[];
  readonly found: readonly FoundDoses[];
  readonly leftOut: readonly LeftOut[];
  /** The flake that shows as is wanted with such doses of the ingredients, cup by cup. */
  readonly dosesWith: (doses: Float64Array) => readonly FlakeDoses[];
  /** What is believed of each part with such doses of the ingredients. */
  readonly believed: (doses: Float64Array) => readonly BelievedViews[];
}

// The colour is looked for again where it asks for so much other flake that the colour of the whole changes. Convention of this book.
const MOST_SEARCHES = 3;

/**
 * The colour of each cup, and as much flake as shows in that colour. What a body hides is not known before its colour, so the target's
 * own colour stands for it at first; then the colour is found anew with the flake that it asks for, until that moves no spoon.
 */
export function settledSearch(
  question: FirstRecipeQuestion,
  shelf: ReadonlyMap<string, MatchMaterial>,
  chosen: readonly (readonly ChosenFlake[])[],
): ColourSearch {
  const { parts, keep = {}, optics } = question;
  const [only] = parts.length === 1 ? parts : [];
  const start = only
    ? withBehind(only, targetConstants(only, optics))
    : parts.map((part) => targetConstants(part, optics));
  let doses: readonly FlakeDoses[] = goalsOf(parts, []).map((goal, index) =>
    dosesAmong(chosen[index]!, goal, start, keep, { shelf, optics }),
  );
  for (let search = 1; ; search++) {
    const done = colourSearch(question, shelf, chosen, doses, start);
    const [best] = done.found;
    const now = best ? done.dosesWith(best.doses) : doses;
    if (search === MOST_SEARCHES || isSettled(doses, now)) return done;
    doses = now;
  }
}

function colourSearch(
  question: FirstRecipeQuestion,
  shelf: ReadonlyMap<string, MatchMaterial>,
  chosen: readonly (readonly ChosenFlake[])[],
  flake: readonly FlakeDoses[],
  start: readonly MixCup[],
): ColourSearch {
  const { parts, keep = {}, limits = {}, most = 4, optics, belief } = question;
  const begun = cupsBegun(question);
  const cups = flake.map((doses, index): CupState => {
    const { plastic, plasticMl } = begun[index]!;
    const besides = { ...keep, ...flakeAmounts(doses) };
    return { plastics: { [plastic]: plasticMl }, materials: scaleAmounts(besides, plasticMl) };
  });
  const bases = cups.map((cup) => baseOfCup(cup, (name) => required(shelf, name), optics));
  const allowed = cups.map((cup) => usableMaterials(cup, shelf, limits));
  const leftOut = leftOutOf(allowed);
  const [only] = parts.length === 1 ? parts : [];
  const ingredients: Ingredient[] = allowed.flatMap(({ usable }, index) =>
    usable.map(({ material, most: grams }) => ({ material, cup: index, letsDown: false, most: grams })),
  );
  const candidates: MixCandidate[] = ingredients.map(({ material, cup: index, most: grams }) => ({
    cup: index,
    constants: material.constants!,
    load: 1,
    most: grams / begun[index]!.plasticMl,
  }));
  const contents = cups.map((cup) => contentsOf(cup, shelf));
  const believed = (doses: Float64Array): readonly BelievedViews[] => {
    const filled = contents.map((each, index) => contentsWith(each, ingredients, doses, index));
    return parts.map((part, index) => belief.of(askedAs(filled, index, part)));
  };
  const offsets = only && offsetsNear(belief, askedAs(contents, 0, only), contents[0]!, ingredients);
  const goals = goalsOf(
    parts,
    bases.map(({ flakes }) => flakes),
  );
  const problem: MixProblem = {
    cups: only ? withBehind(only, bases[0]!.mix) : bases.map(({ mix }) => mix),
    goals,
    candidates,
    optics,
    together: togetherBounds(cups, ingredients, shelf),
    usual: togetherBounds(cups, ingredients, shelf, 'warned'),
    ...defined({ offsets }),
  };
  const mix = new Mix(problem);
  const among = nearestBottles(ingredients, parts, REACHED_FOR, optics);
  const found: readonly FoundDoses[] =
    parts.length === 1 ? findDoses(mix, [start], { size: most, among }) : laminateDoses(problem, start, most, among);
  return {
    cups,
    mix,
    ingredients,
    found: usualDoses(found, problem, question.tolerance),
    leftOut,
    believed,
    dosesWith: (doses) => {
      if (chosen.every(({ length }) => length === 0)) return flake;
      const now = mix.cupsWith(doses);
      return goals.map((goal, index) => {
        const colour = ingredients.flatMap(({ material, cup }, j) => (cup === index ? [[material.id, doses[j]!]] : []));
        return dosesAmong(chosen[index]!, goal, now, { ...keep, ...Object.fromEntries(colour) }, { shelf, optics });
      });
    },
  };
}

/** What is left out of any of the cups, each material once. */
function leftOutOf(allowed: readonly ReturnType<typeof usableMaterials>[]): readonly LeftOut[] {
  const all = new Map(allowed.flatMap(({ leftOut }) => leftOut.map((each) => [each.material, each] as const)));
  return [...all.values()];
}

/** @param flakes of each cup */
function goalsOf(parts: readonly TargetPart[], flakes: readonly (readonly SpreadFlake[])[]): readonly MixGoal[] {
  return parts.map(({ overWhite, overBlack, thicknessMm, behind }, index): MixGoal => {
    const colours = { overWhite, ...defined({ overBlack }) };
    if (parts.length === 1)
      return { layers: layersOfPart({ thicknessMm, ...defined({ behind }) }, flakes[0] ?? []), ...colours };
    const layers = [index, 1 - index].map((cup) => ({ cup, thickness: thicknessMm / 2, flakes: flakes[cup] ?? [] }));
    return { layers, ...colours };
  });
}
