import { defined } from '../values/defined.ts';
import type { AnyLook } from './any-look.ts';
import type { CupState } from './ledger.ts';
import type { LoggedAmount } from './logged-amount.ts';

/** One trial of a cup. */
export interface LogRound<Look extends AnyLook> {
  /** From 1. */
  readonly number: number;
  /** Index of its first step in the log. */
  readonly first: number;
  /** Index of the first step that says what was seen. */
  readonly looked?: number;
  /** It is the first of a new cup: what was in the one before, and was poured away. */
  readonly pouredAway?: CupState;
  readonly added: readonly LoggedAmount[];
  readonly plasticAddedMl: number;
  readonly pouredMl: number;
  readonly heatedTo?: number;
  /** How many heats the cup had by its look, or else its pour, and how many of them are this round's. */
  readonly heats: number;
  readonly newHeats: number;
  readonly heldMinutes?: number;
  readonly note?: string;
  /** None where nobody looked. */
  readonly seen: readonly Look[];
  /** A colour was seen, and nothing is logged between that and the colour before: neither that something went in, nor that nothing did. */
  readonly unlogged?: true;
  /** With all that went in, before the pour. */
  readonly cup: CupState;
  /** After the pour. */
  readonly left: CupState;
}

/** A round while it is being read. */
export interface DraftRound<Look> {
  readonly first: number;
  looked?: number;
  readonly pouredAway?: CupState;
  readonly added: LoggedAmount[];
  plasticAddedMl: number;
  pouredMl: number;
  heatedTo?: number;
  heats: number;
  heldMinutes?: number;
  readonly notes: string[];
  seen: readonly Look[];
  isLogged: boolean;
  cup: CupState;
  left: CupState;
}

/** A round with what was poured of it later on, and noted of that. */
export function joined<Look>(round: DraftRound<Look>, poured: DraftRound<Look>): DraftRound<Look> {
  const heats = [round.heatedTo, poured.heatedTo].filter((each) => each !== undefined);
  const held = [round.heldMinutes, poured.heldMinutes].filter((each) => each !== undefined);
  return {
    ...round,
    pouredMl: round.pouredMl + poured.pouredMl,
    ...(heats.length > 0 ? { heatedTo: Math.max(...heats) } : {}),
    ...(held.length > 0 ? { heldMinutes: held.reduce((sum, each) => sum + each, 0) } : {}),
    notes: [...round.notes, ...poured.notes],
    left: poured.left,
  };
}

/** Rounds that were read, in their order. */
export function roundsOf<Look extends AnyLook>(drafts: readonly DraftRound<Look>[]): readonly LogRound<Look>[] {
  // A cup's first look is of what it was begun with.
  let isLogged = true;
  return drafts.map((draft, index): LogRound<Look> => {
    const { first, looked, pouredAway, added, plasticAddedMl, pouredMl, heatedTo, notes, seen, cup, left } = draft;
    const { heats, heldMinutes } = draft;
    const before = pouredAway === undefined ? drafts[index - 1] : undefined;
    isLogged ||= draft.isLogged || pouredAway !== undefined;
    const isSeen = seen.some(({ overWhite, overBlack }) => overWhite !== undefined || overBlack !== undefined);
    const unlogged = isSeen && !isLogged ? (true as const) : undefined;
    if (isSeen) isLogged = false;
    return {
      number: index + 1,
      first,
      added,
      plasticAddedMl,
      pouredMl,
      heats,
      newHeats: heats - (before?.heats ?? 0),
      cup,
      seen,
      left,
      ...defined({ looked, pouredAway, heatedTo, heldMinutes, unlogged }),
      ...(notes.length > 0 ? { note: notes.join(' ') } : {}),
    };
  });
}
