import type { Bench } from '../cup/bench.ts';
import { type CupState, concentrations, total } from '../cup/ledger.ts';
import { measures } from '../cup/measures.ts';
import { flakeCoverage, spreadFlake } from '../optics/flake.ts';
import { type AdditionProblem, additionProblem } from './addition-problem.ts';
import { NO_CORRECTION } from './correct-model.ts';
import { baseOfCup } from './cup-model.ts';
import { findDoses } from './find-doses.ts';
import { type FlakeChoice, flakeDose, flakeOf, nearestFlakes } from './flake-match.ts';
import { colours, type MatchMaterial, shelfByName } from './match-material.ts';
import { type MeasuredDoses, measureDoses } from './measure-doses.ts';
import { Mix } from './mix.ts';
import { type PredictedColour, predicted } from './proposal.ts';
import { refineDoses } from './refine-doses.ts';
import { targetConstants } from './target-constants.ts';
import type { TargetPart } from './target-part.ts';
import type { AdditionLimits } from './usable-materials.ts';
import { thresholdsFor, type Verdict, verdictOf } from './verdict.ts';
import { differenceText, listed } from './words.ts';

/** A cup in which one material is to be replaced. */
export interface SubstituteQuestion {
  readonly cup: CupState;
  /** Thickness at which the colours are compared, mm. */
  readonly thicknessMm: number;
  /** The material that there is none of. */
  readonly material: string;
  readonly shelf: readonly MatchMaterial[];
  readonly bench: Bench;
  readonly tolerance: number;
  readonly limits?: Pick<AdditionLimits, 'inStock'>;
  /** Most of each list; unset: 5. */
  readonly count?: number;
}

/** An amount of a substitute. */
export interface SubstituteAmount {
  readonly material: string;
  readonly title: string;
  readonly grams: number;
  readonly text: string;
}

/** A cup without the material that comes near to the one with it. */
export interface Substitute {
  /** What goes in instead: one material, or everything that colours the cup. */
  readonly amounts: readonly SubstituteAmount[];
  readonly overWhite: PredictedColour;
  readonly overBlack: PredictedColour;
  /** Against the cup with it. */
  readonly left: Verdict;
  readonly sentence: string;
}

/** A flake instead of another. */
export interface FlakeSubstitute extends FlakeChoice, SubstituteAmount {}

/** What can stand for a material in a cup. */
export interface Substitution {
  /** 'swap' for another, 're-solve' the cup without it, 'cannot' be replaced, or a 'fault' in what was asked. */
  readonly advice: 'swap' | 're-solve' | 'cannot' | 'fault';
  readonly sentence: string;
  /** One material for one, everything else as it is, nearest by effect first. */
  readonly swaps: readonly Substitute[];
  /** The cup's colour worked out anew without it. */
  readonly recipes: readonly Substitute[];
  readonly flakes: readonly FlakeSubstitute[];
}

/**
 * What can stand for a material in a cup: the nearest by what it does there, the cup worked out anew without it, and for flake the
 * nearest by colour, size and finish, as much of it as covers the same.
 *
 * Never throws for what a maker gives.
 */
export function substitutes(question: SubstituteQuestion): Substitution {
  const shelf = shelfByName(question.shelf);
  const fault = questionFault(question, shelf);
  if (fault !== undefined) return { advice: 'fault', sentence: fault, swaps: [], recipes: [], flakes: [] };
  return shelf.get(question.material)!.flake ? flakeSubstitutes(question, shelf) : colourSubstitutes(question, shelf);
}

function flakeSubstitutes(
  { cup, thicknessMm, material, bench, limits, count = 5 }: SubstituteQuestion,
  shelf: ReadonlyMap<string, MatchMaterial>,
): Substitution {
  const lost = shelf.get(material)!;
  const plasticMl = total(cup.plastics);
  const cover = flakeCoverage([spreadFlake(lost.flake!, cup.materials[material]! / plasticMl)], thicknessMm);
  const { colour, acrossMm, finish } = flakeOf(lost) ?? {
    colour: '#808080',
    acrossMm: lost.flake!.sizeMm,
    finish: 'metallic',
  };
  const others = [...shelf.values()].filter(
    ({ id, stockGrams }) => id !== material && (!limits?.inStock || stockGrams === undefined || stockGrams > 0),
  );
  const flakes = nearestFlakes({ hex: colour, sizeMm: acrossMm, finish }, others)
    .slice(0, count)
    .map((choice): FlakeSubstitute => {
      const other = shelf.get(choice.material)!;
      const measure = measures(flakeDose(other, thicknessMm, cover) * plasticMl, other, bench)[0]!;
      return { ...choice, grams: measure.grams, text: measure.text };
    });
  const [best] = flakes;
  return {
    advice: best ? 'swap' : 'cannot',
    sentence: best
      ? `Nearest to ${lost.title} is ${best.title}: ${best.words}. ${best.text} of it covers as much.`
      : 'There is no other flake on the shelf.',
    swaps: [],
    recipes: [],
    flakes,
  };
}

function colourSubstitutes(question: SubstituteQuestion, shelf: ReadonlyMap<string, MatchMaterial>): Substitution {
  const { cup, thicknessMm, material, tolerance, limits = {}, count = 5 } = question;
  const lost = shelf.get(material)!;
  const target = lookOf(cup, thicknessMm, shelf);
  const { [material]: _, ...others } = cup.materials;
  const bounds = { ...limits, without: [material] };
  const inContext = (rest: CupState): { problem: AdditionProblem; finish: (measured: MeasuredDoses) => Substitute } => {
    const problem = additionProblem(rest, target, shelf, NO_CORRECTION, bounds);
    return { problem, finish: (measured) => substituteOf(measured, problem, target, tolerance, lost) };
  };

  const swapping = inContext({ ...cup, materials: others });
  const { mix, ingredients, plasticMl } = swapping.problem;
  const swaps = ingredients
    .flatMap((_ingredient, j): Substitute[] => {
      const start = new Float64Array(mix.count);
      start[j] = mix.most[j]! / 8;
      const measured = measureDoses(
        mix,
        ingredients,
        [j],
        refineDoses(mix, [j], start).doses,
        [plasticMl],
        question.bench,
      );
      return measured.ingredients.length > 0 ? [swapping.finish(measured)] : [];
    })
    .sort(byDifference)
    .slice(0, count);

  const kept = Object.fromEntries(Object.entries(others).filter(([name]) => !colours(shelf.get(name)!)));
  const anew = inContext({ ...cup, materials: kept });
  const isNew = (j: number): boolean => !(anew.problem.ingredients[j]!.material.id in others);
  const size = Math.min(5, Math.max(2, Object.keys(others).length - Object.keys(kept).length + 1));
  const recipes = findDoses(anew.problem.mix, [[anew.problem.cups[0]!], [targetConstants(target)]], {
    size,
    counts: isNew,
    limit: 2,
    keep: 5,
  })
    .slice(0, 10)
    .map(({ set, doses }) =>
      anew.finish(measureDoses(anew.problem.mix, anew.problem.ingredients, set, doses, [plasticMl], question.bench)),
    )
    .filter(
      ({ amounts, sentence }, index, all) =>
        amounts.length > 0 && all.findIndex((other) => other.sentence === sentence) === index,
    )
    .sort(byDifference)
    .slice(0, Math.min(3, count));

  const [swap] = swaps;
  const [recipe] = recipes;
  if (swap && (swap.left.within || !recipe || swap.left.deltaE <= recipe.left.deltaE + 0.3)) {
    return {
      advice: swap.left.within ? 'swap' : 'cannot',
      sentence: swapSentence(swap, lost),
      swaps,
      recipes,
      flakes: [],
    };
  }
  if (!recipe)
    return {
      advice: 'cannot',
      sentence: `Nothing on the shelf can stand for ${lost.title} here.`,
      swaps,
      recipes,
      flakes: [],
    };
  const how = `No one material does what ${lost.title} does here. Made anew without it: ${recipe.sentence}`;
  return { advice: recipe.left.within ? 're-solve' : 'cannot', sentence: how, swaps, recipes, flakes: [] };
}

function swapSentence(swap: Substitute, lost: MatchMaterial): string {
  const nearest = `Nearest to ${lost.title} here: ${swap.sentence}`;
  return swap.left.within ? nearest : `Nothing on the shelf stands for ${lost.title} here within tolerance. ${nearest}`;
}

const byDifference = (one: Substitute, other: Substitute): number =>
  one.left.deltaE - other.left.deltaE || (one.sentence < other.sentence ? -1 : 1);

function substituteOf(
  { ingredients, doses }: MeasuredDoses,
  { mix, ingredients: all }: AdditionProblem,
  target: TargetPart,
  tolerance: number,
  lost: MatchMaterial,
): Substitute {
  const [overWhite, overBlack] = mix.labs(doses);
  const left = verdictOf({ overWhite: overWhite!, overBlack: overBlack! }, target, thresholdsFor(tolerance));
  const amounts = ingredients.map(({ candidate, amount, measure }): SubstituteAmount => {
    const { id, title } = all[candidate]!.material;
    return { material: id, title, grams: amount, text: measure.text };
  });
  const what = listed(amounts.map(({ text, title }) => `${text} of ${title}`));
  const difference = `ΔE ${differenceText(left.deltaE)} from the cup with ${lost.title}`;
  return {
    amounts,
    overWhite: predicted(overWhite!),
    overBlack: predicted(overBlack!),
    left,
    sentence: `${what}; ${difference} (${left.sentence}).`,
  };
}

/** What a cup looks like, as a target. */
function lookOf(cup: CupState, thicknessMm: number, shelf: ReadonlyMap<string, MatchMaterial>): TargetPart {
  const { mix, flakes } = baseOfCup(cup, (name) => shelf.get(name)!);
  const nothing = { L: 50, a: 0, b: 0 };
  const colour = new Mix({
    cups: [mix],
    goals: [{ layers: [{ cup: 0, thickness: thicknessMm, flakes }], overWhite: nothing, overBlack: nothing }],
    candidates: [],
  });
  const [overWhite, overBlack] = colour.labs(new Float64Array(0));
  return { name: 'cup', overWhite: overWhite!, overBlack: overBlack!, thicknessMm };
}

function questionFault(
  { cup, thicknessMm, material, tolerance }: SubstituteQuestion,
  shelf: ReadonlyMap<string, MatchMaterial>,
): string | undefined {
  const unknown = [...Object.keys(cup.plastics), ...Object.keys(cup.materials)].find((name) => !shelf.has(name));
  if (unknown !== undefined)
    return `The cup has ${unknown} in it, which is not on the shelf. Put it there, so that its colour is known.`;
  if (!(total(cup.plastics) > 1e-6)) return 'The cup is empty. Give it plastic first.';
  if (!(thicknessMm > 0 && tolerance > 0)) return 'The thickness and the tolerance must be above 0.';
  if (!((concentrations(cup)[material] ?? 0) > 0))
    return `There is no ${shelf.get(material)?.title ?? material} in this cup.`;
  const { constants, flake, title } = shelf.get(material)!;
  return constants || flake
    ? undefined
    : `${title} does not colour, so nothing can be found for it by colour. Its own page says what it is for.`;
}
