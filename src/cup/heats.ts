import { defined } from '../values/defined.ts';
import type { HowLooked } from './how-looked.ts';
import type { Amounts } from './ledger.ts';

/** How often a cup was up to pouring temperature, and how long. */
export interface CupHeats {
  /** The melt is the first. */
  readonly heats: number;
  /** How many of them each material and plastic has borne, the one in which it went in among them. */
  readonly borne: Amounts;
  /** Time above 160 °C, minutes; absent where none is noted. */
  readonly heldMinutes?: number;
  /** Peak that was noted last, °C; absent where none was. */
  readonly heatedTo?: number;
  /** Whether it has cooled since, so that whatever goes in next costs a heat; absent where nobody says. */
  readonly cooled?: boolean;
}

/** A time that a cup was heated again. */
export interface HeatTurn {
  /** Index in the log of the step that it was heated for. */
  readonly step: number;
  /** What it has borne from then on. */
  readonly heats: number;
  readonly borne: Amounts;
}

/**
 * Counts the heats of a cup, step by step. A heat is once up to pouring temperature: the melt of a cup is its first, each time that it
 * is heated again one more. A cup that was looked at cold is melted again by whatever is done to it next, noted or not.
 */
export class HeatCount {
  private readonly all: HeatTurn[] = [];
  private count = 1;
  private heldMinutes: number | undefined;
  private heatedTo: number | undefined;
  private cooled: boolean | undefined;
  /** The heat that each material went in with. */
  private wentIn = new Map<string, number>();
  /** What has gone in since the last heat, pour or look, of which there was none before. */
  private fresh = new Set<string>();
  /** Nothing was poured of it, seen of it or heated again yet: all that is in it went in with the melt. */
  private isFirst = true;
  /** The step that put something into the cooled cup. */
  private meltedFor: number | undefined;

  /** Begins again with a cup of these plastics, or what else is in it. */
  begin(contents: readonly string[]): void {
    this.count = 1;
    this.heldMinutes = undefined;
    this.heatedTo = undefined;
    this.cooled = undefined;
    this.meltedFor = undefined;
    this.wentIn = new Map(contents.map((name) => [name, 1]));
    this.fresh = new Set();
    this.isFirst = true;
  }

  /** How many the cup has had. */
  get heats(): number {
    return this.count + (this.meltedFor === undefined ? 0 : 1);
  }

  /** Something goes in. */
  put(names: readonly string[], step: number): void {
    if (this.cooled === true) this.meltedFor ??= step;
    for (const name of names) {
      if (this.wentIn.has(name)) continue;
      this.wentIn.set(name, this.heats);
      if (!this.isFirst) this.fresh.add(name);
    }
  }

  /**
   * It is heated again.
   *
   * @param withFresh what went in since the last pour or look went in with this heat
   */
  again(step: number, withFresh = false): void {
    this.count += 1;
    if (withFresh) for (const name of this.fresh) this.wentIn.set(name, this.count);
    this.isHot(step);
  }

  reached(celsius: number): void {
    this.heatedTo = celsius;
  }

  held(minutes: number): void {
    this.heldMinutes = (this.heldMinutes ?? 0) + minutes;
  }

  /** It is poured, which a cold cup cannot be. */
  poured(step: number): void {
    if (this.cooled === true) this.again(this.meltedFor ?? step);
    this.settle();
  }

  looked(after: readonly HowLooked['after'][]): void {
    if (this.meltedFor !== undefined) this.again(this.meltedFor);
    this.settle();
    const last = after.findLast((each) => each !== undefined);
    this.cooled = last === undefined ? undefined : last !== 'hot';
  }

  /** What has been poured out of it altogether. */
  emptied(): void {
    this.wentIn.clear();
    this.fresh.clear();
  }

  /** All turns so far, of cups that were given up too. */
  get turns(): readonly HeatTurn[] {
    const { meltedFor: step, heats } = this;
    return step === undefined ? this.all : [...this.all, { step, heats, borne: this.borne() }];
  }

  now(): CupHeats {
    const { heats, heldMinutes, heatedTo, cooled } = this;
    return {
      heats,
      borne: this.borne(),
      ...defined({ heldMinutes, heatedTo, cooled: this.meltedFor === undefined ? cooled : undefined }),
    };
  }

  private isHot(step: number): void {
    this.cooled = false;
    this.meltedFor = undefined;
    this.settle();
    this.all.push({ step, heats: this.count, borne: this.borne() });
  }

  private settle(): void {
    this.fresh.clear();
    this.isFirst = false;
  }

  private borne(): Amounts {
    return Object.fromEntries([...this.wentIn].map(([name, first]) => [name, this.heats - first + 1]));
  }
}
