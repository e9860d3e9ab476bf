import { expect, test } from 'vitest';
import { DEMO_BOOK } from './demo-book.ts';
import { pageOf } from './sample-book.ts';

const GLOSS = 'ΔE says how different two colours look';

test('every recipe and every target says once what ΔE is, no later than in the part that has the first', async () => {
  const pages = [
    ...DEMO_BOOK.recipes.map(({ id }) => ['recipe', id] as const),
    ...DEMO_BOOK.targets.map(({ id }) => ['target', id] as const),
  ];
  for (const [kind, id] of pages) {
    const page = (await pageOf(kind, id, DEMO_BOOK)).replace(/<script[\s\S]*?<\/script>/g, '');
    expect([id, page.split(GLOSS).length]).toEqual([id, 2]);
    const between = page.slice(page.indexOf('ΔE'), page.indexOf(GLOSS));
    expect([id, between.match(/<section|<h2/g)]).toEqual([id, null]);
  }
});

test('it leads to the page that says more', async () => {
  expect(await pageOf('recipe', 'alder-smoke', DEMO_BOOK)).toContain('href="../../method/#delta-e">');
  expect(await pageOf('method', '', DEMO_BOOK)).toContain('id="delta-e"');
});
