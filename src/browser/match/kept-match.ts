import type { Kept, KeptTexts, MatchStore } from './store.ts';

/** Tells the other tabs of a book that something was kept. */
export interface TabChannel {
  tell(revision: number): void;
  listen(heard: (revision: number) => void): void;
}

/** A tab that leaves tells of its change before it is kept: the others look again after so many ms, one after another. */
const LOOKS_AGAIN: readonly number[] = [30, 100, 300, 1000];

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** The match of a book as this tab keeps it: never over what another tab has kept since. */
export class KeptMatch {
  /** Told when the browser could not keep something. */
  onLoss: () => void = () => {};
  /** Told when something was kept. */
  onKept: () => void = () => {};
  /** Told what another tab has kept, and whether something of this one was not kept for it. */
  onNewer: (texts: KeptTexts, lost: boolean) => void = () => {};
  private readonly store: MatchStore;
  private readonly channel: TabChannel;
  private revision: number;
  private kept: KeptTexts;
  private next: KeptTexts = {};
  private writing = 0;

  constructor(store: MatchStore, channel: TabChannel, { revision, ...texts }: Kept) {
    this.store = store;
    this.channel = channel;
    this.revision = revision;
    this.kept = texts;
    channel.listen((other) => {
      if (other > this.revision) void this.follow(other);
    });
    // What was done just before a reload may have been kept after the tab that did it was gone.
    if (revision > 0) channel.tell(revision);
  }

  /** Keeps texts, those of one moment together; when the page is left, without waiting for what is being written. */
  keep(texts: KeptTexts, leaving = false): void {
    this.next = { ...this.next, ...texts };
    queueMicrotask(() => void this.write(leaving));
  }

  /**
   * Takes over what another tab has kept, if there is anything.
   *
   * @param atLeast number of a change that was told of, and may only be on its way
   */
  async follow(atLeast = 0): Promise<void> {
    const read = (): Promise<Kept | undefined> => this.store.read().catch(() => undefined);
    let kept = await read();
    for (const ms of LOOKS_AGAIN) {
      if (kept === undefined || kept.revision >= atLeast || this.revision >= atLeast) break;
      await pause(ms);
      kept = await read();
    }
    if (kept === undefined || kept.revision <= this.revision) return;
    const lost = Object.keys(this.changed()).length > 0;
    const { revision, ...texts } = kept;
    this.revision = revision;
    this.kept = texts;
    this.next = {};
    this.onNewer(texts, lost);
  }

  /** What is to be kept and is not yet. */
  private changed(): KeptTexts {
    const { work, drafts } = this.next;
    return {
      ...(work !== undefined && work !== this.kept.work && { work }),
      ...(drafts !== undefined && drafts !== this.kept.drafts && { drafts }),
    };
  }

  private async write(leaving: boolean): Promise<void> {
    const texts = this.changed();
    if (Object.keys(texts).length === 0 || (this.writing > 0 && !leaving)) return;
    const before = { revision: this.revision, kept: this.kept };
    const revision = ++this.revision;
    this.kept = { ...this.kept, ...texts };
    this.writing++;
    try {
      const written = this.store.write(texts, revision);
      // This script may be gone before that is done.
      if (leaving) this.channel.tell(revision);
      if (await written) {
        this.channel.tell(revision);
        this.onKept();
      } else {
        Object.assign(this, before);
        this.next = { ...texts, ...this.next };
        await this.follow();
        return;
      }
    } catch {
      Object.assign(this, before);
      this.next = { ...texts, ...this.next };
      this.onLoss();
      return;
    } finally {
      this.writing--;
    }
    await this.write(false);
  }
}
