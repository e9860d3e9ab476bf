import type { Bench } from '../cup/bench.ts';
import type { FlakeWay } from '../cup/flake-passage.ts';
import { type Amounts, type CupState, scaleAmounts } from '../cup/ledger.ts';
import type { SpreadFlake } from '../optics/flake.ts';
import { defined } from '../values/defined.ts';
import { required } from '../values/required.ts';
import { WORKED_OUT } from './conventions.ts';
import { toleranceFault } from './cup-fault.ts';
import type { MatchFault } from './match-fault.ts';
import { byBestTools } from './measure/best-tools.ts';
import { type Ingredient, measureDoses } from './measure/measure-doses.ts';
import { WORTH_A_WORD } from './measure/weigh-doses.ts';
import { baseOfCup } from './mix/cup-model.ts';
import { layersOfPart, withBehind } from './mix/layers-of-part.ts';
import { Mix } from './mix/mix.ts';
import type { MixCandidate, MixGoal, MixProblem } from './mix/mix-problem.ts';
import { type RecipeProposal, rankRecipes, recipeProposal } from './proposals/recipe-proposal.ts';
import { type ModelCorrection, NO_CORRECTION } from './rounds/correct-model.ts';
import { contentsOf } from './rounds/likeness.ts';
import { offShareOf } from './rounds/off-share.ts';
import { type FoundDoses, findDoses } from './search/find-doses.ts';
import { laminateDoses } from './search/laminate-doses.ts';
import type { MatchBench } from './shelf/match-bench.ts';
import { type MatchMaterial, shelfByName, withStrengths } from './shelf/match-material.ts';
import { type MissingKind, missingKinds } from './shelf/missing-kind.ts';
import { type AdditionLimits, type LeftOut, usableMaterials } from './shelf/usable-materials.ts';
import { type FlakeChoice, flakeDose, nearestFlakes, type WantedFlake } from './substitutes/flake-match.ts';
import { targetConstants } from './target/target-constants.ts';
import { partFault, type TargetPart } from './target/target-part.ts';

/** A target that is to be made from plain plastic. */
export interface FirstRecipeQuestion {
  /**
   * One: a solid bait, or one side of a laminate the other side of which there is already (`behind`). Two: the sides of a laminate
   * as they are seen in the finished bait, each with the other behind it, and each through half of its thickness.
   */
  readonly parts: readonly TargetPart[];
  readonly flakes?: readonly WantedFlake[];
  /** The mold that it is poured in, as far as flake has to get through it. */
  readonly mold?: FlakeWay;
  /** What goes in besides and is not to be changed, such as flake and salt: g per ml of plastic, in every cup. */
  readonly keep?: Amounts;
  /** Plastic of the cups, and how much of it in each, ml. */
  readonly plastic: string;
  readonly plasticMl: number;
  readonly shelf: readonly MatchMaterial[];
  readonly bench: MatchBench;
  readonly tolerance: number;
  readonly limits?: Pick<AdditionLimits, 'inStock' | 'stockShare' | 'without' | 'roomMl'>;
  /** What rounds of the same colour have taught. */
  readonly correction?: ModelCorrection;
  /** Most materials in a cup, flake apart; unset: 4. */
  readonly most?: number;
  /** Proposals wanted; unset: 3. */
  readonly proposals?: number;
}

/** What to make of a target. */
export type FirstAdvice =
  /** One of the recipes, right but for the steps of the bench; and what would come nearer where it is not right. */
  | { readonly kind: 'make'; readonly nearerBy?: 'a-scale' | 'weighing' | 'making-more' }
  /** Plain plastic is right as it is, so far off, ΔE00. */
  | { readonly kind: 'leave-plain'; readonly plasticTitle: string; readonly deltaE: number }
  /** This shelf does not get within tolerance, or has nothing to colour with. */
  | { readonly kind: 'cannot'; readonly because: 'shelf' | 'nothing-usable' }
  | { readonly kind: 'fault'; readonly fault: MatchFault };

/** Recipes for a target. */
export interface FirstRecipe {
  readonly advice: FirstAdvice;
  /** ΔE00 that the best by drops and spoons leaves, where the recipes are by the scale alone instead. */
  readonly byHandDeltaE?: number;
  /** Best first. */
  readonly proposals: readonly RecipeProposal[];
  readonly missing: readonly MissingKind[];
  /** For each flake of the target, the nearest on the shelf. */
  readonly flakes: readonly FlakeChoice[];
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
  const { parts, plastic, plasticMl, bench, tolerance, limits = {}, most = 4, correction = NO_CORRECTION } = question;
  const shelf = withStrengths(shelfByName(question.shelf), correction.strengths);
  const flakes = chosenFlakes(question, shelf);
  const chosen = Object.fromEntries(flakes.map(({ material, dose }) => [material.id, dose]));
  const besides = { ...question.keep, ...chosen };
  const cup: CupState = { plastics: { [plastic]: plasticMl }, materials: scaleAmounts(besides, plasticMl) };
  const { mix: base, flakes: spread } = baseOfCup(cup, (name) => required(shelf, name));
  const { usable, leftOut } = usableMaterials(cup, shelf, limits);
  const [only] = parts.length === 1 ? parts : [];
  const cups = only ? withBehind(only, base) : parts.map(() => base);
  const ingredients: Ingredient[] = parts.flatMap((_, index) =>
    usable.map(({ material, most: grams }) => ({ material, cup: index, letsDown: false, most: grams })),
  );
  const candidates: MixCandidate[] = ingredients.map(({ material, cup: index, most: grams }) => ({
    cup: index,
    constants: material.constants!,
    most: grams / plasticMl,
  }));
  const offShare = only && offShareOf(correction, contentsOf(cup), ingredients, shelf);
  const problem: MixProblem = {
    cups,
    goals: goalsOf(parts, spread, correction),
    candidates,
    ...defined({ offShare }),
  };
  const mix = new Mix(problem);
  const start = only ? withBehind(only, targetConstants(only)) : parts.map(targetConstants);
  const found: readonly FoundDoses[] =
    parts.length === 1 ? findDoses(mix, [start], { size: most }) : laminateDoses(problem, start, most);
  const each = parts.map(() => plasticMl);
  const context = { mix, ingredients, parts, plastic, plasticMl, shelf, besides, correction, tolerance };
  const proposalsBy = (tools: MatchBench): readonly RecipeProposal[] =>
    rankRecipes(
      found.slice(0, WORKED_OUT).flatMap(({ set, doses: exact }) => {
        const measured = measureDoses(mix, ingredients, set, exact, each, tools);
        return measured.ingredients.length > 0 ? [recipeProposal({ ...context, exact, measured, bench: tools })] : [];
      }),
      tolerance,
      question.proposals ?? 3,
    );
  const exact = found[0] && mix.worst(found[0].doses);
  const plain = mix.worst(new Float64Array(mix.count));
  const { proposals, byHandDeltaE } = byBestTools(bench, proposalsBy, (each) => each, tolerance);
  const known = { proposals, missing: [], flakes: flakes.map(({ choice }) => choice), leftOut };
  const [best] = proposals;
  if (plain <= tolerance && Math.min(...proposals.map(({ deltaE }) => deltaE)) > plain - WORTH_COLOURING) {
    const { title: plasticTitle } = required(shelf, plastic);
    return { advice: { kind: 'leave-plain', plasticTitle, deltaE: plain }, ...known, proposals: [] };
  }
  const told = { ...known, ...defined({ byHandDeltaE }) };
  if (best && exact !== undefined && (best.deltaE <= tolerance || exact <= tolerance))
    return { advice: { kind: 'make', ...defined({ nearerBy: nearerBy(best, tolerance, bench) }) }, ...told };
  const missing =
    parts.length === 1
      ? missingKinds(
          cup,
          parts[0]!,
          shelf,
          NO_CORRECTION,
          limits,
          found[0]?.set.map((j) => ingredients[j]!.material.id) ?? [],
          exact ?? mix.worst(new Float64Array(mix.count)),
        )
      : [];
  return { advice: { kind: 'cannot', because: usable.length === 0 ? 'nothing-usable' : 'shelf' }, ...told, missing };
}

/** What comes nearer than a recipe that only the bench's steps keep from being right; of too little for the scale that is said instead. */
function nearerBy(
  { deltaE, weighedDeltaE, tooLittle }: RecipeProposal,
  tolerance: number,
  { scaleGrams }: Bench,
): Extract<FirstAdvice, { kind: 'make' }>['nearerBy'] {
  if (deltaE <= tolerance || (tooLittle !== undefined && weighedDeltaE === undefined)) return undefined;
  if (scaleGrams === undefined) return 'a-scale';
  return (weighedDeltaE ?? deltaE) < deltaE - WORTH_A_WORD ? 'weighing' : 'making-more';
}

function goalsOf(
  parts: readonly TargetPart[],
  flakes: readonly SpreadFlake[],
  { offWhite, offBlack }: ModelCorrection,
): readonly MixGoal[] {
  return parts.map(({ overWhite, overBlack, thicknessMm, behind }, index): MixGoal => {
    const colours = { overWhite, ...defined({ overBlack }), offWhite, offBlack };
    if (parts.length === 1)
      return { layers: layersOfPart({ thicknessMm, ...defined({ behind }) }, flakes), ...colours };
    const side = { thickness: thicknessMm / 2, flakes };
    return {
      layers: [
        { cup: index, ...side },
        { cup: 1 - index, ...side },
      ],
      ...colours,
    };
  });
}

function chosenFlakes(
  { flakes = [], parts, limits, mold }: FirstRecipeQuestion,
  shelf: ReadonlyMap<string, MatchMaterial>,
): readonly { material: MatchMaterial; dose: number; choice: FlakeChoice }[] {
  return flakes.flatMap((wanted) => {
    const there = [...shelf.values()].filter(
      ({ stockGrams }) => !limits?.inStock || stockGrams === undefined || stockGrams > 0,
    );
    const [choice] = nearestFlakes(wanted, there, mold);
    const material = choice && shelf.get(choice.material);
    // Of two sides each lies in half of the bait.
    const thicknessMm = parts[0]!.thicknessMm / parts.length;
    return material ? [{ material, dose: flakeDose(material, thicknessMm, wanted.coverage), choice }] : [];
  });
}

function questionFault({
  parts,
  plastic,
  plasticMl,
  shelf,
  tolerance,
  most,
  keep = {},
  limits: { roomMl = Number.POSITIVE_INFINITY } = {},
}: FirstRecipeQuestion): MatchFault | undefined {
  if (parts.length === 0) return { kind: 'no-parts' };
  if (parts.length > 2) return { kind: 'too-many-parts' };
  const base = shelf.find(({ id }) => id === plastic);
  if (base?.kind !== 'plastic' || !base.constants) return { kind: 'no-plastic', plastic };
  const unknown = Object.keys(keep).find((name) => !shelf.some(({ id }) => id === name));
  if (unknown !== undefined) return { kind: 'not-on-shelf', material: unknown };
  if (!(plasticMl > 0 && Number.isFinite(plasticMl))) return { kind: 'no-volume' };
  if (plasticMl > roomMl + 0.5) return { kind: 'too-full', roomMl };
  const notTolerance = toleranceFault(tolerance);
  if (notTolerance !== undefined) return notTolerance;
  if (most !== undefined && !(Number.isInteger(most) && most >= 1 && most <= MOST_MATERIALS))
    return { kind: 'number-of-materials', most: MOST_MATERIALS };
  return parts.map(partFault).find((fault) => fault !== undefined);
}
