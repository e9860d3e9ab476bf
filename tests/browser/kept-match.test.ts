import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { KeptMatch } from '../../src/browser/match/kept-match.ts';
import type { Kept, KeptTexts, MatchStore } from '../../src/browser/match/store.ts';

/** A browser with tabs: what it keeps, and whether its tabs hear of one another. */
class Browser {
  readonly taken = new Set<number>();
  kept: KeptTexts = {};
  deaf = false;
  full = false;
  /** How long it takes to keep something, ms. */
  slow = 0;
  private readonly heard: ((revision: number) => void)[] = [];

  private readonly store: MatchStore = {
    read: async () => this.now,
    write: async (texts, revision) => {
      if (this.full) throw new Error('full');
      if (this.taken.has(revision)) return false;
      if (this.slow > 0) await new Promise((resolve) => setTimeout(resolve, this.slow));
      this.taken.add(revision);
      this.kept = { ...this.kept, ...texts };
      return true;
    },
  };

  get now(): Kept {
    return { ...this.kept, revision: Math.max(0, ...this.taken) };
  }

  tab(): Tab {
    return new Tab(
      new KeptMatch(
        this.store,
        {
          tell: (revision) => {
            if (!this.deaf) for (const each of this.heard) each(revision);
          },
          listen: (heard) => this.heard.push(heard),
        },
        this.now,
      ),
      this.kept.work ?? '',
    );
  }
}

/** A tab whose match is a log of words. */
class Tab {
  readonly keeper: KeptMatch;
  work: string;
  told = 0;
  losses = 0;

  constructor(keeper: KeptMatch, work: string) {
    this.keeper = keeper;
    this.work = work;
    keeper.onNewer = (texts, lost) => {
      this.work = texts.work ?? '';
      if (lost) this.told++;
    };
    keeper.onLoss = () => this.losses++;
  }

  log(word: string): void {
    this.work = `${this.work} ${word}`.trim();
    this.keeper.keep({ work: this.work });
  }
}

const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

describe('the match in two tabs', () => {
  test('is the same in both after each step', async () => {
    const browser = new Browser();
    const [one, other] = [browser.tab(), browser.tab()];
    one.log('round-4');
    await settled();
    expect(other.work).toBe('round-4');
    other.log('plastic');
    await settled();
    expect([one.work, browser.kept.work]).toEqual(['round-4 plastic', 'round-4 plastic']);
    expect([one.told, other.told]).toEqual([0, 0]);
  });

  test('is not kept over what a tab has not heard of: it takes that over and says so', async () => {
    const browser = new Browser();
    const [one, other] = [browser.tab(), browser.tab()];
    browser.deaf = true;
    one.log('round-4');
    await settled();
    other.log('plastic');
    await settled();
    expect([other.work, other.told, browser.kept.work]).toEqual(['round-4', 1, 'round-4']);
    other.log('plastic');
    await settled();
    expect([other.told, browser.kept.work]).toEqual([1, 'round-4 plastic']);
    await one.keeper.follow();
    expect([one.work, one.told]).toEqual(['round-4 plastic', 0]);
  });

  test('is followed where the other tab is left before its last step is kept', async () => {
    const browser = new Browser();
    const [one, other] = [browser.tab(), browser.tab()];
    browser.slow = 60;
    one.work = 'round-4';
    one.keeper.keep({ work: one.work }, true);
    // The tab that leaves hears nothing of what becomes of it.
    browser.deaf = false;
    await settled();
    browser.deaf = true;
    await expect.poll(() => other.work).toBe('round-4');
    expect(other.told).toBe(0);
  });

  test('is followed where a tab that begins finds more than another one has heard of', async () => {
    const browser = new Browser();
    const [one, other] = [browser.tab(), browser.tab()];
    browser.deaf = true;
    one.log('round-4');
    await settled();
    browser.deaf = false;
    browser.tab();
    await settled();
    expect([other.work, other.told]).toEqual(['round-4', 0]);
  });

  test('what was typed is not kept over a newer match either', async () => {
    const browser = new Browser();
    const [one, other] = [browser.tab(), browser.tab()];
    browser.deaf = true;
    one.keeper.keep({ work: 'round-4', drafts: '' });
    await settled();
    other.keeper.keep({ drafts: '7 ml' });
    await settled();
    expect([browser.kept, other.told]).toEqual([{ work: 'round-4', drafts: '' }, 1]);
  });

  test('whatever is done in whichever tab is kept, or its tab says that it was not', async () => {
    const step = fc.record({ tab: fc.nat({ max: 1 }), deaf: fc.boolean(), waits: fc.boolean() });
    await fc.assert(
      fc.asyncProperty(fc.array(step, { maxLength: 12 }), async (steps) => {
        const browser = new Browser();
        const tabs = [browser.tab(), browser.tab()];
        for (const [index, { tab, deaf, waits }] of steps.entries()) {
          browser.deaf = deaf;
          tabs[tab]!.log(`word-${index}`);
          if (waits) await settled();
        }
        await settled();
        const kept = (browser.kept.work ?? '').split(' ').filter((word) => word !== '').length;
        const told = tabs.reduce((sum, each) => sum + each.told, 0);
        if (told === 0) expect(kept).toBe(steps.length);
        else expect(kept).toBeLessThan(steps.length);
        for (const each of tabs) await each.keeper.follow();
        expect(tabs.map(({ work }) => work)).toEqual([browser.kept.work ?? '', browser.kept.work ?? '']);
      }),
    );
  });
});

test('keep(texts) tells what the browser cannot keep, and keeps it with the next', async () => {
  const browser = new Browser();
  const tab = browser.tab();
  browser.full = true;
  tab.keeper.keep({ work: 'one' });
  await settled();
  expect([tab.losses, browser.kept]).toEqual([1, {}]);
  browser.full = false;
  tab.keeper.keep({ drafts: 'typed' });
  await settled();
  expect(browser.kept).toEqual({ work: 'one', drafts: 'typed' });
});
