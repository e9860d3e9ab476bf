import type { BenchPageData, BenchPageMaterial } from '../../render/pages/bench.ts';
import { afterPause } from '../page-data.ts';
import type { FirstAnswer } from './ask.ts';
import type { CupDraft, Drafts } from './drafts.ts';
import { fittedWork } from './fit-work.ts';
import type { WorkStore } from './store.ts';
import type { Work } from './work.ts';

/** Where a match and what was typed for it are kept between visits; nowhere, where the browser keeps nothing. */
export interface BenchStores {
  readonly work: WorkStore | undefined;
  readonly drafts: WorkStore | undefined;
}

/** Everything that the page knows, kept soon after every change. */
export class BenchState {
  readonly data: BenchPageData;
  readonly materials: ReadonlyMap<string, BenchPageMaterial>;
  readonly keepsNothing: boolean;
  drafts: readonly CupDraft[];
  answers: readonly FirstAnswer[] = [];
  /** Recipes were found before the page was loaded again, and are to be found anew. */
  readonly findsAgain: boolean;
  /** A cup is shown though nothing was put in yet. */
  begun = false;
  /** Told when the browser could not keep something. */
  onLoss: () => void = () => {};
  /** Told when a match has become too long. */
  onFull: () => void = () => {};
  private current: Work;
  /** What was kept is left alone until there is something else to keep. */
  private changed = false;
  private readonly stores: BenchStores;
  private readonly saveSoon = afterPause(() => void this.save(), 250);

  constructor(data: BenchPageData, work: Work, drafts: Drafts, stores: BenchStores) {
    this.data = data;
    this.materials = new Map(data.materials.map((material) => [material.id, material]));
    this.current = work;
    this.drafts = drafts.cups;
    this.findsAgain = drafts.found;
    this.stores = stores;
    this.keepsNothing = stores.work === undefined;
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
    void this.saveDrafts();
  }

  async save(): Promise<void> {
    if (!this.changed) return;
    this.changed = false;
    try {
      await this.stores.work?.write(JSON.stringify(this.work));
    } catch {
      this.changed = true;
      this.onLoss();
    }
    await this.saveDrafts();
  }

  async saveDrafts(): Promise<void> {
    const drafts: Drafts = { cups: this.drafts, found: this.answers.length > 0 };
    try {
      await this.stores.drafts?.write(JSON.stringify(drafts));
    } catch {
      this.onLoss();
    }
  }
}
