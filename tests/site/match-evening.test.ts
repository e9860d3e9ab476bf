import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { wormPhoto } from '../photo/demo/demo-photos.ts';
import { ROOT } from '../run-cupbook.ts';
import { PHONE, textOf } from './at-the-bench.ts';
import { compiledWith } from './compiled-with.ts';
import { watchShifts } from './shifts.ts';
import { connect, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

/** What a hand does on the page: a tap for each control it touches, a field it types in and a choice of files among them. */
class Hand {
  taps = 0;
  typed = 0;
  private readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  async tap(control: Locator): Promise<void> {
    await this.see(control);
    this.taps += 1;
    await control.click();
  }

  async type(field: Locator, text: string): Promise<void> {
    await this.see(field);
    this.taps += 1;
    this.typed += 1;
    await field.fill(text);
  }

  /** Presses a button that asks for photos, and chooses them. */
  async photograph(button: Locator, photos: readonly Buffer[]): Promise<void> {
    const [chooser] = await Promise.all([this.page.waitForEvent('filechooser'), this.tap(button)]);
    this.taps += 1;
    await chooser.setFiles(
      photos.map((buffer, at) => ({ name: `photo-${at + 1}.jpg`, mimeType: 'image/jpeg', buffer })),
    );
    await this.page.locator('.photo-dialog').waitFor({ state: 'hidden' });
  }

  /** What is needed now is on the screen, whole and uncovered, without scrolling. */
  private async see(control: Locator): Promise<void> {
    await control.waitFor();
    await expect
      .poll(
        () =>
          control.evaluate((element) => {
            const { top, bottom, left, width } = element.getBoundingClientRect();
            const [x, y] = [left + width / 2, (top + bottom) / 2];
            const isWhole = top >= 0 && bottom <= innerHeight;
            return isWhole && element.contains(document.elementFromPoint(x, y)) ? 'in sight' : element.outerHTML;
          }),
        { timeout: 5_000 },
      )
      .toBe('in sight');
  }
}

const elver = (side: 'back' | 'belly', shot: number): Buffer =>
  readFileSync(
    join(
      ROOT,
      side === 'belly' && shot === 1 ? 'recipes/photos' : 'tests/photo/demo',
      `elver-${side}-${shot}-rendered.jpg`,
    ),
  );

describe('an evening with a laminate', () => {
  test('takes 35 taps at most by photos, one field typed, with all that is needed in sight', async () => {
    const { page, errors, foreign, close } = await visit(browser, 'match/', { ...PHONE, roomIsReady: false });
    const moved = await watchShifts(page, '[data-match]:not([inert])');
    expect(await moved()).toBeLessThanOrEqual(0.02);
    const hand = new Hand(page);
    // Asked where nothing was logged between two shots.
    page.on('dialog', (dialog) => {
      hand.taps += 1;
      void dialog.accept();
    });
    const button = (name: string | RegExp): Locator => page.getByRole('button', { name });

    // The target: both sides of a finished bait, three photos each.
    await hand.tap(button('Two sides of a finished bait'));
    for (const side of ['back', 'belly'] as const)
      await hand.photograph(
        button(`Photograph the ${side}`),
        [1, 2, 3].map((shot) => elver(side, shot)),
      );
    await hand.tap(button('Find recipes'));
    await hand.tap(button('Use recipe 1').first());
    await hand.tap(button('The room is ready'));

    // Three shots of the finished bait, each photographed from both sides.
    const rounds = [
      [
        await wormPhoto({ straw: 2.2, 'lamp-black': 0.3, 'frost-pearl': 0.3 }, 302),
        await wormPhoto({ 'ivory-pearl': 0.25, 'brass-pearl': 0.05, kingcup: 0.04 }, 304),
      ],
      [elver('back', 2), elver('belly', 2)],
      [elver('back', 1), elver('belly', 1)],
    ] as const;
    const shown = page.locator('[data-cup]:not([hidden])');
    let additions = 0;
    for (const [at, [back, belly]] of rounds.entries()) {
      if (at === 0) await hand.tap(button('The finished bait'));
      await hand.photograph(button('Photograph the back'), [back]);
      await hand.photograph(button('Photograph the belly'), [belly]);
      if (at === 0) await hand.tap(button(/^One shot/));
      await hand.tap(button('Log this round'));
      await expect.poll(() => page.locator('[data-says]').innerText()).toBe('The round is logged.');
      // Where something is to be added to the other cup too, that one is shown next.
      for (let next = at < 2; next; ) {
        const add = shown.locator('[data-take="0"]').first();
        if (!(await add.isVisible())) break;
        await hand.tap(add);
        additions += 1;
        await expect.poll(() => page.locator('[data-says]').innerText()).toMatch(/^Logged\./);
        next = (await page.locator('[data-says]').innerText()).startsWith('Logged. Now');
      }
    }
    expect(additions).toBeGreaterThan(0);
    // Of what is near enough nothing is asked; the evening that was counted first had two additions to each cup.
    await hand.tap(button('Name it and save it'));
    await hand.type(page.getByLabel('Name of the colour'), 'Elver at Dusk');
    const downloads: Promise<string>[] = [];
    page.on('download', (download) => downloads.push(textOf(download)));
    await hand.tap(button('Save the recipe'));
    await expect.poll(() => downloads.length).toBe(2);
    const [target, recipe] = await Promise.all(downloads);
    const { book, diagnostics } = compiledWith(
      { path: 'targets/elver-at-dusk-target.md', text: target! },
      { path: 'colours/elver-at-dusk.md', text: recipe! },
    );
    expect(diagnostics.filter(({ file, severity }) => file.includes('elver-at-dusk') && severity === 'error')).toEqual(
      [],
    );
    const made = book!.recipes.find(({ id }) => id === 'elver-at-dusk')!;
    // Between two shots nothing went into the belly: both are of one round of it.
    expect(made.cups.map(({ rounds: each }) => each.length)).toEqual([3, 2]);
    expect(made.seen).toHaveLength(6);
    expect(hand.typed).toBe(1);
    expect(hand.taps + (4 - additions)).toBeLessThanOrEqual(35);
    // All of the evening together, though what counts as one shift is what comes within five seconds.
    expect(await moved()).toBeLessThanOrEqual(0.02);
    expect(errors).toEqual([]);
    expect(foreign).toEqual([]);
    // A match that goes on is shown where it stays, as soon as it is there.
    for (const width of [390, 1280]) {
      await page.setViewportSize({ width, height: 844 });
      await page.reload();
      await page.getByRole('tab', { name: 'Belly' }).waitFor();
      await page.getByRole('tab', { name: 'Belly' }).click();
      expect(await moved(), `${width} px`).toBeLessThanOrEqual(0.02);
    }
    await close();
  });
});
