/**
 * What an answer to "what do I add now" says.
 *
 * @packageDocumentation
 */
import { defined } from '../values/defined.ts';
import { type LeftByTools, leastLeft } from './measure/best-tools.ts';
import { WORTH_A_WORD, weighedWords, weightsText } from './measure/weigh-doses.ts';
import type { Proposal } from './proposals/proposal.ts';
import type { RecipeProposal } from './proposals/recipe-proposal.ts';
import { type MatchBench, plasticText } from './shelf/match-bench.ts';
import type { MissingKind } from './shelf/missing-kind.ts';
import type { AdditionLimits } from './shelf/usable-materials.ts';
import type { Verdict } from './target/verdict.ts';
import { differenceText, listed } from './words.ts';

/** What a proposal leaves, measured and weighed. */
export function leftBy({ left: { deltaE }, weighedDeltaE }: Proposal): LeftByTools {
  return { deltaE, ...defined({ weighedDeltaE }) };
}

/** What comes nearer than a proposal that only the bench's steps keep from being right. */
export function nearerWords({ additions, left, weighedDeltaE = left.deltaE }: Proposal): string {
  return weighedDeltaE < left.deltaE - WORTH_A_WORD
    ? `weighed, with ${weightsText(additions)}, it leaves ΔE ${differenceText(weighedDeltaE)}`
    : 'a finer measure, or a larger cup, would come nearer';
}

/** That the shelf does not get there, how near it gets, and what would help. */
export function cannotSentence(
  best: Proposal | undefined,
  missing: readonly MissingKind[],
  now: Verdict,
  again: RecipeProposal | undefined,
): string {
  const reach = best
    ? `Nothing on the shelf gets this cup within tolerance. The first proposal leaves ΔE ${differenceText(best.left.deltaE)}${weighedWords(leftBy(best))}: ${best.sentence}`
    : `Nothing on the shelf brings this cup nearer than it is, ΔE ${differenceText(now.deltaE)}.`;
  const help = missing.length > 0 ? ` What would help: ${listed(missing.map(({ words }) => words))}.` : '';
  const fresh = again ? ` A new cup comes nearer: ${again.sentence}` : '';
  return `${reach}${help}${fresh}`;
}

/** That a cup is to be looked at before anything is done to it. */
export function lookFirstSentence({ deltaE }: Verdict): string {
  return `Until then leave the cup as it is: nothing is sure to bring it nearer than the ΔE ${differenceText(deltaE)} that it was seen to be off.`;
}

/** What of a proposal that is to be weighed is too little for it; else nothing. */
export function tooLittleWords(best: Pick<Proposal, 'tooLittle' | 'weighedDeltaE'> | undefined): string {
  return best?.tooLittle === undefined || best.weighedDeltaE !== undefined ? '' : ` ${best.tooLittle}`;
}

/** What of a proposal is not there; else nothing. */
export function runsShortWords(best: Pick<Proposal, 'runsShort'> | undefined): string {
  return best?.runsShort === undefined ? '' : ` ${best.runsShort}`;
}

/** That mending a cup takes more than a new one. */
export function afreshSentence(best: Proposal, anew: RecipeProposal, tolerance: number): string {
  const misses = leastLeft(anew) > tolerance ? ' Neither is within tolerance.' : '';
  return `Start again with a new cup: ${anew.sentence} Mending this one takes more than that, and leaves ΔE ${differenceText(best.left.deltaE)}: ${best.sentence}${misses}`;
}

// Less room than this part of what a cup is filled to is none to thin in: convention of this book.
const NO_ROOM = 0.03;

/** What to say of a cup that is fuller than it is to be filled, or too full to be thinned though that might help; nothing of another. */
export function crowdedWords(
  plasticMl: number,
  { roomMl = Number.POSITIVE_INFINITY }: AdditionLimits,
  bench: MatchBench,
  isRight: boolean,
): string {
  if (plasticMl > roomMl + 0.5)
    return ` There are ${plasticText(plasticMl, bench)} in the cup, which is to be filled to ${plasticText(roomMl, bench)}: hot plastic foams.`;
  return isRight || plasticMl < roomMl * (1 - NO_ROOM)
    ? ''
    : ` The cup is as full as it is to be, ${plasticText(roomMl, bench)}: to thin it with clear plastic, pour some of it into another cup first.`;
}
