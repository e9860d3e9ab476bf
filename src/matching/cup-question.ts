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
import type { Beliefs } from './belief/beliefs.ts';
import { steadiedBench } from './belief/steadied-bench.ts';
import { leadsByWeight } from './measure/best-tools.ts';
import { type NextAddition, nextAddition } from './next-addition.ts';
import type { CupSeen, NextAdditionQuestion } from './next-addition-question.ts';
import type { Proposal } from './proposals/proposal.ts';
import type { ToAdd } from './proposals/to-add.ts';
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
  /** The other cup as it was, where a side of a finished bait was looked at; unset: the cup was poured by itself. */
  readonly behind?: CupState;
  /** How far that may be from what was there, ΔE00: one standard deviation along each of three axes (see `LookDoubt`). */
  readonly axisSd?: number;
}

/** A cup that is to be brought to a part of a target. */
export interface CupAsked {
  /** Its name among the looks (`TaughtLook.cup`); unset: none of it was learned from. */
  readonly key?: string;
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
  /** What looks have taught; those at the cup too. */
  readonly belief: Beliefs;
  readonly bench: MatchBench;
  /** ΔE00 */
  readonly tolerance: number;
  readonly limits: AdditionLimits;
  /** What looks had taught before those at a cup from a round on; unset: nothing else than now. */
  readonly before?: (cup: string, round: number) => Pick<AskedWith, 'shelf' | 'optics' | 'belief'>;
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

/** What is to be asked of the last round before anything is made of it; undefined where nothing is. */
export function unloggedLook(asked: CupAsked): UnloggedLook | undefined {
  const { rounds } = asked;
  if (rounds.at(-1)?.seen === undefined) return undefined;
  // What is seen of a finished bait moves with the other cup too.
  if (rounds.at(-1)?.behind !== undefined) return undefined;
  const seen = rounds.filter(
    (round): round is TriedRound & { readonly seen: SeenViews } =>
      round.seen !== undefined && round.behind === undefined,
  );
  const move = unloggedMoves(seen).at(-1);
  const before = seen.at(-2);
  if (!move || !before) return undefined;
  return { move, since: before.number, cupBefore: { ...asked, rounds: rounds.slice(0, rounds.indexOf(before) + 1) } };
}

/** The question that a cup as it is now puts to matching, and what it is judged by. */
export function cupQuestion(
  { key, start, rounds, part, flakes, other, bodyMm, startMl, heats }: CupAsked,
  asking: AskedWith,
): CupQuestion {
  const aim = aimAt(part, { shelf: shelfByName(asking.shelf), optics: asking.optics, bodyMm, key }, other);
  const last = rounds.at(-1);
  const cup = last?.left ?? start;
  const seen = isEmpty(cup) ? undefined : seenNow(last, aim, cup);
  const { before: _, ...rest } = asking;
  const question = {
    ...rest,
    cup,
    target: aim.part,
    startMl,
    // Before its first round nothing was melted yet.
    ...(last && { heats }),
    ...defined({ flakes, key, seen }),
  };
  return { aim, question };
}

/** What was seen of a cup in its last round, as the target was seen. */
function seenNow(last: TriedRound | undefined, aim: CupAim, cup: CupState): CupSeen | undefined {
  const { seen, axisSd, behind, how: { thicknessMm, checked } = {} } = last ?? {};
  return seen && { ...aim.asTarget(seen, cup, thicknessMm, behind), ...defined({ axisSd, checked }) };
}

/** The question of a cup, with what must be answered before anything is done to it. */
export function questionAskedFirst(asked: CupAsked, asking: AskedWith): CupQuestion {
  const made = cupQuestion(asked, asking);
  const unlogged = unloggedLook(asked);
  if (!unlogged) return made;
  const then = asked.key === undefined ? undefined : asking.before?.(asked.key, asked.rounds.at(-1)!.number);
  const before = then ? { ...asking, ...then, bench: steadiedBench(asking.bench, then.belief, then.shelf) } : asking;
  const [proposed] = nextForCup(unlogged.cupBefore, before).next.proposals;
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
function asItLeads(proposal: Proposal): ToAdd {
  const { additions, thin } = proposal;
  const asMeasured = leadsByWeight(proposal)
    ? additions.map(({ title, text, weighed }) => ({ title, text: weighed?.text ?? text }))
    : additions;
  return { additions: asMeasured, ...defined({ thin }) };
}
