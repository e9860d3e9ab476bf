import { type CupState, isEmpty } from '../cup/ledger.ts';
import { defined } from '../values/defined.ts';
import { required } from '../values/required.ts';
import { LEAST_GAIN, WORKED_OUT } from './conventions.ts';
import { byBestTools, byHandWords, leastLeft } from './measure/best-tools.ts';
import { measureDoses } from './measure/measure-doses.ts';
import { additionProblem } from './mix/addition-problem.ts';
import { withBehind } from './mix/layers-of-part.ts';
import {
  afreshSentence,
  cannotSentence,
  crowdedWords,
  leftBy,
  lookFirstSentence,
  nearerWords,
  runsShortWords,
  tooLittleWords,
} from './next-addition-words.ts';
import { freshCup, isLarge, takesMore } from './proposals/fresh-cup.ts';
import { type Proposal, proposalOf, rankProposals } from './proposals/proposal.ts';
import type { RecipeProposal } from './proposals/recipe-proposal.ts';
import {
  type CorrectionPriors,
  correctModel,
  type ModelCorrection,
  NO_CORRECTION,
  type Observation,
} from './rounds/correct-model.ts';
import { reckoning } from './rounds/reckoning.ts';
import { findDoses } from './search/find-doses.ts';
import type { MatchBench } from './shelf/match-bench.ts';
import { colours, type MatchMaterial, shelfByName } from './shelf/match-material.ts';
import { type MissingKind, missingKinds } from './shelf/missing-kind.ts';
import type { AdditionLimits, LeftOut } from './shelf/usable-materials.ts';
import { targetConstants } from './target/target-constants.ts';
import { partFault, type SeenViews, type TargetPart } from './target/target-part.ts';
import { isNoVerdict, thresholdsFor, type Verdict, verdict, verdictOf } from './target/verdict.ts';
import { differenceText } from './words.ts';

/** A cup that is to be brought to a target. */
export interface NextAdditionQuestion {
  /** What is in the cup now, by the ledger. */
  readonly cup: CupState;
  readonly target: TargetPart;
  readonly shelf: readonly MatchMaterial[];
  readonly bench: MatchBench;
  /** Largest difference that counts as the same colour, ΔE00. */
  readonly tolerance: number;
  /** Rounds so far, the last one last. */
  readonly rounds?: readonly Observation[];
  /** What the cup looks like as it is now; unset: not poured yet, or not noted. */
  readonly seen?: SeenViews;
  readonly limits?: AdditionLimits;
  /** What must be answered before anything is added (see `unloggedQuestion`): the cup is judged then, and nothing proposed. */
  readonly asks?: string | undefined;
  readonly priors?: CorrectionPriors;
  /** Plastic that a new cup would be started with, ml; unset: what is in this one. */
  readonly startMl?: number;
  /** Most materials in one addition; unset: 3, and 4 to plain plastic. */
  readonly most?: number;
  /** Most of them that are not in the cup yet; unset: 2, and 4 to plain plastic. */
  readonly newBottles?: number;
  /** Proposals wanted; unset: 3. */
  readonly proposals?: number;
}

/** What to do with a cup now. */
export interface NextAddition {
  /**
   * 'leave' it, 'add' something, 'start-again' with a new cup, which takes less than mending this one, 'cannot' get there from this
   * shelf, 'ask' first what went in, or a 'fault' in what was asked.
   */
  readonly advice: 'leave' | 'add' | 'start-again' | 'cannot' | 'ask' | 'fault';
  /** For the maker. */
  readonly sentence: string;
  /** The cup now, as seen, or else as predicted. */
  readonly now?: Verdict;
  /** ΔE00 that the corrected model gives the cup now: what the proposals are to be compared with. */
  readonly predictedDeltaE?: number;
  /** Best first. Each makes the predicted difference smaller. */
  readonly proposals: readonly Proposal[];
  /** Kinds of material that would get nearer than anything on the shelf. */
  readonly missing: readonly MissingKind[];
  /** A new cup that comes nearer than anything that can be done to this one, or takes less, with what the rounds have taught. */
  readonly startAgain?: RecipeProposal;
  readonly correction: ModelCorrection;
  readonly leftOut: readonly LeftOut[];
}

// To plain plastic a whole recipe is added.
const WHOLE_RECIPE = 4;
// A new cup costs plastic and an evening: it must come this much nearer, ΔE00.
const WORTH_STARTING_AGAIN = 0.5;

/**
 * What to add to a cup now so that it comes nearest to its target.
 *
 * The model is first corrected by the rounds so far. Additions only, in amounts that the bench can measure, within every material's
 * most allowed load and the heat that the cup needs; flake in the cup is kept.
 * Never throws for what a maker gives: an empty cup, an empty shelf, or a colour that is none is answered in a sentence.
 */
export function nextAddition(question: NextAdditionQuestion): NextAddition {
  const fault = questionFault(question);
  if (fault !== undefined) return nothing('fault', fault);
  const { cup, target, bench, tolerance, seen, limits = {} } = question;
  const shelf = shelfByName(question.shelf);
  const isPlain = !Object.keys(cup.materials).some((name) => colours(required(shelf, name)));
  const { most = isPlain ? WHOLE_RECIPE : 3, newBottles = isPlain ? WHOLE_RECIPE : 2 } = question;
  const correction = correctModel(question.rounds ?? [], (name) => required(shelf, name), question.priors);
  const problem = additionProblem(cup, target, shelf, correction, limits);
  const { mix, ingredients, plasticMl, leftOut } = problem;
  const nothingAdded = new Float64Array(mix.count);
  const [white, black] = mix.labs(nothingAdded);
  const predicted = { overWhite: white!, ...defined({ overBlack: black }) };
  const thresholds = thresholdsFor(tolerance);
  const now = seen ? verdict(seen, target, thresholds) : verdictOf(predicted, target, thresholds);
  if (isNoVerdict(now)) return nothing('fault', now.fault);
  const predictedDeltaE = mix.worst(nothingAdded);
  const { agrees, isDone, below, caution, words } = reckoning({
    correction,
    now,
    predictedDeltaE,
    seen,
    target,
    tolerance,
  });
  const known = { now, predictedDeltaE, correction, leftOut };
  if (question.asks !== undefined) return { ...nothing('ask', question.asks), ...known };
  if (isDone) {
    return { ...nothing('leave', `Leave it: it is ${now.sentence}.`), ...known };
  }

  const isNew = (j: number): boolean =>
    !ingredients[j]!.thins && !((cup.materials[ingredients[j]!.material.id] ?? 0) > 0);
  const found = findDoses(mix, [problem.cups, withBehind(target, targetConstants(target))], {
    size: most,
    counts: isNew,
    limit: newBottles,
  });
  const score = mix.score(nothingAdded);
  const proposalsBy = (tools: MatchBench): readonly Proposal[] => {
    const context = { problem, cup, target, shelf, bench: tools, thresholds, isNew };
    const measured = found
      .slice(0, WORKED_OUT)
      .map(({ set, doses }) => ({ exact: doses, each: measureDoses(mix, ingredients, set, doses, [plasticMl], tools) }))
      .filter(
        ({ each }) => each.ingredients.length > 0 && each.score < score - LEAST_GAIN && mix.worst(each.doses) < below,
      );
    return rankProposals(
      measured.map(({ exact, each }) => proposalOf(each, exact, context)),
      tolerance,
      WORKED_OUT,
    );
  };
  const exact = found[0] && mix.worst(found[0].doses);
  // What only the bench's steps keep from being right is not the shelf's fault.
  const reachable = exact !== undefined && exact <= tolerance;
  const { proposals: ranked, byHandDeltaE } = byBestTools(bench, proposalsBy, leftBy, tolerance, predictedDeltaE);
  const [nearest] = ranked;
  const nearestIsRight = nearest !== undefined && leastLeft(leftBy(nearest)) <= tolerance;
  const fresh = nearestIsRight && !isLarge(nearest, question) ? undefined : freshCup(question, correction);
  const anew = fresh && leastLeft(fresh) < below ? fresh : undefined;
  const inProportion = anew === undefined ? ranked : ranked.filter((each) => !takesMore(each, anew, question));
  // A right proposal in proportion mends the cup, whatever one that takes more would do.
  const mends = inProportion.some((each) => leastLeft(leftBy(each)) <= tolerance);
  const proposals = (mends ? inProportion : ranked).slice(0, question.proposals ?? 3);
  const [best] = proposals;
  const left = best ? leastLeft(leftBy(best)) : below;
  const isRight = best !== undefined && left <= tolerance;
  const besides = `${tooLittleWords(best)}${runsShortWords(best)}${byHandWords(byHandDeltaE)}${crowdedWords(plasticMl, limits, bench, isRight)}${words}`;
  const again = anew && leastLeft(anew) < left - WORTH_STARTING_AGAIN && !isRight ? anew : undefined;
  if (anew && best && takesMore(best, anew, question) && leastLeft(anew) <= Math.max(tolerance, left))
    return {
      ...nothing('start-again', `${caution}${afreshSentence(best, anew, tolerance)}${besides}`),
      ...known,
      proposals: inProportion.slice(0, question.proposals ?? 3),
      startAgain: anew,
    };
  const startAgain = again === undefined ? {} : { startAgain: again };
  if (best && (reachable || best.left.within)) {
    const nearer = best.left.within ? '' : `; ${nearerWords(best)}`;
    const fresher = again ? ` A new cup comes nearer: ${again.sentence}` : '';
    return {
      ...nothing(
        'add',
        `${caution}${best.sentence} That leaves ΔE ${differenceText(best.left.deltaE)}${nearer}.${fresher}${besides}`,
      ),
      ...known,
      proposals,
      ...startAgain,
    };
  }
  if (!agrees && best === undefined && anew === undefined) {
    return { ...nothing('cannot', `${caution}${lookFirstSentence(now)}${besides}`), ...known };
  }
  const missing = reachable
    ? []
    : missingKinds(
        cup,
        target,
        shelf,
        correction,
        limits,
        (found[0]?.set ?? []).map((j) => ingredients[j]!.material.id),
        exact ?? predictedDeltaE,
      );
  return {
    ...nothing('cannot', `${caution}${cannotSentence(best, missing, now, again)}${besides}`),
    ...known,
    proposals,
    missing,
    ...startAgain,
  };
}

function nothing(advice: NextAddition['advice'], sentence: string): NextAddition {
  return { advice, sentence, proposals: [], missing: [], correction: NO_CORRECTION, leftOut: [] };
}

/** What is wrong with a question, as a sentence for the maker; undefined where nothing is. */
export function questionFault({ cup, target, shelf, tolerance, seen }: NextAdditionQuestion): string | undefined {
  const names = new Set(shelf.map(({ id }) => id));
  const unknown = [...Object.keys(cup.plastics), ...Object.keys(cup.materials)].find((name) => !names.has(name));
  if (unknown !== undefined)
    return `The cup has ${unknown} in it, which is not on the shelf. Put it there, so that its colour is known.`;
  const amounts = [...Object.values(cup.plastics), ...Object.values(cup.materials)];
  if (!amounts.every((amount) => Number.isFinite(amount) && amount >= 0))
    return 'An amount in the cup is no number. Correct the log.';
  if (isEmpty(cup)) return 'The cup is empty: everything in it was poured. Start a new one from the recipe.';
  if (!(tolerance > 0 && Number.isFinite(tolerance)))
    return 'The tolerance is no number above 0. Give the largest ΔE that counts as the same colour, such as 2.';
  return partFault(target) ?? (seen && seenFault(seen));
}

function seenFault(seen: SeenViews): string | undefined {
  return seen.overWhite === undefined && seen.overBlack === undefined
    ? 'Nothing was seen of this round. Note what it looks like over white and over black.'
    : undefined;
}
