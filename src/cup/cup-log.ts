/**
 * The log of a cup: steps in, rounds out. What a round is, and where it ends, is decided here for the book, the commands and the page.
 *
 * A round is one trial of a cup: what went in, what was poured, what was seen. Another one begins
 * - where something goes in after a pour or a look;
 * - with a look at a pour that was made after the look before, the pour with it;
 * - with a look over a backing that the round was seen over already: over white, then over black is one look;
 * - with a new cup.
 *
 * Units: ml, g, °C.
 *
 * @packageDocumentation
 */
import { defined } from '../values/defined.ts';
import { type AnyLook, oneLook, sharesView } from './any-look.ts';
import { lookedAlike } from './how-looked.ts';
import {
  type Amounts,
  afterStep,
  type CupState,
  isEmpty,
  isOverPour,
  type LedgerStep,
  naiveSum,
  type OverPour,
} from './ledger.ts';

/** What went into a cup: grams, and the dose as it is written. */
export interface LoggedAmount {
  readonly material: string;
  readonly dose: string;
  readonly grams: number;
}

/** One thing that was done to a cup, or noted of it. */
export type LogStep<Look extends AnyLook> =
  /** Begun afresh with so many ml of plastics; what was in the cup before is poured away. */
  | { readonly kind: 'new-cup'; readonly plastics: Amounts }
  | { readonly kind: 'plastic'; readonly material: string; readonly ml: number }
  /** Nothing at all: somebody says that nothing went in. */
  | { readonly kind: 'add'; readonly amounts: readonly LoggedAmount[] }
  | { readonly kind: 'pour'; readonly ml: number }
  /** At one pour: several where it was looked at in several ways. */
  | { readonly kind: 'see'; readonly looks: readonly Look[] }
  | { readonly kind: 'heat'; readonly celsius?: number; readonly again?: boolean }
  | { readonly kind: 'note'; readonly text: string };

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
  readonly reheated: boolean;
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

/** What a log comes to. */
export interface CupHistory<Look extends AnyLook> {
  readonly rounds: readonly LogRound<Look>[];
  /** What is left. */
  readonly left: CupState;
  /** What is left, or where nothing is, what was in the cup before it was poured empty. */
  readonly last: CupState;
  /** As if nothing had been poured since the cup was begun. */
  readonly naive: CupState;
}

/** A round while it is being read. */
interface Draft<Look> {
  readonly first: number;
  looked?: number;
  readonly pouredAway?: CupState;
  readonly added: LoggedAmount[];
  plasticAddedMl: number;
  pouredMl: number;
  heatedTo?: number;
  reheated: boolean;
  readonly notes: string[];
  seen: readonly Look[];
  isLogged: boolean;
  cup: CupState;
  left: CupState;
}

/**
 * Reads a log from its first step to its last. A pour of more than there is is left out.
 *
 * @param volumePerGram ml that a gram of a material adds
 */
export function readLog<Look extends AnyLook>(
  start: CupState,
  steps: readonly LogStep<Look>[],
  volumePerGram: (material: string) => number,
): CupHistory<Look> {
  const log = new CupLog<Look>(start, volumePerGram);
  for (const step of steps) log.take(step);
  return log.history();
}

/** A log that is read step by step, where what a step means depends on what the cup holds by then. */
export class CupLog<Look extends AnyLook> {
  /** What the cup was begun with. */
  private start: CupState;
  private readonly volumePerGram: (material: string) => number;
  /** Since the cup was begun. */
  private ledger: LedgerStep[] = [];
  private readonly rounds: Draft<Look>[] = [];
  /** Begun by a pour after a look: a round of its own if it is looked at, else part of the round before. */
  private poured: Draft<Look> | undefined;
  private now: CupState;
  private count = 0;

  constructor(start: CupState, volumePerGram: (material: string) => number) {
    this.start = start;
    this.volumePerGram = volumePerGram;
    this.now = start;
  }

  /** What the cup holds now. */
  get cup(): CupState {
    return this.now;
  }

  /** What was poured of it so far, ml. */
  get pouredMl(): number {
    return this.ledger.reduce((sum, step) => sum + (step.kind === 'pour' ? step.ml : 0), 0);
  }

  /** Takes the next step; a pour of more than there is is not taken, and returned. */
  take(step: LogStep<Look>): OverPour | undefined {
    const index = this.count++;
    switch (step.kind) {
      case 'new-cup':
        this.beginCup(step.plastics, index);
        return undefined;
      case 'plastic': {
        const round = this.roundToAddTo(index);
        this.put(step);
        round.plasticAddedMl += step.ml;
        this.mixed(round);
        return undefined;
      }
      case 'add': {
        const round = this.roundToAddTo(index);
        for (const { material, grams } of step.amounts) this.put({ kind: 'add', material, grams });
        round.added.push(...step.amounts);
        this.mixed(round);
        return undefined;
      }
      case 'pour':
        return this.pour(step.ml, index);
      case 'see':
        this.see(step.looks, index);
        return undefined;
      case 'heat': {
        const round = this.current(index);
        if (step.celsius !== undefined) round.heatedTo = Math.max(step.celsius, round.heatedTo ?? step.celsius);
        round.reheated ||= step.again === true;
        return undefined;
      }
      case 'note':
        this.current(index).notes.push(step.text);
        return undefined;
    }
  }

  /** All that was read. */
  history(): CupHistory<Look> {
    const drafts = this.poured ? [...this.rounds.slice(0, -1), joined(this.rounds.at(-1)!, this.poured)] : this.rounds;
    const last = isEmpty(this.now) ? (drafts.findLast(({ cup }) => !isEmpty(cup))?.cup ?? this.start) : this.now;
    // A cup's first look is of what it was begun with.
    let isLogged = true;
    const rounds = drafts.map((draft, index): LogRound<Look> => {
      const { first, looked, pouredAway, added, plasticAddedMl, pouredMl, heatedTo, reheated, notes, seen, cup, left } =
        draft;
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
        reheated,
        cup,
        seen,
        left,
        ...defined({ looked, pouredAway, heatedTo, unlogged }),
        ...(notes.length > 0 ? { note: notes.join(' ') } : {}),
      };
    });
    return { rounds, left: this.now, last, naive: naiveSum(this.start, this.ledger) };
  }

  private put(step: LedgerStep): OverPour | undefined {
    const next = afterStep(this.now, step, this.volumePerGram);
    if (isOverPour(next)) return next;
    this.now = next;
    this.ledger.push(step);
    return undefined;
  }

  private begin(first: number): Draft<Look> {
    return {
      first,
      added: [],
      plasticAddedMl: 0,
      pouredMl: 0,
      reheated: false,
      notes: [],
      seen: [],
      isLogged: false,
      cup: this.now,
      left: this.now,
    };
  }

  private open(round: Draft<Look>): Draft<Look> {
    this.rounds.push(round);
    return round;
  }

  /** The round that goes on. */
  private current(index: number): Draft<Look> {
    return this.poured ?? this.rounds.at(-1) ?? this.open(this.begin(index));
  }

  /** What was poured after the last look, and not looked at, belongs to that round. */
  private settle(): void {
    if (!this.poured) return;
    this.rounds.push(joined(this.rounds.pop()!, this.poured));
    this.poured = undefined;
  }

  private beginCup(plastics: Amounts, index: number): void {
    this.settle();
    const pouredAway = this.now;
    this.start = { plastics, materials: {} };
    this.now = this.start;
    this.ledger = [];
    this.open({ ...this.begin(index), pouredAway });
  }

  private roundToAddTo(index: number): Draft<Look> {
    this.settle();
    const last = this.rounds.at(-1);
    return last && last.pouredMl === 0 && last.seen.length === 0 ? last : this.open(this.begin(index));
  }

  private mixed(round: Draft<Look>): void {
    round.isLogged = true;
    round.cup = this.now;
    round.left = this.now;
  }

  private pour(ml: number, index: number): OverPour | undefined {
    const before = this.current(index);
    const round = before.seen.length === 0 ? before : this.begin(index);
    const over = this.put({ kind: 'pour', ml });
    if (over) return over;
    if (round !== before) this.poured = round;
    round.pouredMl += ml;
    round.left = this.now;
    return undefined;
  }

  private see(looks: readonly Look[], index: number): void {
    let round = this.current(index);
    if (this.poured) {
      this.open(this.poured);
      this.poured = undefined;
    } else if (round.seen.some((one) => looks.some((other) => sharesView(one, other)))) {
      round = this.open(this.begin(index));
    }
    round.looked ??= index;
    const [last, ...others] = round.seen.toReversed();
    const [look, ...more] = looks;
    // Over white, then over black is one look.
    if (last && look && more.length === 0 && lookedAlike(last, look)) {
      round.seen = [...others.toReversed(), oneLook(last, look)];
    } else round.seen = [...round.seen, ...looks];
  }
}

/** A round with what was poured of it later on, and noted of that. */
function joined<Look>(round: Draft<Look>, poured: Draft<Look>): Draft<Look> {
  const heats = [round.heatedTo, poured.heatedTo].filter((each) => each !== undefined);
  return {
    ...round,
    pouredMl: round.pouredMl + poured.pouredMl,
    ...(heats.length > 0 ? { heatedTo: Math.max(...heats) } : {}),
    reheated: round.reheated || poured.reheated,
    notes: [...round.notes, ...poured.notes],
    left: poured.left,
  };
}
