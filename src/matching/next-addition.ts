import type { CupHeats } from '../cup/heats.ts';
import { defined } from '../values/defined.ts';
import { required } from '../values/required.ts';
import { type Expectation, isLikelyRight } from './belief/expectation.ts';
import { reachOf, UNMEASURED } from './belief/expecting.ts';
import { LEAST_STEP, type Left, stopWithoutStep } from './belief/stop.ts';
import {
  dosesFor,
  figuringOf,
  gainsEnough,
  isFaulty,
  type JudgedCup,
  judgedCup,
  leftAsItIs,
  measuredProposals,
} from './judged-cup.ts';
import type { MatchFault } from './match-fault.ts';
import { bestPromise, byBestTools } from './measure/best-tools.ts';
import { WORTH_A_WORD } from './measure/weigh-doses.ts';
import type { NextAdditionQuestion } from './next-addition-question.ts';
import { wearsOut } from './proposals/addition-heat.ts';
import { type FlakeNow, flakesNow } from './proposals/flakes-now.ts';
import { freshRecipe, freshShort, isLarge, mayReach, takesMore } from './proposals/fresh-cup.ts';
import type { Proposal } from './proposals/proposal.ts';
import type { RecipeProposal } from './proposals/recipe-proposal.ts';
import type { Doubt, SeenAndPredicted } from './rounds/seen-and-believed.ts';
import type { WhatWentIn } from './rounds/unlogged.ts';
import type { FoundDoses } from './search/find-doses.ts';
import { colours } from './shelf/match-material.ts';
import { type WouldHelp, wouldHelp } from './shelf/missing-kind.ts';
import type { ShortPlastic } from './shelf/short-stock.ts';
import type { AdditionLimits, LeftOut } from './shelf/usable-materials.ts';
import type { Verdict } from './target/verdict.ts';

/** What to do with a cup now. */
export type NextAdvice =
  /** It is as likely right, and why nothing more is done to it. */
  | ({ readonly kind: 'leave-it'; readonly likely: number } & Left)
  /** Something, best the first proposal, which is right but for the steps of the bench; and what would come nearer where it is not right. */
  | { readonly kind: 'add'; readonly nearerBy?: 'weighing' | 'finer-steps' }
  /** Begin a new cup, which takes less than mending this one, best by the first proposal; or where no step helps. */
  | { readonly kind: 'start-over' }
  /** This shelf surely does not get there; or the cup is to be looked at again before anything is made of it. */
  | { readonly kind: 'cannot'; readonly because: 'shelf' | 'look-first' }
  | { readonly kind: 'ask-what-went-in'; readonly asks: WhatWentIn }
  | { readonly kind: 'fault'; readonly fault: MatchFault };

/** A cup that is fuller than it is to be filled; or too full to be let down, though that might help. */
export interface Crowded {
  readonly kind: 'over-full' | 'no-room-to-thin';
  /** Plastic in it, and to how much it may be filled, ml. */
  readonly plasticMl: number;
  readonly roomMl: number;
}

/** What to do with a cup now, and why; with what is to be expected of it as it is. */
export interface NextAddition extends WouldHelp, Partial<Expectation> {
  readonly advice: NextAdvice;
  /** The cup now, as seen, or else as predicted. */
  readonly now?: Verdict;
  /** What is seen of its flake in the bait, beside what is wanted; absent where there is none of either. */
  readonly flakes?: readonly FlakeNow[];
  /** How often it was heated, where that was told. */
  readonly heats?: CupHeats;
  readonly doubt?: Doubt;
  readonly differs?: SeenAndPredicted;
  /** Best first. Each lowers the expected difference by what it costs, at least. */
  readonly proposals: readonly Proposal[];
  /** What the best by drops and spoons promises, where the proposals are by the scale alone instead. */
  readonly byHand?: Expectation;
  readonly crowded?: Crowded;
  /** A new cup was thought of, and there is too little plastic for it, where only what is there is asked for. */
  readonly shortPlastic?: ShortPlastic;
  /** A new cup that comes nearer than anything that can be done to this one, or takes less. */
  readonly startAgain?: RecipeProposal;
  /** That new cup comes no nearer, and is there to spare what this one would heat too often. */
  readonly spares?: true;
  readonly leftOut: readonly LeftOut[];
}

// To plain plastic a whole recipe is added.
const WHOLE_RECIPE = 4;
// A new cup costs plastic and an evening: it must come this much nearer, ΔE00.
const WORTH_STARTING_AGAIN = 0.5;

/**
 * What to add to a cup now so that it is expected to come nearest to its target.
 *
 * By all that looks have taught, those at the cup too. Additions only, in amounts that the bench can measure, within every material's
 * most allowed load and the heat that the cup needs; flake in the cup is kept.
 * Never throws for what a maker gives: an empty cup, an empty shelf, or a colour that is none is an answer, too.
 */
export function nextAddition(question: NextAdditionQuestion): NextAddition {
  const judged = judgedCup(question, question.limits ?? {});
  if (isFaulty(judged)) return nothing({ kind: 'fault', fault: judged.fault });
  const { problem, now, believed, doubt } = judged;
  const flakes = flakesNow(judged, question);
  const known = {
    now,
    ...believed.now,
    leftOut: problem.leftOut,
    ...(flakes.length === 0 ? {} : { flakes }),
    ...defined({ heats: question.heats }),
  };
  const { likely } = believed.now;
  if (question.asks !== undefined) return { ...nothing({ kind: 'ask-what-went-in', asks: question.asks }), ...known };
  if (doubt) return { ...nothing({ kind: 'cannot', because: 'look-first' }), ...known, doubt };
  const left = leftAsItIs(judged, question.seen);
  if (left) return { ...nothing({ kind: 'leave-it', likely, ...left }), ...known };
  return { ...withSteps(judged, question), ...known };
}

/** What can be done to a cup that is not likely right. */
function withSteps(judged: JudgedCup, question: NextAdditionQuestion): NextAddition {
  const { cup, shelf, problem, believed, tolerance, differs } = judged;
  const { bench, limits = {} } = question;
  const isPlain = !Object.keys(cup.materials).some((name) => colours(required(shelf, name)));
  const { most = isPlain ? WHOLE_RECIPE : 3, newBottles = isPlain ? WHOLE_RECIPE : 2 } = question;
  const found = dosesFor(judged, { most, newBottles });
  const { proposals: ranked, byHand } = byBestTools(
    bench,
    (tools) => measuredProposals(judged, found, tools, (each) => gainsEnough(each, judged)),
    tolerance,
    believed.now,
  );
  const [nearest] = ranked;
  const isEnough =
    nearest !== undefined && isLikelyRight(bestPromise(nearest)) && !isLarge(nearest, question) && !wearsOut(nearest);
  const plain = isEnough ? undefined : freshRecipe(question);
  const fresh = plain?.proposals[0];
  const short = isEnough ? undefined : freshShort(question);
  const anew = fresh && bestPromise(fresh).expected < believed.now.expected - LEAST_STEP ? fresh : undefined;
  const inProportion = anew === undefined ? ranked : ranked.filter((each) => !takesMore(each, anew, question));
  // A right proposal in proportion mends the cup, whatever one that takes more would do.
  const mends = inProportion.some((each) => isLikelyRight(bestPromise(each)));
  const proposals = (mends ? inProportion : ranked).slice(0, question.proposals ?? 3);
  const [best] = proposals;
  const left = best ? bestPromise(best) : believed.now;
  const crowded = crowdedBy(problem.plasticMl, limits, best !== undefined && isLikelyRight(left));
  const told = defined({ differs, byHand, shortPlastic: short, crowded });
  const isAsGood = anew && (isLikelyRight(bestPromise(anew)) || bestPromise(anew).expected <= left.expected);
  if (anew && best && takesMore(best, anew, question) && isAsGood)
    return {
      ...nothing({ kind: 'start-over' }),
      ...told,
      proposals: [best, ...inProportion].slice(0, question.proposals ?? 3),
      startAgain: anew,
    };
  const isNearer =
    anew !== undefined && bestPromise(anew).expected < left.expected - WORTH_STARTING_AGAIN && !isLikelyRight(left);
  const spares = isAsGood && wearsOut(best);
  const besides = isNearer ? { startAgain: anew } : spares ? { startAgain: anew, spares: true as const } : {};
  return {
    ...told,
    ...endOf(judged, question, {
      best,
      exact: found[0],
      startAgain: besides.startAgain,
      shelfMayDo: plain !== undefined && mayReach(plain),
    }),
    proposals,
    ...besides,
  };
}

/** What is weighed at the end: the best step, if there is one, the nearest doses if anybody could measure them, and a new cup. */
interface Ending {
  readonly best: Proposal | undefined;
  readonly exact: FoundDoses | undefined;
  readonly startAgain: RecipeProposal | undefined;
  /** Whether a new cup may get there, by all that is in doubt. */
  readonly shelfMayDo: boolean;
}

/** What is said in the end, and what would help where nothing on the shelf does. */
function endOf(judged: JudgedCup, question: NextAdditionQuestion, ending: Ending): NextAddition {
  const { best, exact, startAgain, shelfMayDo } = ending;
  const { believed, problem, target, tolerance, cup } = judged;
  const reached = exact && figuringOf(judged, question.bench).expect(exact.doses, UNMEASURED);
  const mayBeRight =
    shelfMayDo ||
    believed.mayBeRight ||
    (reached !== undefined && reachOf(reached.views[0]!, target, tolerance).mayBeRight) ||
    (best !== undefined && isLikelyRight(bestPromise(best)));
  if (best && mayBeRight) return nothing(addAdvice(best, reached));
  const stop = stopWithoutStep({ ...believed, mayBeRight });
  if (!best && stop.because !== 'out-of-reach' && startAgain === undefined)
    return nothing({ kind: 'leave-it', likely: believed.now.likely, ...stop });
  if (!best && startAgain && mayBeRight) return nothing({ kind: 'start-over' });
  const help = mayBeRight
    ? {}
    : wouldHelp(cup, target, judged, question.limits ?? {}, {
        ids: (exact?.set ?? []).map((j) => problem.ingredients[j]!.material.id),
        tolerance,
      });
  return { ...nothing({ kind: 'cannot', because: 'shelf' }), ...help };
}

/** A step, with what would come nearer where only the bench's steps keep it from being right. */
function addAdvice(best: Proposal, exact: Expectation | undefined): NextAdvice {
  if (isLikelyRight(best) || !exact || !isLikelyRight(exact)) return { kind: 'add' };
  const { expected, weighed } = best;
  return { kind: 'add', nearerBy: weighed && weighed.expected < expected - WORTH_A_WORD ? 'weighing' : 'finer-steps' };
}

// Less room than this part of what a cup is filled to is none to let it down in: convention of this book.
const NO_ROOM = 0.03;

function crowdedBy(
  plasticMl: number,
  { roomMl = Number.POSITIVE_INFINITY }: AdditionLimits,
  isRight: boolean,
): Crowded | undefined {
  if (plasticMl > roomMl + 0.5) return { kind: 'over-full', plasticMl, roomMl };
  return isRight || plasticMl < roomMl * (1 - NO_ROOM) ? undefined : { kind: 'no-room-to-thin', plasticMl, roomMl };
}

function nothing(advice: NextAdvice): NextAddition {
  return { advice, proposals: [], missing: [], leftOut: [] };
}
