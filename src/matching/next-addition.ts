import type { CupHeats } from '../cup/heats.ts';
import { defined } from '../values/defined.ts';
import { required } from '../values/required.ts';
import { LEAST_GAIN } from './conventions.ts';
import { dosesFor, isFaulty, judgedCup, measuredProposals } from './judged-cup.ts';
import type { MatchFault } from './match-fault.ts';
import { byBestTools, leastLeft } from './measure/best-tools.ts';
import { WORTH_A_WORD } from './measure/weigh-doses.ts';
import type { NextAdditionQuestion } from './next-addition-question.ts';
import { wearsOut } from './proposals/addition-heat.ts';
import { type FlakeNow, flakesNow } from './proposals/flakes-now.ts';
import { freshCup, freshShort, isLarge, takesMore } from './proposals/fresh-cup.ts';
import { leftBy, type Proposal } from './proposals/proposal.ts';
import type { RecipeProposal } from './proposals/recipe-proposal.ts';
import { type ModelCorrection, NO_CORRECTION } from './rounds/correct-model.ts';
import type { Doubt, SeenAndPredicted } from './rounds/reckoning.ts';
import type { WhatWentIn } from './rounds/unlogged.ts';
import { colours } from './shelf/match-material.ts';
import { type WouldHelp, wouldHelp } from './shelf/missing-kind.ts';
import type { ShortPlastic } from './shelf/short-stock.ts';
import type { AdditionLimits, LeftOut } from './shelf/usable-materials.ts';
import type { Verdict } from './target/verdict.ts';

/** What to do with a cup now. */
export type NextAdvice =
  /** It is within tolerance. */
  | { readonly kind: 'leave-it' }
  /** Something, best the first proposal, which is right but for the steps of the bench; and what would come nearer where it is not right. */
  | { readonly kind: 'add'; readonly nearerBy?: 'weighing' | 'finer-steps' }
  /** Begin a new cup, which takes less than mending this one, best by the first proposal. */
  | { readonly kind: 'start-over' }
  /** This shelf does not get there; or until the cup is looked at again, nothing is sure to bring it nearer. */
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

/** What to do with a cup now, and why. */
export interface NextAddition extends WouldHelp {
  readonly advice: NextAdvice;
  /** The cup now, as seen, or else as predicted. */
  readonly now?: Verdict;
  /** What is seen of its flake in the bait, beside what is wanted; absent where there is none of either. */
  readonly flakes?: readonly FlakeNow[];
  /** How often it was heated, where that was told. */
  readonly heats?: CupHeats;
  /** ΔE00 that the corrected model gives the cup now: what the proposals are to be compared with. */
  readonly predictedDeltaE?: number;
  readonly doubt?: Doubt;
  readonly differs?: SeenAndPredicted;
  /** Best first. Each makes the predicted difference smaller. */
  readonly proposals: readonly Proposal[];
  /** ΔE00 that the best by drops and spoons leaves, where the proposals are by the scale alone instead. */
  readonly byHandDeltaE?: number;
  readonly crowded?: Crowded;
  /** A new cup was thought of, and there is too little plastic for it, where only what is there is asked for. */
  readonly shortPlastic?: ShortPlastic;
  /** A new cup that comes nearer than anything that can be done to this one, or takes less, with what the rounds have taught. */
  readonly startAgain?: RecipeProposal;
  /** That new cup comes no nearer, and is there to spare what this one would heat too often. */
  readonly spares?: true;
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
 * Never throws for what a maker gives: an empty cup, an empty shelf, or a colour that is none is an answer, too.
 */
export function nextAddition(question: NextAdditionQuestion): NextAddition {
  const { cup, bench, tolerance, limits = {} } = question;
  const judged = judgedCup(question, limits);
  if (isFaulty(judged)) return nothing({ kind: 'fault', fault: judged.fault });
  const { target, shelf, optics, correction, problem, now, predictedDeltaE, reckoned } = judged;
  const { mix, ingredients, plasticMl, leftOut } = problem;
  const { agrees, isDone, below, doubt, differs } = reckoned;
  const flakes = flakesNow(judged, question);
  const known = {
    now,
    predictedDeltaE,
    correction,
    leftOut,
    ...(flakes.length === 0 ? {} : { flakes }),
    ...defined({ heats: question.heats }),
  };
  if (question.asks !== undefined) return { ...nothing({ kind: 'ask-what-went-in', asks: question.asks }), ...known };
  if (isDone) return { ...nothing({ kind: 'leave-it' }), ...known };

  const isPlain = !Object.keys(cup.materials).some((name) => colours(required(shelf, name)));
  const { most = isPlain ? WHOLE_RECIPE : 3, newBottles = isPlain ? WHOLE_RECIPE : 2 } = question;
  const found = dosesFor(judged, { most, newBottles });
  const score = mix.score(new Float64Array(mix.count));
  const { proposals: ranked, byHandDeltaE } = byBestTools(
    bench,
    (tools) =>
      measuredProposals(
        judged,
        found,
        tools,
        (each) => each.ingredients.length > 0 && each.score < score - LEAST_GAIN && mix.worst(each.doses) < below,
      ),
    leftBy,
    tolerance,
    predictedDeltaE,
  );
  const exact = found[0] && mix.worst(found[0].doses);
  // What only the bench's steps keep from being right is not the shelf's fault.
  const reachable = exact !== undefined && exact <= tolerance;
  const [nearest] = ranked;
  const nearestIsRight = nearest !== undefined && leastLeft(leftBy(nearest)) <= tolerance;
  const isEnough = nearestIsRight && !isLarge(nearest, question) && !wearsOut(nearest);
  const fresh = isEnough ? undefined : freshCup(question, correction);
  const short = isEnough ? undefined : freshShort(question);
  const anew = fresh && leastLeft(fresh) < below ? fresh : undefined;
  const inProportion = anew === undefined ? ranked : ranked.filter((each) => !takesMore(each, anew, question));
  // A right proposal in proportion mends the cup, whatever one that takes more would do.
  const mends = inProportion.some((each) => leastLeft(leftBy(each)) <= tolerance);
  const proposals = (mends ? inProportion : ranked).slice(0, question.proposals ?? 3);
  const [best] = proposals;
  const left = best ? leastLeft(leftBy(best)) : below;
  const isRight = best !== undefined && left <= tolerance;
  const told = {
    ...known,
    ...defined({ doubt, differs, byHandDeltaE, shortPlastic: short, crowded: crowdedBy(plasticMl, limits, isRight) }),
  };
  if (anew && best && takesMore(best, anew, question) && leastLeft(anew) <= Math.max(tolerance, left))
    return {
      ...nothing({ kind: 'start-over' }),
      ...told,
      proposals: [best, ...inProportion].slice(0, question.proposals ?? 3),
      startAgain: anew,
    };
  const isNearer = anew !== undefined && leastLeft(anew) < left - WORTH_STARTING_AGAIN && !isRight;
  const spares = anew !== undefined && wearsOut(best) && leastLeft(anew) <= Math.max(tolerance, left);
  const besides = isNearer ? { startAgain: anew } : spares ? { startAgain: anew, spares: true as const } : {};
  const answer = { ...told, proposals, ...besides };
  if (best && (reachable || best.left.within)) return { ...nothing(addAdvice(best)), ...answer };
  if (!agrees && best === undefined && anew === undefined)
    return { ...nothing({ kind: 'cannot', because: 'look-first' }), ...answer };
  const help = reachable
    ? {}
    : wouldHelp(cup, target, { shelf, optics }, correction, limits, {
        ids: (found[0]?.set ?? []).map((j) => ingredients[j]!.material.id),
        deltaE: exact ?? predictedDeltaE,
        tolerance,
      });
  return { ...nothing({ kind: 'cannot', because: 'shelf' }), ...answer, ...help };
}

function addAdvice({ left: { within, deltaE }, weighedDeltaE = deltaE }: Proposal): NextAdvice {
  if (within) return { kind: 'add' };
  return { kind: 'add', nearerBy: weighedDeltaE < deltaE - WORTH_A_WORD ? 'weighing' : 'finer-steps' };
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
  return { advice, proposals: [], missing: [], correction: NO_CORRECTION, leftOut: [] };
}
