import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { watchShifts } from './shifts.ts';
import { connect, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

// What a script shows has its place before it comes.
test.each(['', 'colours/tea-urn/', 'find/', 'photograph/', 'method/', 'shelf/'])(
  'nothing of /%s moves when it is loaded, on a phone and at a desk',
  async (path) => {
    for (const width of [390, 1280]) {
      const { page, close } = await visit(browser, path, { viewport: { width, height: 844 } });
      const moved = await watchShifts(page, 'main');
      await page.waitForLoadState('networkidle');
      expect(await moved(), `${width} px`).toBeLessThanOrEqual(0.02);
      await close();
    }
  },
);
