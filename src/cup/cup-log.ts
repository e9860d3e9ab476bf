/**
 * The log of a cup: steps in, rounds out. What a round is, and where it ends, is decided here for the book, the commands and the page.
 *
 * A round is one trial of a cup: what went in, what was poured, what was seen. Another one begins
 * - where something goes in after a pour or a look;
 * - with a look at a pour that was made after the look before, the pour with it;
 * - with a look over a backing that the round was seen over already, or at another time after the pour: over white, then over black is
 *   one look, hot and next day are two;
 * - with a new cup.
 *
 * A cup that is heated again after a look is heated for what comes next: for another round, if there is one.
 *
 * Units: ml, g, °C, minutes.
 *
 * @packageDocumentation
 */
import { type AnyLook, isLater, oneLook, sharesView } from './any-look.ts';
import { type CupHeats, HeatCount, type HeatTurn } from './heats.ts';
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
import { type DraftRound, joined, type LogRound, roundsOf } from './log-round.ts';
import { type LoggedAmount, namesInAmounts, stepOfAmount } from './logged-amount.ts';

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
  | {
      readonly kind: 'heat';
      readonly celsius?: number;
      /** How many times it was heated again. */
      readonly again?: number;
      /** It is noted before what it is heated for; what went in since the last pour or look went in with the first of these heats. */
      readonly ahead?: true;
      /** Time above 160 °C. */
      readonly heldMinutes?: number;
    }
  | { readonly kind: 'note'; readonly text: string };

/** What a log comes to. */
export interface CupHistory<Look extends AnyLook> {
  readonly rounds: readonly LogRound<Look>[];
  /** What is left. */
  readonly left: CupState;
  /** What is left, or where nothing is, what was in the cup before it was poured empty. */
  readonly last: CupState;
  /** As if nothing had been poured since the cup was begun. */
  readonly naive: CupState;
  /** Of the cup that there is now. */
  readonly heats: CupHeats;
  /** Each time that it was heated again, or one of the cups before it. */
  readonly turns: readonly HeatTurn[];
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
  private readonly rounds: DraftRound<Look>[] = [];
  /** Begun by a pour or a heat after a look: a round of its own if more comes of it, else part of the round before. */
  private poured: DraftRound<Look> | undefined;
  private readonly heats = new HeatCount();
  private now: CupState;
  private count = 0;

  constructor(start: CupState, volumePerGram: (material: string) => number) {
    this.start = start;
    this.volumePerGram = volumePerGram;
    this.now = start;
    this.heats.begin(namesIn(start));
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
        this.heats.put([step.material], index);
        round.plasticAddedMl += step.ml;
        this.mixed(round);
        return undefined;
      }
      case 'add': {
        const round = this.roundToAddTo(index);
        for (const amount of step.amounts) this.put(stepOfAmount(amount));
        if (step.amounts.length > 0) this.heats.put(namesInAmounts(step.amounts), index);
        round.added.push(...step.amounts);
        this.mixed(round);
        return undefined;
      }
      case 'pour':
        return this.pour(step.ml, index);
      case 'see':
        this.see(step.looks, index);
        return undefined;
      case 'heat':
        this.heat(step, index);
        return undefined;
      case 'note':
        this.current(index).notes.push(step.text);
        return undefined;
    }
  }

  /** All that was read. */
  history(): CupHistory<Look> {
    const drafts = this.poured ? [...this.rounds.slice(0, -1), joined(this.rounds.at(-1)!, this.poured)] : this.rounds;
    const last = isEmpty(this.now) ? (drafts.findLast(({ cup }) => !isEmpty(cup))?.cup ?? this.start) : this.now;
    const rounds = roundsOf(drafts);
    const { turns } = this.heats;
    return { rounds, left: this.now, last, naive: naiveSum(this.start, this.ledger), heats: this.heats.now(), turns };
  }

  private put(step: LedgerStep): OverPour | undefined {
    const next = afterStep(this.now, step, this.volumePerGram);
    if (isOverPour(next)) return next;
    this.now = next;
    this.ledger.push(step);
    return undefined;
  }

  private begin(first: number): DraftRound<Look> {
    return {
      first,
      added: [],
      plasticAddedMl: 0,
      pouredMl: 0,
      heats: this.heats.heats,
      notes: [],
      seen: [],
      isLogged: false,
      cup: this.now,
      left: this.now,
    };
  }

  private open(round: DraftRound<Look>): DraftRound<Look> {
    this.rounds.push(round);
    return round;
  }

  /** The round that goes on. */
  private current(index: number): DraftRound<Look> {
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
    this.heats.begin(namesIn(this.now));
    this.open({ ...this.begin(index), pouredAway });
  }

  private roundToAddTo(index: number): DraftRound<Look> {
    if (this.poured?.pouredMl === 0) {
      this.open(this.poured);
      this.poured = undefined;
    } else this.settle();
    const last = this.rounds.at(-1);
    return last && last.pouredMl === 0 && last.seen.length === 0 ? last : this.open(this.begin(index));
  }

  private mixed(round: DraftRound<Look>): void {
    round.isLogged = true;
    round.heats = this.heats.heats;
    round.cup = this.now;
    round.left = this.now;
  }

  private pour(ml: number, index: number): OverPour | undefined {
    const before = this.current(index);
    const round = before.seen.length === 0 ? before : this.begin(index);
    const over = this.put({ kind: 'pour', ml });
    if (over) return over;
    this.heats.poured(index);
    if (isEmpty(this.now)) this.heats.emptied();
    if (round !== before) this.poured = round;
    round.pouredMl += ml;
    round.heats = this.heats.heats;
    round.left = this.now;
    return undefined;
  }

  /** What it is heated for after a look is not known yet. */
  private heat(step: Extract<LogStep<Look>, { kind: 'heat' }>, index: number): void {
    const { celsius, again = 0, ahead = false, heldMinutes } = step;
    const last = this.rounds.at(-1);
    if ((again > 0 || ahead) && !this.poured && last && last.seen.length > 0) this.poured = this.begin(index);
    for (let turn = 0; turn < again; turn++) this.heats.again(index, ahead && turn === 0);
    const round = this.current(index);
    if (again > 0 && round.pouredMl === 0) round.heats = this.heats.heats;
    if (celsius !== undefined) {
      round.heatedTo = Math.max(celsius, round.heatedTo ?? celsius);
      this.heats.reached(celsius);
    }
    if (heldMinutes === undefined) return;
    round.heldMinutes = (round.heldMinutes ?? 0) + heldMinutes;
    this.heats.held(heldMinutes);
  }

  /** The round that a look is of. */
  private roundToSee(looks: readonly Look[], index: number): DraftRound<Look> {
    const last = this.rounds.at(-1);
    const isAgain =
      last?.seen.some((one) => looks.some((other) => sharesView(one, other) || isLater(one, other))) === true;
    if (this.poured && (this.poured.pouredMl > 0 || isAgain)) {
      const round = this.open(this.poured);
      this.poured = undefined;
      return round;
    }
    this.settle();
    return isAgain ? this.open(this.begin(index)) : this.current(index);
  }

  private see(looks: readonly Look[], index: number): void {
    const round = this.roundToSee(looks, index);
    this.heats.looked(looks.map(({ after }) => after));
    if (round.seen.length === 0) round.heats = this.heats.heats;
    round.looked ??= index;
    const [last, ...others] = round.seen.toReversed();
    const [look, ...more] = looks;
    // Over white, then over black is one look.
    if (last && look && more.length === 0 && lookedAlike(last, look)) {
      round.seen = [...others.toReversed(), oneLook(last, look)];
    } else round.seen = [...round.seen, ...looks];
  }
}

/** What a cup is of. */
function namesIn({ plastics, materials }: CupState): readonly string[] {
  return [...Object.keys(plastics), ...Object.keys(materials)];
}
