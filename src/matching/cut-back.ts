import type { CupHeats } from '../cup/heats.ts';
import { defined } from '../values/defined.ts';
import { LEAST_GAIN } from './conventions.ts';
import { dosesFor, isFaulty, type JudgedCup, judgedCup, measuredProposals } from './judged-cup.ts';
import type { MatchFault } from './match-fault.ts';
import { byBestTools, leastLeft } from './measure/best-tools.ts';
import { measureDoses } from './measure/measure-doses.ts';
import type { NextAdditionQuestion } from './next-addition-question.ts';
import { wearsOut } from './proposals/addition-heat.ts';
import { freshCup, freshMl } from './proposals/fresh-cup.ts';
import { leftBy, type Proposal, proposalOf } from './proposals/proposal.ts';
import type { RecipeProposal } from './proposals/recipe-proposal.ts';
import type { Doubt } from './rounds/reckoning.ts';
import type { WhatWentIn } from './rounds/unlogged.ts';
import type { MatchBench } from './shelf/match-bench.ts';
import { isOvershot } from './target/overshot.ts';
import type { Verdict } from './target/verdict.ts';

/** Whether to let a cup down with clear plastic, and why. */
export type CutBackAdvice =
  | { readonly kind: 'leave-it' }
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
  /** There is not too much of anything in it, or it is to be looked at first. */
  | { readonly kind: 'add'; readonly because: 'not-overshot' | 'half-seen' }
  | { readonly kind: 'cannot'; readonly because: 'plastic-does-not-help' }
  | { readonly kind: 'cannot'; readonly because: 'no-room'; readonly plasticMl: number; readonly roomMl: number }
  | { readonly kind: 'ask-what-went-in'; readonly asks: WhatWentIn }
  | { readonly kind: 'fault'; readonly fault: MatchFault };

/** Whether an overshot cup can be let down. */
export interface CutBack {
  readonly advice: CutBackAdvice;
  readonly now?: Verdict;
  /** How often it was heated, where that was told. */
  readonly heats?: CupHeats;
  readonly doubt?: Doubt;
  /** With plastic alone, where that brings it nearer. */
  readonly plasticAlone?: Proposal;
  /** With plastic and up to two materials to mend what letting down spoils, where that is nearer still. */
  readonly mended?: Proposal;
  /** The same colour in a new cup, with what the rounds have taught. */
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
  const { bench, tolerance, limits = {} } = question;
  const judged = judgedCup(question, { ...limits, mayLetDown: true });
  if (isFaulty(judged)) return { advice: { kind: 'fault', fault: judged.fault } };
  const { now, correction, predictedDeltaE, problem, reckoned } = judged;
  const { mix, ingredients, plasticMl } = problem;
  const { isDone, below, doubt } = reckoned;
  const told = { now, ...defined({ heats: question.heats }) };
  if (question.asks !== undefined) return { advice: { kind: 'ask-what-went-in', asks: question.asks }, ...told };
  if (isDone) return { advice: { kind: 'leave-it' }, ...told };
  const known = { ...told, ...defined({ doubt }) };
  if (now.within) return { advice: { kind: 'add', because: 'half-seen' }, ...known };
  const plastic = ingredients.findIndex(({ letsDown }) => letsDown);
  if (plastic < 0)
    return { advice: { kind: 'cannot', because: 'no-room', plasticMl, roomMl: limits.roomMl ?? plasticMl }, now };

  const plasticAlone = plasticByItself(judged, plastic, bench);
  if (!isOvershot(now) && (plasticAlone === undefined || isTooClear(now)))
    return { advice: { kind: 'add', because: 'not-overshot' }, now };
  const withPlastic = dosesFor(judged, { most: 3, newBottles: 2 }).filter(({ set }) => set.includes(plastic));
  const { proposals } = byBestTools(
    bench,
    (tools) =>
      measuredProposals(
        judged,
        withPlastic,
        tools,
        ({ ingredients: used, doses }) =>
          used.length > 1 &&
          used.some(({ candidate }) => candidate === plastic) &&
          mix.worst(doses) < below - LEAST_GAIN,
      ),
    leftBy,
    tolerance,
    predictedDeltaE,
  );
  const [other] = proposals;
  // What plastic alone makes worse is hardly overshot: more plastic than the cup holds would be another cup.
  const worthIt = other !== undefined && (plasticAlone !== undefined || (other.thin?.ml ?? 0) <= plasticMl);
  const mended =
    worthIt && leastLeft(leftBy(other)) < (plasticAlone?.left.deltaE ?? below) - WORTH_MENDING ? other : undefined;
  const anew = freshCup(question, correction);
  const fresh = anew && leastLeft(anew) < below ? anew : undefined;
  const found = { ...known, ...defined({ plasticAlone, mended, fresh }) };
  if (mended && !plasticAlone?.left.within) return { advice: judge('mended', mended, fresh, question), ...found };
  if (plasticAlone) return { advice: judge('plasticAlone', plasticAlone, fresh, question), ...found };
  const because = 'plastic-does-not-help';
  const isRight = fresh !== undefined && leastLeft(fresh) <= tolerance;
  return { advice: isRight ? { kind: 'start-over', because } : { kind: 'cannot', because }, ...found };
}

/** The cup with as much plastic as brings it nearest; undefined where none does. */
function plasticByItself(judged: JudgedCup, plastic: number, bench: MatchBench): Proposal | undefined {
  const { problem, reckoned } = judged;
  const { mix, ingredients, plasticMl } = problem;
  const share = bestShare(mix, plastic);
  const measured = measureDoses(mix, ingredients, [plastic], share, [plasticMl], bench);
  return measured.ingredients.length > 0 && mix.worst(measured.doses) < reckoned.below - LEAST_GAIN
    ? proposalOf(measured, share, { ...judged, bench })
    : undefined;
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
  const { tolerance } = question;
  const takesMore = (best.thin?.ml ?? 0) > freshMl(question);
  const left = leastLeft(leftBy(best));
  const anew = leastLeft(fresh);
  if (left > tolerance && anew < left - WORTH_MENDING) return { kind: 'start-over', because: 'comes-nearer', than: by };
  if (takesMore && anew <= Math.max(tolerance, left)) return { kind: 'start-over', because: 'takes-less', than: by };
  if (wearsOut(best) && anew <= Math.max(tolerance, left)) return { kind: 'let-down', by, newCup: 'spares' };
  if (takesMore) return { kind: 'let-down', by, newCup: 'farther-off' };
  return { kind: 'let-down', by, newCup: left <= tolerance || left <= anew ? 'no-nearer' : 'hardly-less' };
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
