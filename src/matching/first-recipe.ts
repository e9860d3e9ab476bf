import type { Bench } from '../cup/bench.ts';
import type { BelievedViews } from '../learning/believed-views.ts';
import { defined } from '../values/defined.ts';
import { required } from '../values/required.ts';
import { type Expectation, expectationIn, isLikelyRight } from './belief/expectation.ts';
import { type ExpectedProblem, expecting, nearBelieved, reachOf, UNMEASURED, worstReach } from './belief/expecting.ts';
import {
  type CupBelieved,
  LEAST_STEP,
  type Left,
  type Reach,
  rightAlready,
  type Stop,
  stopWithoutStep,
} from './belief/stop.ts';
import { toleranceFault } from './cup-fault.ts';
import { type CupBegun, cupsBegun, type FirstRecipeQuestion } from './first-recipe-question.ts';
import type { MatchFault } from './match-fault.ts';
import { bestPromise, byBestTools } from './measure/best-tools.ts';
import type { Ingredient } from './measure/measure-doses.ts';
import { measuring } from './measure/measuring.ts';
import { WORTH_A_WORD } from './measure/weigh-doses.ts';
import { figuring } from './proposals/figures.ts';
import { firstOf } from './proposals/order.ts';
import { type RecipeProposal, recipeFigures, recipeProposal } from './proposals/recipe-proposal.ts';
import { chosenFlakes, flakeAmounts } from './proposals/wanted-flakes.ts';
import { worthMeasuring } from './proposals/worth-measuring.ts';
import type { FoundDoses } from './search/find-doses.ts';
import { settledSearch } from './search/settled-search.ts';
import type { MatchBench } from './shelf/match-bench.ts';
import { shelfByName } from './shelf/match-material.ts';
import { type WouldHelp, wouldHelp } from './shelf/missing-kind.ts';
import { type ShortPlastic, shortPlastic } from './shelf/short-stock.ts';
import type { LeftOut } from './shelf/usable-materials.ts';
import type { FlakeChoice } from './substitutes/flake-match.ts';
import { partFault } from './target/target-part.ts';

/** What to make of a target. */
export type FirstAdvice =
  /** One of the recipes, right but for the steps of the bench; and what would come nearer where it is not right. */
  | { readonly kind: 'make'; readonly nearerBy?: 'a-scale' | 'weighing' | 'making-more' }
  /** Plain plastic is left as it is, and why, with what is to be expected of it. */
  | ({ readonly kind: 'leave-plain'; readonly plasticTitles: readonly string[] } & Expectation & Left)
  /** This shelf surely does not get within tolerance, or has nothing to colour with. */
  | { readonly kind: 'cannot'; readonly because: 'shelf' | 'nothing-usable' }
  /** There is less of the plastic on the shelf than the cups take, and only what is there is asked for. */
  | ({ readonly kind: 'cannot'; readonly because: 'short-of-plastic' } & ShortPlastic)
  | { readonly kind: 'fault'; readonly fault: MatchFault };

/** Recipes for a target. */
export interface FirstRecipe extends WouldHelp {
  readonly advice: FirstAdvice;
  /** What the best by drops and spoons promises, where the recipes are by the scale alone instead. */
  readonly byHand?: Expectation;
  /** Best first. */
  readonly proposals: readonly RecipeProposal[];
  /** For each flake of the target, the nearest on the shelf; of two parts with that for which it is. */
  readonly flakes: readonly (FlakeChoice & { readonly part?: string })[];
  readonly leftOut: readonly LeftOut[];
}

// More would be searched for too long. Convention of this book.
const MOST_MATERIALS = 6;
// Plastic that is right as it is must come this much nearer, ΔE00, for anything to be added. Convention of this book.
const WORTH_COLOURING = 1;

/**
 * The best few recipes for a target, from plain plastic: of at most so many materials a cup, in amounts that the bench can measure.
 *
 * Of a laminate both sides are found together, since each is seen through the other. Never throws for what a maker gives.
 */
export function firstRecipe(question: FirstRecipeQuestion): FirstRecipe {
  const found = recipesFor(question);
  const { parts, limits } = question;
  if (!limits?.inStock || parts.length < 2 || !found.proposals.some(({ runsShort }) => runsShort)) return found;
  // Both cups are filled from one bottle.
  return recipesFor({ ...question, limits: { ...limits, stockShare: 1 / parts.length } });
}

function recipesFor(question: FirstRecipeQuestion): FirstRecipe {
  const fault = questionFault(question);
  if (fault !== undefined)
    return { advice: { kind: 'fault', fault }, proposals: [], missing: [], flakes: [], leftOut: [] };
  const { parts, bench, tolerance, limits = {}, optics, belief } = question;
  const begun = cupsBegun(question);
  const short = limits.inStock ? shortPlastic(begun, shelfByName(question.shelf)) : undefined;
  if (short)
    return {
      advice: { kind: 'cannot', because: 'short-of-plastic', ...short },
      proposals: [],
      missing: [],
      flakes: [],
      leftOut: [],
    };
  const shelf = shelfByName(question.shelf);
  const chosen = chosenFlakes(question, shelf);
  const search = settledSearch(question, shelf, chosen);
  const { mix, ingredients, found, leftOut, dosesWith, believed } = search;
  const each = begun.map(({ plasticMl }) => plasticMl);
  const isUntried = untriedFor(question, ingredients);
  const problem = { mix, ingredients, parts, believed, tolerance, isUntried };
  const proposalsBy = (tools: MatchBench): readonly RecipeProposal[] => {
    const { expect, figuresOf } = figuring({ ...problem, bench: tools });
    const measure = measuring(problem, each, tools);
    const worth = worthMeasuring(found, ingredients, { expect, figuresOf }, tolerance, measure, each);
    const context = { ...problem, begun, shelf, optics, belief, expect };
    const recipes = worth.flatMap((found) => {
      const { doses: exact } = found;
      const measured = measure(found);
      if (!measured) return [];
      const flake = dosesWith(measured.doses);
      const besides = flake.map((doses) => ({ ...question.keep, ...flakeAmounts(doses) }));
      const { recipe, expectation } = recipeProposal({
        ...context,
        besides,
        flakeDoses: flake,
        exact,
        measured,
        bench: tools,
      });
      return [
        {
          recipe,
          exact,
          known: { doses: measured.doses, views: expectation.views },
          figures: recipeFigures(recipe, figuresOf(measured.doses, { expectation })),
        },
      ];
    });
    const first = firstOf(recipes, ({ figures }) => figures, tolerance, question.proposals ?? 3);
    const tryNone = first.filter(({ figures }) => figures.untried === 0);
    const alone = first.length > 1 && tryNone.length === 1 ? tryNone[0] : undefined;
    return first.map((each) => {
      const { recipe, exact, known } = each;
      const views = nearBelieved(problem, exact, known);
      const promised = { ...recipe, exact: expectationIn(expect(exact, UNMEASURED, views)) };
      return each === alone ? { ...promised, triesNone: true } : promised;
    });
  };
  const { proposals, byHand } = byBestTools(bench, proposalsBy, tolerance);
  const known = { proposals, missing: [], flakes: choicesOf(chosen, parts), leftOut };
  const plain = plainOf(problem, bench, found);
  const [best] = proposals;
  const stop = stopAtPlain(plain, proposals);
  if (stop && stop.because !== 'out-of-reach') {
    const plasticTitles = [...new Set(begun.map(({ plastic }) => required(shelf, plastic).title))];
    return { advice: { kind: 'leave-plain', plasticTitles, ...stop, ...plain.now }, ...known, proposals: [] };
  }
  const told = { ...known, ...defined({ byHand }) };
  const mayBeRight = best && (plain.reaches || isLikelyRight(bestPromise(best)));
  if (best && mayBeRight) return { advice: { kind: 'make', ...defined({ nearerBy: nearerBy(best, bench) }) }, ...told };
  const help =
    parts.length === 1
      ? wouldHelp(search.cups[0]!, parts[0]!, { shelf, optics }, limits, {
          ids: found[0]?.set.map((j) => ingredients[j]!.material.id) ?? [],
          tolerance,
        })
      : {};
  return {
    advice: { kind: 'cannot', because: ingredients.length === 0 ? 'nothing-usable' : 'shelf' },
    ...told,
    ...help,
  };
}

/**
 * Which candidates nobody has looked at yet, in a book that knows its plastic already, where a cup may be begun to learn one of them; undefined
 * where that counts for nothing.
 */
function untriedFor(
  { belief, finishes, ...asked }: FirstRecipeQuestion,
  ingredients: readonly Ingredient[],
): ((candidate: number) => boolean) | undefined {
  if (finishes || !cupsBegun(asked).some(({ plastic }) => belief.isTried(plastic))) return undefined;
  const untried = ingredients.map(({ material }) => !belief.isTried(material.id));
  return (candidate) => untried[candidate]!;
}

/** Plain plastic as it is believed to be, and whether exact doses may be right. */
interface PlainPlastic extends CupBelieved {
  readonly reaches: boolean;
}

function plainOf(problem: ExpectedProblem, bench: MatchBench, found: readonly FoundDoses[]): PlainPlastic {
  const { mix, parts, tolerance, believed } = problem;
  const reach = (views: readonly BelievedViews[]): Reach =>
    worstReach(parts.map((part, index) => reachOf(views[index]!, part, tolerance)));
  const { views, ...now } = expecting(problem, bench)(new Float64Array(mix.count), UNMEASURED);
  const plain = { now: expectationIn(now), ...reach(views) };
  const [first] = found;
  return { ...plain, reaches: plain.mayBeRight || (first !== undefined && reach(believed(first.doses)).mayBeRight) };
}

/** Why plain plastic is left as it is; undefined where a recipe is worth making. */
function stopAtPlain(plain: PlainPlastic, proposals: readonly RecipeProposal[]): Stop | undefined {
  const least = Math.min(...proposals.map((each) => bestPromise(each).expected));
  const right = rightAlready(plain);
  if (right) return least > plain.now.expected - WORTH_COLOURING ? right : undefined;
  return least > plain.now.expected - LEAST_STEP ? stopWithoutStep(plain) : undefined;
}

function choicesOf(
  chosen: ReturnType<typeof chosenFlakes>,
  parts: FirstRecipeQuestion['parts'],
): FirstRecipe['flakes'] {
  return chosen.flatMap((flakes, index) =>
    flakes.map(({ choice }) => ({ ...choice, ...(parts.length > 1 ? { part: parts[index]!.name } : {}) })),
  );
}

/** What comes nearer than a recipe that only the bench's steps keep from being right; of too little for the scale that is said instead. */
function nearerBy(recipe: RecipeProposal, { scaleGrams }: Bench): Extract<FirstAdvice, { kind: 'make' }>['nearerBy'] {
  const { expected, weighed, exact, tooLittle } = recipe;
  if (isLikelyRight(recipe) || !isLikelyRight(exact) || (tooLittle !== undefined && !weighed)) return undefined;
  if (scaleGrams === undefined) return 'a-scale';
  return weighed && weighed.expected < expected - WORTH_A_WORD ? 'weighing' : 'making-more';
}

function questionFault(question: FirstRecipeQuestion): MatchFault | undefined {
  const { parts, shelf, tolerance, most, keep = {}, limits = {} } = question;
  if (parts.length === 0) return { kind: 'no-parts' };
  if (parts.length > 2) return { kind: 'too-many-parts' };
  const unknown = Object.keys(keep).find((name) => !shelf.some(({ id }) => id === name));
  if (unknown !== undefined) return { kind: 'not-on-shelf', material: unknown };
  for (const begun of cupsBegun(question)) {
    const fault = cupFault(begun, shelf, limits.roomMl);
    if (fault !== undefined) return fault;
  }
  const notTolerance = toleranceFault(tolerance);
  if (notTolerance !== undefined) return notTolerance;
  if (most !== undefined && !(Number.isInteger(most) && most >= 1 && most <= MOST_MATERIALS))
    return { kind: 'number-of-materials', most: MOST_MATERIALS };
  return parts.map(partFault).find((fault) => fault !== undefined);
}

function cupFault(
  { plastic, plasticMl }: CupBegun,
  shelf: FirstRecipeQuestion['shelf'],
  roomMl = Number.POSITIVE_INFINITY,
): MatchFault | undefined {
  const base = shelf.find(({ id }) => id === plastic);
  if (base?.kind !== 'plastic' || !base.constants) return { kind: 'no-plastic', plastic };
  if (!(plasticMl > 0 && Number.isFinite(plasticMl))) return { kind: 'no-volume' };
  return plasticMl > roomMl + 0.5 ? { kind: 'too-full', roomMl } : undefined;
}
