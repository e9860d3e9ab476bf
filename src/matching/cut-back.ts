import type { CupHeats } from '../cup/heats.ts';
import { defined } from '../values/defined.ts';
import { type Expectation, isLikelyRight } from './belief/expectation.ts';
import type { Left } from './belief/stop.ts';
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
import { measureDoses } from './measure/measure-doses.ts';
import type { NextAdditionQuestion } from './next-addition-question.ts';
import { wearsOut } from './proposals/addition-heat.ts';
import { freshCup, freshMl } from './proposals/fresh-cup.ts';
import { type Proposal, proposalOf } from './proposals/proposal.ts';
import type { RecipeProposal } from './proposals/recipe-proposal.ts';
import type { Doubt } from './rounds/seen-and-believed.ts';
import type { WhatWentIn } from './rounds/unlogged.ts';
import type { MatchBench } from './shelf/match-bench.ts';
import { isOvershot } from './target/overshot.ts';
import type { Verdict } from './target/verdict.ts';

/** Whether to let a cup down with clear plastic, and why. */
export type CutBackAdvice =
  | ({ readonly kind: 'leave-it'; readonly likely: number } & Left)
  /**
   * With plastic alone, or with something besides. A new cup is no better: it takes less plastic but comes out no nearer, it comes out no
   * nearer, it takes hardly less, or it spares
   * what this one would heat too often; absent where there is none.
   */
  | {
      readonly kind: 'let-down';
      readonly by: 'plasticAlone' | 'mended';
      readonly newCup?: 'farther-off' | 'no-nearer' | 'hardly-less' | 'spares';
    }
  /** A new cup comes nearer, takes less plastic, or is the only way. */
  | {
      readonly kind: 'start-over';
      readonly because: 'comes-nearer' | 'takes-less';
      readonly than: 'plasticAlone' | 'mended';
    }
  | { readonly kind: 'start-over'; readonly because: 'plastic-does-not-help' }
  /** There is not too much of anything in it. */
  | { readonly kind: 'add'; readonly because: 'not-overshot' }
  | { readonly kind: 'cannot'; readonly because: 'plastic-does-not-help' }
  /** It is to be looked at again before anything is made of it. */
  | { readonly kind: 'cannot'; readonly because: 'look-first' }
  | { readonly kind: 'cannot'; readonly because: 'no-room'; readonly plasticMl: number; readonly roomMl: number }
  | { readonly kind: 'ask-what-went-in'; readonly asks: WhatWentIn }
  | { readonly kind: 'fault'; readonly fault: MatchFault };

/** Whether an overshot cup can be let down, with what is to be expected of it as it is. */
export interface CutBack extends Partial<Expectation> {
  readonly advice: CutBackAdvice;
  readonly now?: Verdict;
  /** How often it was heated, where that was told. */
  readonly heats?: CupHeats;
  readonly doubt?: Doubt;
  /** With plastic alone, where that brings it nearer. */
  readonly plasticAlone?: Proposal;
  /** With plastic and up to two materials to mend what letting down spoils, where that is nearer still. */
  readonly mended?: Proposal;
  /** The same colour in a new cup. */
  readonly fresh?: RecipeProposal;
}

const WORTH_MENDING = 0.5;
const STEPS = 24;

/**
 * How much clear plastic brings an overshot cup back, what volume results, and whether that is better than starting again.
 *
 * Never throws for what a maker gives.
 */
export function cutBack(question: NextAdditionQuestion): CutBack {
  const { limits = {} } = question;
  const judged = judgedCup(question, { ...limits, mayLetDown: true });
  if (isFaulty(judged)) return { advice: { kind: 'fault', fault: judged.fault } };
  const { now, believed, doubt, problem } = judged;
  const known = { now, ...believed.now, ...defined({ heats: question.heats }) };
  if (question.asks !== undefined) return { advice: { kind: 'ask-what-went-in', asks: question.asks }, ...known };
  if (doubt) return { advice: { kind: 'cannot', because: 'look-first' }, ...known, doubt };
  const left = leftAsItIs(judged, question.seen);
  if (left) return { advice: { kind: 'leave-it', likely: believed.now.likely, ...left }, ...known };
  const { ingredients, plasticMl } = problem;
  const plastic = ingredients.findIndex(({ letsDown }) => letsDown);
  if (plastic < 0)
    return { advice: { kind: 'cannot', because: 'no-room', plasticMl, roomMl: limits.roomMl ?? plasticMl }, ...known };
  return { ...withPlastic(judged, plastic, question), ...known };
}

/** What clear plastic does for a cup that has room for it. */
function withPlastic(judged: JudgedCup, plastic: number, question: NextAdditionQuestion): CutBack {
  const { now, believed, problem, tolerance } = judged;
  const { bench } = question;
  const plasticAlone = plasticByItself(judged, plastic, bench);
  if (!isOvershot(now) && (plasticAlone === undefined || isTooClear(now)))
    return { advice: { kind: 'add', because: 'not-overshot' } };
  const sets = dosesFor(judged, { most: 3, newBottles: 2 }).filter(({ set }) => set.includes(plastic));
  const { proposals } = byBestTools(
    bench,
    (tools) =>
      measuredProposals(
        judged,
        sets,
        tools,
        (each) => each.thin !== undefined && each.additions.length > 0 && gainsEnough(each, judged),
      ),
    tolerance,
    believed.now,
  );
  const [other] = proposals;
  // What plastic alone makes worse is hardly overshot: more plastic than the cup holds would be another cup.
  const worthIt = other !== undefined && (plasticAlone !== undefined || (other.thin?.ml ?? 0) <= problem.plasticMl);
  const alone = plasticAlone?.expected ?? believed.now.expected;
  const mended = worthIt && bestPromise(other).expected < alone - WORTH_MENDING ? other : undefined;
  const anew = freshCup(question);
  const fresh = anew && bestPromise(anew).expected < believed.now.expected ? anew : undefined;
  const found = defined({ plasticAlone, mended, fresh });
  if (mended && !(plasticAlone && isLikelyRight(plasticAlone)))
    return { advice: judge('mended', mended, fresh, question), ...found };
  if (plasticAlone) return { advice: judge('plasticAlone', plasticAlone, fresh, question), ...found };
  const because = 'plastic-does-not-help';
  const isRight = fresh !== undefined && isLikelyRight(bestPromise(fresh));
  return { advice: isRight ? { kind: 'start-over', because } : { kind: 'cannot', because }, ...found };
}

/** The cup with as much plastic as brings it nearest; undefined where none does. */
function plasticByItself(judged: JudgedCup, plastic: number, bench: MatchBench): Proposal | undefined {
  const { mix, ingredients, plasticMl } = judged.problem;
  const share = bestShare(mix, plastic);
  const measured = measureDoses(mix, ingredients, [plastic], share, [plasticMl], bench);
  if (measured.ingredients.length === 0) return undefined;
  const { expect } = figuringOf(judged, bench);
  const expectation = expect(measured.doses);
  const proposal = proposalOf(measured, share, { ...judged, bench, expect, expectation });
  return gainsEnough(proposal, judged) ? proposal : undefined;
}

function isTooClear({ opacity }: Verdict): boolean {
  return opacity !== undefined && opacity.size !== 'right' && opacity.towards === 'clear';
}

/** Whether letting down beats a new cup: by the colour, and by how much plastic each takes. */
function judge(
  by: 'plasticAlone' | 'mended',
  best: Proposal,
  fresh: RecipeProposal | undefined,
  question: NextAdditionQuestion,
): CutBackAdvice {
  if (fresh === undefined) return { kind: 'let-down', by };
  const takesMore = (best.thin?.ml ?? 0) > freshMl(question);
  const left = bestPromise(best);
  const anew = bestPromise(fresh);
  const isAsGood = isLikelyRight(anew) || anew.expected <= left.expected;
  if (!isLikelyRight(left) && anew.expected < left.expected - WORTH_MENDING)
    return { kind: 'start-over', because: 'comes-nearer', than: by };
  if (takesMore && isAsGood) return { kind: 'start-over', because: 'takes-less', than: by };
  if (wearsOut(best) && isAsGood) return { kind: 'let-down', by, newCup: 'spares' };
  if (takesMore) return { kind: 'let-down', by, newCup: 'farther-off' };
  const isNoNearer = isLikelyRight(left) || left.expected <= anew.expected;
  return { kind: 'let-down', by, newCup: isNoNearer ? 'no-nearer' : 'hardly-less' };
}

/** The share of added plastic that leaves least, by trying the whole range and then closing in. */
function bestShare(mix: Parameters<typeof measureDoses>[0], plastic: number): Float64Array {
  const doses = new Float64Array(mix.count);
  const score = (share: number): number => {
    doses[plastic] = share;
    return mix.score(doses);
  };
  const most = mix.most[plastic]!;
  let best = 0;
  for (let step = 1; step <= STEPS; step++)
    if (score((most * step) / STEPS) < score((most * best) / STEPS)) best = step;
  let low = (most * Math.max(0, best - 1)) / STEPS;
  let high = (most * Math.min(STEPS, best + 1)) / STEPS;
  for (let i = 0; i < 20; i++) {
    const one = low + (high - low) / 3;
    const other = high - (high - low) / 3;
    if (score(one) < score(other)) high = other;
    else low = one;
  }
  doses[plastic] = (low + high) / 2;
  return doses;
}
