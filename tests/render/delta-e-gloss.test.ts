import { expect, test } from 'vitest';
import { DEMO_BOOK } from './demo-book.ts';
import { pageOf } from './sample-book.ts';

const GLOSS = 'ΔE says how different two colours look';

test('every recipe and every target says once what ΔE is', async () => {
  const pages = [
    ...DEMO_BOOK.recipes.map(({ id }) => ['recipe', id] as const),
    ...DEMO_BOOK.targets.map(({ id }) => ['target', id] as const),
  ];
  for (const [kind, id] of pages) {
    const page = (await pageOf(kind, id, DEMO_BOOK)).replace(/<script[\s\S]*?<\/script>/g, '');
    expect([id, page.split(GLOSS).length]).toEqual([id, 2]);
    if (kind === 'recipe') {
      // Beside the pairs of colours that show it. Before these it stands only behind its words.
      const [before, after] = [page.slice(0, page.indexOf('id="sure"')), page.slice(page.indexOf('id="sure"'))];
      expect([id, before.match(/[^(]ΔE/g)]).toEqual([id, null]);
      expect(after.slice(0, after.indexOf(GLOSS))).not.toContain('<h2');
    } else {
      const between = page.slice(page.indexOf('ΔE'), page.indexOf(GLOSS));
      expect([id, between.match(/<section|<h2/g)]).toEqual([id, null]);
    }
  }
});

test('it leads to the page that says more', async () => {
  expect(await pageOf('recipe', 'alder-smoke', DEMO_BOOK)).toContain('href="../../method/#delta-e">');
  expect(await pageOf('method', '', DEMO_BOOK)).toContain('id="delta-e"');
});
