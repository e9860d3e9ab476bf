import type { MatchPageData, MatchPageMaterial, TaughtMatchData } from '../../render/pages/match.ts';
import { defined } from '../../values/defined.ts';
import { afterPause } from '../page-data.ts';
import type { CupAdvice, FirstAnswer } from './ask.ts';
import type { CupDraft, Drafts } from './drafts.ts';
import { fittedWork } from './fit-work.ts';
import type { HowSeen } from './how-seen.ts';
import type { KeptMatch } from './kept-match.ts';
import type { Solver } from './solver.ts';
import { unsaidSide, type Work } from './work.ts';

/** What is asked before the first cup: what the bait looks like, what is poured, which recipe. */
export type SetupStep = 'target' | 'cup' | 'first';

/** Everything that the page knows, kept soon after every change. */
export class MatchState {
  readonly data: MatchPageData;
  /** With what the book has learned, once it is loaded. */
  taught: TaughtMatchData | undefined;
  /** The program that works out what to add, loaded with that. */
  solver: Solver | undefined;
  readonly materials: ReadonlyMap<string, MatchPageMaterial>;
  drafts: readonly CupDraft[];
  answers: readonly FirstAnswer[] = [];
  /** Recipes were found before the page was loaded again, and are to be found anew. */
  readonly findsAgain: boolean;
  /** A cup is shown though nothing was put in yet. */
  begun: boolean;
  /** The question that is being asked before the first cup. */
  at: SetupStep;
  /** The cup that is shown, where there are two. */
  shown: number;
  /** How a test pour was looked at, as it was last said: of this match or of one before; undefined: it was never asked. */
  looked: HowSeen | undefined;
  /** Whether finished baits are looked at, or cups by themselves, of a bait with two sides; undefined: it was never asked. */
  whole: boolean | undefined;
  /** Told when a match has become too long. */
  onFull: () => void = () => {};
  private current: Work;
  /** What is to be done with the cups of this match, as far as it was asked. */
  private advised: { readonly work: Work; readonly cups: Map<number, CupAdvice> };
  /** What was kept is left alone until there is something else to keep. */
  private changed = false;
  private readonly keeper: KeptMatch | undefined;
  private readonly saveSoon = afterPause(() => this.save(), 250);

  /** @param keeper where the match is kept between visits; nowhere, where the browser keeps nothing */
  constructor(data: MatchPageData, work: Work, drafts: Drafts, keeper: KeptMatch | undefined) {
    this.data = data;
    this.materials = new Map(data.materials.map((material) => [material.id, material]));
    this.current = work;
    this.advised = { work, cups: new Map() };
    this.drafts = drafts.cups;
    this.begun = drafts.begun;
    this.looked = drafts.looked;
    this.whole = drafts.whole;
    this.findsAgain = drafts.found;
    this.shown = drafts.shown ?? 0;
    this.at = unsaidSide(work) === undefined ? 'cup' : 'target';
    this.keeper = keeper;
  }

  get work(): Work {
    return this.current;
  }

  set work(work: Work) {
    this.put(work);
  }

  /** Takes over a changed match, and keeps it soon. False, and told, where there is too much of it to be kept: then all stays as it was. */
  put(work: Work): boolean {
    const fitted = fittedWork(work);
    if (fitted === undefined) {
      this.onFull();
      return false;
    }
    this.current = fitted;
    this.changed = true;
    this.saveSoon();
    return true;
  }

  /** What to do with a cup: the slow part of the page, worked out once for a match as it is. Throws: Error before `taught` is there. */
  advice(index: number): CupAdvice {
    if (!this.taught || !this.solver) throw new Error('a cup was judged before what the book has learned was loaded');
    if (this.advised.work !== this.current) this.advised = { work: this.current, cups: new Map() };
    const { cups } = this.advised;
    const advice = cups.get(index) ?? this.solver.adviceFor(this.current, index, this.taught);
    cups.set(index, advice);
    return advice;
  }

  /** Whether there is a cup to show: something was done, or the maker begins with plain plastic. */
  get inProgress(): boolean {
    return this.begun || this.hasLog;
  }

  /** Whether anything was done to a cup. */
  get hasLog(): boolean {
    return this.work.cups.some(({ steps }) => steps.length > 0);
  }

  /** Keeps what was typed for a cup, at once: the next thing may be a reload. */
  draft(index: number, draft: CupDraft): void {
    this.drafts = this.work.cups.map((_, at) => (at === index ? draft : (this.drafts[at] ?? {})));
    this.saveDrafts();
  }

  /** Shows the cups though nothing was put in yet. */
  beginPlain(): void {
    this.begun = true;
    this.changed = true;
    this.save();
  }

  /** Takes over what another tab has kept. True where something of this one is lost by that. */
  takeOver(work: Work, { cups, begun, looked, whole, shown = 0 }: Drafts): boolean {
    const lost = this.changed;
    if (JSON.stringify(work) !== JSON.stringify(this.current)) this.answers = [];
    this.current = work;
    this.drafts = cups;
    this.begun = begun;
    this.looked = looked;
    this.whole = whole;
    this.shown = shown;
    this.changed = false;
    return lost;
  }

  /** @param leaving the page may never come back to this script */
  save(leaving = false): void {
    this.keeper?.keep(this.changed ? { work: JSON.stringify(this.work), drafts: this.draftsText() } : {}, leaving);
    this.changed = false;
  }

  saveDrafts(): void {
    this.keeper?.keep({ drafts: this.draftsText() });
  }

  private draftsText(): string {
    const { begun, looked, whole, shown } = this;
    const drafts: Drafts = {
      cups: this.drafts,
      found: this.answers.length > 0,
      begun,
      shown,
      ...defined({ looked, whole }),
    };
    return JSON.stringify(drafts);
  }
}
