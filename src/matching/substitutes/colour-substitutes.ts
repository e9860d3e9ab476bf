import type { Bench } from '../../cup/bench.ts';
import type { CupState } from '../../cup/ledger.ts';
import type { BelievedViews } from '../../learning/believed-views.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import { expectationIn } from '../belief/expectation.ts';
import { type Expect, leftOf } from '../belief/expecting.ts';
import { contentsOf } from '../belief/looked-layers.ts';
import { REACHED_FOR } from '../conventions.ts';
import { byBestTools } from '../measure/best-tools.ts';
import { type MeasuredDoses, measureDoses } from '../measure/measure-doses.ts';
import { measuring } from '../measure/measuring.ts';
import { weighDoses } from '../measure/weigh-doses.ts';
import { type AdditionProblem, additionProblem } from '../mix/addition-problem.ts';
import { figuring, nearestBottles } from '../proposals/figures.ts';
import { firstOf } from '../proposals/order.ts';
import { predicted, toolsOf } from '../proposals/proposal.ts';
import { worthMeasuring } from '../proposals/worth-measuring.ts';
import { findDoses } from '../search/find-doses.ts';
import { leastDoses } from '../search/least-doses.ts';
import { refineDoses } from '../search/refine-doses.ts';
import { colours, type MatchMaterial } from '../shelf/match-material.ts';
import { inPouringOrder } from '../shelf/pouring-order.ts';
import { targetConstants } from '../target/target-constants.ts';
import type { TargetPart } from '../target/target-part.ts';
import { thresholdsFor, verdictOf } from '../target/verdict.ts';
import type {
  Substitute,
  SubstituteAmount,
  SubstituteQuestion,
  Substitution,
  SubstitutionAdvice,
} from './substitution.ts';

// What is further off than this ΔE00 stands for nothing: it is another colour. Convention of this book.
const ANOTHER_COLOUR = 10;
// A substitute that comes nearer than leaving out by less than this is not worth opening a bottle for. Convention of this book.
const WORTH_A_BOTTLE = 0.5;
// So much nearer a cup that is worked out anew must come to be told before a swap. Convention of this book.
const WORTH_A_RECIPE = 0.3;

/** What can stand for a colour in a cup: others one for one, nearest by effect first, and the cup worked out anew without it. */
export function colourSubstitutes(
  question: SubstituteQuestion,
  shelf: ReadonlyMap<string, MatchMaterial>,
): Substitution {
  const { cup, thicknessMm, material, tolerance, optics, belief, key, limits = {}, count = 5 } = question;
  const lost = required(shelf, material);
  const none = { lost: lost.title, swaps: [], recipes: [], flakes: [] };
  const target = lookOf(cup, thicknessMm, question, shelf);
  const { [material]: _, ...others } = cup.materials;
  // What the cup does already beside being of a colour, it may go on doing.
  const effects = Object.keys(cup.materials).flatMap((name) => required(shelf, name).effect ?? []);
  const bounds = { ...limits, effects, without: [material] };
  const inContext = (rest: CupState): Context => {
    const problem = additionProblem(rest, target, { shelf, optics, belief, key }, bounds);
    const believed = (doses: Float64Array): readonly BelievedViews[] => [belief.of(problem.asked(doses))];
    return { problem, believed, plastics: Object.keys(cup.plastics), shelf, target, tolerance };
  };

  const swapping = inContext({ ...cup, materials: others });
  const { mix, ingredients } = swapping.problem;
  const { views, ...alone } = figuresIn(swapping, question.bench).expect(new Float64Array(mix.count));
  const without = expectationIn(alone);
  const isRightWithout = leftOf(views[0]!, target) <= tolerance;
  const exactSwaps = ingredients.map((_, j) => {
    const start = new Float64Array(mix.count);
    start[j] = mix.most[j]! / 8;
    return { set: [j], doses: leastDoses(mix, [j], refineDoses(mix, [j], start).doses, tolerance) };
  });
  const swapsBy = (tools: Bench): readonly Substitute[] =>
    firstSubstitutes(swapping, exactSwaps, tools, ({ expected }) => expected < without.expected, count);
  const bySwap = byBestTools(question.bench, swapsBy, tolerance, without);
  const swaps = bySwap.proposals;

  const kept = Object.fromEntries(Object.entries(others).filter(([name]) => !colours(required(shelf, name))));
  const anew = inContext({ ...cup, materials: kept });
  const recolours = Object.keys(kept).length < Object.keys(others).length;
  const isNew = (j: number): boolean => !Object.hasOwn(others, anew.problem.ingredients[j]!.material.id);
  const size = Math.min(5, Math.max(2, Object.keys(others).length - Object.keys(kept).length + 1));
  const foundRecipes = findDoses(anew.problem.mix, [[anew.problem.cups[0]!], [targetConstants(target, optics)]], {
    size,
    counts: isNew,
    limit: 2,
    keep: 5,
    among: nearestBottles(anew.problem.ingredients, [target], REACHED_FOR, optics),
  });
  const exactRecipes = worthMeasuring(
    foundRecipes,
    anew.problem.ingredients,
    figuresIn(anew, question.bench),
    tolerance,
    measuring(anew.problem, [anew.problem.plasticMl], question.bench),
    [anew.problem.plasticMl],
  ).map(({ set, doses }) => ({ set, doses: leastDoses(anew.problem.mix, set, doses, tolerance) }));
  // Where nothing else colours the cup, a swap is all of it.
  const isOther = (recipe: Substitute): boolean =>
    recolours || swaps.every((swap) => materialsOf(swap) !== materialsOf(recipe));
  const recipesBy = (tools: Bench): readonly Substitute[] =>
    firstSubstitutes(
      anew,
      exactRecipes,
      tools,
      (recipe) => recipe.expected < without.expected && isOther(recipe),
      Math.min(3, count),
    );
  const byRecipe = byBestTools(question.bench, recipesBy, tolerance, without);
  const recipes = byRecipe.proposals;

  const near = ({ left }: Substitute): boolean => left.deltaE <= Math.max(ANOTHER_COLOUR, tolerance);
  const { leftOut } = swapping.problem;
  const found = { ...none, leftOut, swaps: swaps.filter(near), recipes: recipes.filter(near) };
  const [swap] = found.swaps;
  const [recipe] = found.recipes;
  if (isRightWithout && !found.swaps.some(({ expected }) => expected < without.expected - WORTH_A_BOTTLE))
    return { advice: { kind: 'leave-out', ...without }, ...found };
  if (swap && (swap.left.within || !recipe || swap.expected <= recipe.expected + WORTH_A_RECIPE))
    return { advice: adviceOf('swap', swap), ...found, ...defined({ byHand: bySwap.byHand }) };
  if (recipe) return { advice: adviceOf('re-solve', recipe), ...found, ...defined({ byHand: byRecipe.byHand }) };
  const [nearest] = [...swaps, ...recipes].sort((one, other) => one.expected - other.expected);
  return { advice: { kind: 'cannot', because: 'another-colour', ...defined({ nearest }) }, ...found };
}

function adviceOf(kind: 'swap' | 're-solve', { left }: Substitute): SubstitutionAdvice {
  return left.within ? { kind } : { kind: 'cannot', because: 'not-near', nearest: kind };
}

const materialsOf = ({ amounts }: Substitute): string => amounts.map(({ material }) => material).join(' ');

/** A cup without the material, and what it is to look like. */
interface Context {
  readonly problem: AdditionProblem;
  readonly believed: (doses: Float64Array) => readonly BelievedViews[];
  readonly plastics: readonly string[];
  readonly shelf: ReadonlyMap<string, MatchMaterial>;
  readonly target: TargetPart;
  readonly tolerance: number;
}

function figuresIn({ problem, believed, target, tolerance }: Context, bench: Bench): ReturnType<typeof figuring> {
  const { mix, ingredients } = problem;
  return figuring({ mix, ingredients, parts: [target], believed, bench, tolerance });
}

/** Exact doses measured with these tools, the first few of those that are wanted, in the order of proposals. */
function firstSubstitutes(
  context: Context,
  exact: readonly { readonly set: readonly number[]; readonly doses: Float64Array }[],
  bench: Bench,
  isWanted: (substitute: Substitute) => boolean,
  count: number,
): readonly Substitute[] {
  const { mix, ingredients, plasticMl } = context.problem;
  const { expect, figuresOf } = figuresIn(context, bench);
  const all = exact.flatMap(({ set, doses }) => {
    const measured = measureDoses(mix, ingredients, set, doses, [plasticMl], bench);
    const substitute = substituteOf(measured, doses, context, { bench, expect });
    if (substitute.amounts.length === 0 || !isWanted(substitute)) return [];
    const tools = { toolOf: toolsOf(measured.ingredients), plasticMl: [plasticMl] };
    const names = substitute.amounts.map(({ material }) => material).sort();
    return [{ substitute, figures: { ...figuresOf(measured.doses, tools), cost: 0, names } }];
  });
  return firstOf(all, ({ figures }) => figures, context.tolerance, count).map(({ substitute }) => substitute);
}

function substituteOf(
  measured: MeasuredDoses,
  exact: Float64Array,
  { problem: { mix, ingredients, plasticMl }, plastics, shelf, target, tolerance }: Context,
  { bench, expect }: { readonly bench: Bench; readonly expect: Expect },
): Substitute {
  const weighed = weighDoses(mix, ingredients, measured, exact, [plasticMl], bench);
  const each = [plasticMl];
  const promised = expect(measured.doses, { toolOf: toolsOf(measured.ingredients), plasticMl: each });
  const { overWhite, overBlack } = promised.views[0]!;
  const left = verdictOf({ overWhite, overBlack }, target, thresholdsFor(tolerance));
  const amounts = measured.ingredients.map(({ candidate, amount, measure }): SubstituteAmount => {
    const { id, title } = ingredients[candidate]!.material;
    const weight = weighed?.weights.get(candidate);
    const { text, cut } = measure;
    return { material: id, title, ...defined({ cut }), grams: amount, text, ...defined({ weighed: weight }) };
  });
  return {
    amounts: inPouringOrder(amounts, plastics, shelf),
    overWhite: predicted(overWhite),
    overBlack: predicted(overBlack),
    left,
    ...expectationIn(promised),
    ...(weighed && {
      weighedDeltaE: weighed.deltaE,
      weighed: expectationIn(expect(weighed.doses, { toolOf: () => 'scale', plasticMl: each })),
    }),
  };
}

/** What a cup looks like by all that is believed of it, as a target. */
function lookOf(
  cup: CupState,
  thicknessMm: number,
  { belief, key }: Pick<SubstituteQuestion, 'belief' | 'key'>,
  shelf: ReadonlyMap<string, MatchMaterial>,
): TargetPart {
  const layers = [{ ...contentsOf(cup, shelf), thicknessMm }];
  const { overWhite, overBlack } = belief.mean({ layers, ...defined({ cup: key }) });
  return { name: 'cup', overWhite, overBlack, thicknessMm };
}
