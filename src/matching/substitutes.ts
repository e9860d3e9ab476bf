import type { Bench } from '../cup/bench.ts';
import { type CupState, concentrations, total } from '../cup/ledger.ts';
import { measures } from '../cup/measures.ts';
import { flakeCoverage, flakesPerMm } from '../optics/flake.ts';
import { type AdditionProblem, additionProblem } from './addition-problem.ts';
import { byBestTools, byHandWords, type LeftByTools } from './best-tools.ts';
import { correctModel, type ModelCorrection, type Observation } from './correct-model.ts';
import { baseOfCup } from './cup-model.ts';
import { findDoses } from './find-doses.ts';
import { type FlakeChoice, flakeDose, flakeOf, nearestFlakes } from './flake-match.ts';
import { colours, type MatchMaterial, shelfByName, withStrengths } from './match-material.ts';
import { measureDoses } from './measure-doses.ts';
import { Mix } from './mix.ts';
import { offsetsFor } from './off-share.ts';
import { type PredictedColour, predicted } from './proposal.ts';
import { refineDoses } from './refine-doses.ts';
import { targetConstants } from './target-constants.ts';
import type { TargetPart } from './target-part.ts';
import type { AdditionLimits } from './usable-materials.ts';
import { thresholdsFor, type Verdict, verdictOf } from './verdict.ts';
import { type Weight, weighDoses } from './weigh-doses.ts';
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
  /** Rounds of the cup, from which the model learns as it does for an addition. */
  readonly rounds?: readonly Observation[];
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
  /** What to weigh instead; absent where there is no scale, or it is weighed already. */
  readonly weighed?: Weight;
}

/** A cup without the material that comes near to the one with it. */
export interface Substitute {
  /** What goes in instead: one material, or everything that colours the cup. */
  readonly amounts: readonly SubstituteAmount[];
  readonly overWhite: PredictedColour;
  readonly overBlack: PredictedColour;
  /** Against the cup with it. */
  readonly left: Verdict;
  /** ΔE00 against it where everything is weighed instead. */
  readonly weighedDeltaE?: number;
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

// What is further off than this ΔE00 stands for nothing: it is another colour. Convention of this book.
const ANOTHER_COLOUR = 10;

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
  const cover = flakeCoverage([{ perMm: flakesPerMm(cup.materials[material]! / plasticMl, lost.flake!) }], thicknessMm);
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
  const correction = correctModel(question.rounds ?? [], (name) => shelf.get(name)!);
  if (correction.miss > tolerance) {
    const sentence = `What was seen of this cup last does not agree with the shelf: it is ΔE ${differenceText(correction.miss)} from all that the rounds can make of it, so that nothing can be promised to stand for ${lost.title}. Look at a test pour again, by daylight, and note the round anew; see that the log says what went in.`;
    return { advice: 'cannot', sentence, swaps: [], recipes: [], flakes: [] };
  }
  const target = lookOf(cup, thicknessMm, shelf, correction);
  const { [material]: _, ...others } = cup.materials;
  const bounds = { ...limits, without: [material] };
  const inContext = (
    rest: CupState,
  ): {
    problem: AdditionProblem;
    finish: (set: readonly number[], exact: Float64Array, tools: Bench) => Substitute;
  } => {
    const problem = additionProblem(rest, target, shelf, correction, bounds);
    return {
      problem,
      finish: (set, exact, tools) => substituteOf({ set, exact, problem, target, tolerance, lost, bench: tools }),
    };
  };

  const swapping = inContext({ ...cup, materials: others });
  const { mix, ingredients } = swapping.problem;
  const without = mix.worst(new Float64Array(mix.count));
  const exactSwaps = ingredients.map((_, j) => {
    const start = new Float64Array(mix.count);
    start[j] = mix.most[j]! / 8;
    return { set: [j], doses: refineDoses(mix, [j], start).doses };
  });
  const swapsBy = (tools: Bench): readonly Substitute[] =>
    exactSwaps
      .map(({ set, doses }) => swapping.finish(set, doses, tools))
      .filter(({ amounts, left }) => amounts.length > 0 && left.deltaE < without)
      .sort(byDifference)
      .slice(0, count);
  const bySwap = byBestTools(question.bench, swapsBy, leftOf, tolerance, without);
  const swaps = bySwap.proposals;

  const kept = Object.fromEntries(Object.entries(others).filter(([name]) => !colours(shelf.get(name)!)));
  const anew = inContext({ ...cup, materials: kept });
  const recolours = Object.keys(kept).length < Object.keys(others).length;
  const isNew = (j: number): boolean => !(anew.problem.ingredients[j]!.material.id in others);
  const size = Math.min(5, Math.max(2, Object.keys(others).length - Object.keys(kept).length + 1));
  const exactRecipes = findDoses(anew.problem.mix, [[anew.problem.cups[0]!], [targetConstants(target)]], {
    size,
    counts: isNew,
    limit: 2,
    keep: 5,
  }).slice(0, 10);
  const recipesBy = (tools: Bench): readonly Substitute[] =>
    exactRecipes
      .map(({ set, doses }) => anew.finish(set, doses, tools))
      // Where nothing else colours the cup, a swap is all of it.
      .filter(({ sentence }) => recolours || swaps.every((swap) => swap.sentence !== sentence))
      .filter(
        ({ amounts, sentence }, index, all) =>
          amounts.length > 0 && all.findIndex((other) => other.sentence === sentence) === index,
      )
      .sort(byDifference)
      .slice(0, Math.min(3, count));
  const byRecipe = byBestTools(question.bench, recipesBy, leftOf, tolerance, without);
  const recipes = byRecipe.proposals;

  const near = ({ left }: Substitute): boolean => left.deltaE <= Math.max(ANOTHER_COLOUR, tolerance);
  const found = { swaps: swaps.filter(near), recipes: recipes.filter(near), flakes: [] };
  const [swap] = found.swaps;
  const [recipe] = found.recipes;
  if (swap && (swap.left.within || !recipe || swap.left.deltaE <= recipe.left.deltaE + 0.3))
    return {
      advice: swap.left.within ? 'swap' : 'cannot',
      sentence: `${swapSentence(swap, lost)}${byHandWords(bySwap.byHandDeltaE)}`,
      ...found,
    };
  if (recipe) {
    const sentence = `No one material does what ${lost.title} does here. Made anew without it, the cup comes to ΔE ${differenceText(recipe.left.deltaE)} with ${whatOf(recipe)}.${byHandWords(byRecipe.byHandDeltaE)}`;
    return { advice: recipe.left.within ? 're-solve' : 'cannot', sentence, ...found };
  }
  const [nearest] = [...swaps, ...recipes].sort(byDifference);
  const why = nearest ? `: ${whatOf(nearest)} would leave ΔE ${differenceText(nearest.left.deltaE)}` : '';
  return { advice: 'cannot', sentence: `Nothing on the shelf can stand for ${lost.title} here${why}.`, ...found };
}

function swapSentence(swap: Substitute, lost: MatchMaterial): string {
  const size = `ΔE ${differenceText(swap.left.deltaE)}`;
  return swap.left.within
    ? `Nearest to ${lost.title} here: ${whatOf(swap)}, ${size}.`
    : `Nothing on the shelf stands for ${lost.title} here within tolerance. Nearest: ${whatOf(swap)}, ${size}.`;
}

/** "1/8 tsp of Ivory Pearl and 2 drops of Peat" */
function whatOf({ amounts }: Pick<Substitute, 'amounts'>): string {
  return listed(amounts.map(({ text, title }) => `${text} of ${title}`));
}

const leftOf = ({ left: { deltaE }, weighedDeltaE }: Substitute): LeftByTools => ({
  deltaE,
  ...(weighedDeltaE === undefined ? {} : { weighedDeltaE }),
});

const byDifference = (one: Substitute, other: Substitute): number =>
  one.left.deltaE - other.left.deltaE || (one.sentence < other.sentence ? -1 : 1);

function substituteOf({
  set,
  exact,
  problem: { mix, ingredients, plasticMl },
  target,
  tolerance,
  lost,
  bench,
}: {
  readonly set: readonly number[];
  readonly exact: Float64Array;
  readonly problem: AdditionProblem;
  readonly target: TargetPart;
  readonly tolerance: number;
  readonly lost: MatchMaterial;
  readonly bench: Bench;
}): Substitute {
  const measured = measureDoses(mix, ingredients, set, exact, [plasticMl], bench);
  const weighed = weighDoses(mix, ingredients, measured, exact, [plasticMl], bench);
  const [overWhite, overBlack] = mix.labs(measured.doses);
  const left = verdictOf({ overWhite: overWhite!, overBlack: overBlack! }, target, thresholdsFor(tolerance));
  const amounts = measured.ingredients.map(({ candidate, amount, measure }): SubstituteAmount => {
    const { id, title } = ingredients[candidate]!.material;
    const weight = weighed?.weights.get(candidate);
    return { material: id, title, grams: amount, text: measure.text, ...(weight && { weighed: weight }) };
  });
  const difference = `ΔE ${differenceText(left.deltaE)} from the cup with ${lost.title}`;
  return {
    amounts,
    overWhite: predicted(overWhite!),
    overBlack: predicted(overBlack!),
    left,
    ...(weighed && { weighedDeltaE: weighed.deltaE }),
    sentence: `${whatOf({ amounts })}; ${difference} (${left.sentence}).`,
  };
}

/** What a cup looks like, as a target. */
function lookOf(
  cup: CupState,
  thicknessMm: number,
  shelf: ReadonlyMap<string, MatchMaterial>,
  correction: ModelCorrection,
): TargetPart {
  const known = withStrengths(shelf, correction.strengths);
  const { offWhite, offBlack } = offsetsFor(correction, cup, (name) => shelf.get(name)!);
  const { mix, flakes } = baseOfCup(cup, (name) => known.get(name)!);
  const nothing = { L: 50, a: 0, b: 0 };
  const colour = new Mix({
    cups: [mix],
    goals: [
      {
        layers: [{ cup: 0, thickness: thicknessMm, flakes }],
        overWhite: nothing,
        overBlack: nothing,
        offWhite,
        offBlack,
      },
    ],
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
