import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import type { Engine } from './engines/engine.ts';
import { FIREFOX } from './engines/firefox.ts';
import { WEBKIT } from './engines/webkit.ts';
import { book } from './visit.ts';

describe.each([FIREFOX, WEBKIT])('in $name', ({ name, missing, start }) => {
  if (missing !== undefined) console.warn(`The journeys in ${name} are skipped: ${missing}`);
  describe.skipIf(missing !== undefined)('a maker', () => {
    let engine: Engine;
    beforeAll(async () => {
      engine = await start();
    });
    afterAll(() => engine?.close());
    const open = (path: string): Promise<void> => engine.open(inject('address') + path);

    test('sees the wall, and a picture of each bait', async () => {
      await open('');
      const pictures = '#main a[href*="colours/"] img';
      expect(await engine.seen('#main a[href*="colours/"]')).toBeGreaterThanOrEqual(book().recipes.length);
      await expect.poll(() => engine.seen(pictures)).toBeGreaterThanOrEqual(book().recipes.length);
      expect(engine.errors()).toEqual([]);
    });

    test('finds a colour by its name', async () => {
      const [recipe] = book().recipes;
      await open('find/');
      await engine.type('#find-words', recipe!.title);
      const link = `[data-results] a[href*="colours/${recipe!.id}/"]`;
      await expect.poll(() => engine.seen(link)).toBeGreaterThan(0);
      await expect
        .poll(() => engine.seen('[data-results] a[href*="colours/"]'))
        .toBeLessThan(book().recipes.length / 2);
      expect(engine.errors()).toEqual([]);
    });

    test('works out another batch of a colour', async () => {
      const recipe = book().recipes.find(({ cups }) => cups.length === 1)!;
      await open(`colours/${recipe.id}/`);
      const before = await engine.text('table.amounts');
      await engine.type('[data-planner] input[name="baits"]', String(3 * recipe.batch.baits));
      await expect.poll(() => engine.text('table.amounts')).not.toBe(before);
      expect(engine.errors()).toEqual([]);
    });

    test('matches a colour as far as the first recipe in the cup', async () => {
      await open('match/');
      await engine.click('[data-match]:not([inert]) .match-typed > summary');
      await engine.type('#side-0-white-digits', '#8a6a44');
      await engine.type('#side-0-black-digits', '#5d4c36');
      if ((await engine.seen('[data-step="cup"]')) === 0) await engine.click('[data-step="target"] [data-go="cup"]');
      await engine.click('[data-step="cup"] [data-find]');
      await engine.click('[data-first] button[data-use]');
      await engine.click('[data-room-ready]');
      await expect.poll(() => engine.seen('[data-cups] .match-cup')).toBe(1);
      expect(engine.errors()).toEqual([]);
    });

    test('plans an evening', async () => {
      await open('plan/');
      await engine.type('input[name="baits"]', '48');
      await expect.poll(() => engine.seen('[data-plan-result] table.amounts')).toBeGreaterThan(0);
      expect(engine.errors()).toEqual([]);
    });
  });
});
