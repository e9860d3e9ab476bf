/**
 * The question that a cup puts to matching: made from its log in one way, for the book, the commands and the page.
 *
 * @packageDocumentation
 */

import type { CupHeats } from '../cup/heats.ts';
import type { HowLooked } from '../cup/how-looked.ts';
import { type CupState, isEmpty } from '../cup/ledger.ts';
import type { LogRound } from '../cup/log-round.ts';
import type { OpticalModel } from '../optics/optical-model.ts';
import { defined } from '../values/defined.ts';
import { leadsByWeight } from './measure/best-tools.ts';
import { type NextAddition, nextAddition } from './next-addition.ts';
import type { NextAdditionQuestion } from './next-addition-question.ts';
import type { Proposal } from './proposals/proposal.ts';
import type { ToAdd } from './proposals/to-add.ts';
import type { Observation } from './rounds/correct-model.ts';
import { aimAt, type CupAim, type OtherSide } from './rounds/cup-aim.ts';
import { type UnloggedMove, unloggedMoves } from './rounds/unlogged.ts';
import type { MatchBench } from './shelf/match-bench.ts';
import { type MatchMaterial, shelfByName } from './shelf/match-material.ts';
import type { AdditionLimits } from './shelf/usable-materials.ts';
import type { WantedFlake } from './substitutes/flake-match.ts';
import type { SeenViews, TargetPart } from './target/target-part.ts';

/** A round of a log, with what was seen of it; absent where no colour was noted. */
export interface TriedRound extends Pick<LogRound<never>, 'number' | 'cup' | 'left' | 'unlogged'> {
  readonly seen?: SeenViews;
  readonly how?: HowLooked;
}

/** A cup that is to be brought to a part of a target. */
export interface CupAsked {
  /** Before its first round. */
  readonly start: CupState;
  /** All of them, looked at or not; those of cups that were given up for it too. */
  readonly rounds: readonly TriedRound[];
  readonly part: TargetPart;
  /** Flake that is to be seen in it. */
  readonly flakes?: readonly WantedFlake[];
  /** The other cup of a finished bait, behind this one. */
  readonly other?: OtherSide | undefined;
  /** Thickness of a test pour, mm. */
  readonly bodyMm: number;
  /** How often it was heated. */
  readonly heats?: CupHeats | undefined;
  /** Plastic that a new cup would begin with, ml. */
  readonly startMl: number;
}

/** What it may be brought there with. */
export interface AskedWith {
  readonly shelf: readonly MatchMaterial[];
  readonly optics: OpticalModel;
  readonly bench: MatchBench;
  /** ΔE00 */
  readonly tolerance: number;
  readonly limits: AdditionLimits;
}

/** A look that moved with nothing logged since the one before it. */
export interface UnloggedLook {
  readonly move: UnloggedMove;
  /** Number of the round before. */
  readonly since: number;
  /** The cup as it was after that round. */
  readonly cupBefore: CupAsked;
}

/** A question, and what the cup is judged by. */
export interface CupQuestion {
  readonly question: NextAdditionQuestion;
  readonly aim: CupAim;
  /** Its last look moved with nothing logged: what had been proposed before it, if anything was. */
  readonly unlogged?: { readonly proposed?: Proposal };
}

/** What to do with a cup now. */
export interface CupAnswer extends Omit<CupQuestion, 'question'> {
  readonly next: NextAddition;
}

/** The rounds in which a colour was seen, as matching learns from them. */
export function observationsOf(rounds: readonly TriedRound[], bodyMm: number): readonly Observation[] {
  return rounds.flatMap(({ number, cup, seen, unlogged, how = {} }): Observation[] => {
    const { thicknessMm = bodyMm, checked } = how;
    return seen ? [{ number, cup, thicknessMm, seen, ...defined({ unlogged, checked }) }] : [];
  });
}

/** What is to be asked of the last round before anything is made of it; undefined where nothing is. */
export function unloggedLook(asked: CupAsked): UnloggedLook | undefined {
  const { rounds } = asked;
  if (rounds.at(-1)?.seen === undefined) return undefined;
  const seen = rounds.filter((round): round is TriedRound & { readonly seen: SeenViews } => round.seen !== undefined);
  const move = unloggedMoves(seen).at(-1);
  const before = seen.at(-2);
  if (!move || !before) return undefined;
  return { move, since: before.number, cupBefore: { ...asked, rounds: rounds.slice(0, rounds.indexOf(before) + 1) } };
}

/** The question that a cup as it is now puts to matching, and what it is judged by. */
export function cupQuestion(
  { start, rounds, part, flakes, other, bodyMm, startMl, heats }: CupAsked,
  asking: AskedWith,
): CupQuestion {
  const learned = observationsOf(rounds, bodyMm);
  const aim = aimAt(part, learned, { shelf: shelfByName(asking.shelf), optics: asking.optics, bodyMm }, other);
  const last = rounds.at(-1);
  const cup = last?.left ?? start;
  const seen = isEmpty(cup) ? undefined : last?.seen;
  const question = {
    ...asking,
    cup,
    target: aim.part,
    rounds: learned,
    startMl,
    // Before its first round nothing was melted yet.
    ...(last && { heats }),
    ...defined({ flakes, seen: seen && aim.asTarget(seen, cup, last?.how?.thicknessMm) }),
  };
  return { aim, question };
}

/** The question of a cup, with what must be answered before anything is done to it. */
export function questionAskedFirst(asked: CupAsked, asking: AskedWith): CupQuestion {
  const made = cupQuestion(asked, asking);
  const unlogged = unloggedLook(asked);
  if (!unlogged) return made;
  const [proposed] = nextForCup(unlogged.cupBefore, asking).next.proposals;
  const { move, since } = unlogged;
  const asks = { ...move, since, ...(proposed && { proposed: asItLeads(proposed) }) };
  return { ...made, question: { ...made.question, asks }, unlogged: defined({ proposed }) };
}

/** What to do with a cup now. */
export function nextForCup(asked: CupAsked, asking: AskedWith): CupAnswer {
  const { question, ...judgedBy } = questionAskedFirst(asked, asking);
  return { ...judgedBy, next: nextAddition(question) };
}

/** What a proposal adds, in the way of measuring it that leads. */
function asItLeads({ additions, thin, left, weighedDeltaE }: Proposal): ToAdd {
  const asMeasured = leadsByWeight(left.deltaE, left.within, weighedDeltaE)
    ? additions.map(({ title, text, weighed }) => ({ title, text: weighed?.text ?? text }))
    : additions;
  return { additions: asMeasured, ...defined({ thin }) };
}
