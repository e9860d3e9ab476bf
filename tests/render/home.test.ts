import { expect, test } from 'vitest';
import { coloursByHue } from '../../src/render/colour-entry.ts';
import { hexWords } from '../../src/words/colour.ts';
import { allByRole, byRole, nameOf, wordsIn } from '../page-dom.ts';
import { DEMO_BOOK } from './demo-book.ts';
import { pageOf, readPage } from './sample-book.ts';

const count = DEMO_BOOK.recipes.length + DEMO_BOOK.looks.length;
const HOME = await readPage('home', '', DEMO_BOOK);

test('the wall of the demo book is lighter than sixty kilobytes, and draws no bait in its page', async () => {
  const page = await pageOf('home', '', DEMO_BOOK);
  expect(count).toBeGreaterThanOrEqual(33);
  expect(new TextEncoder().encode(page).length).toBeLessThan(60_000);
  expect(page).not.toMatch(/<(?:pattern|clipPath|use)\b/);
});

test('the counts of the wall add up to its colours, beside each hue and over it', () => {
  const groups = coloursByHue(DEMO_BOOK);
  const hues = allByRole(byRole(HOME, 'navigation', { name: 'Hues' }), 'link').map(wordsIn);
  expect(hues.map((words) => Number(/\d+$/.exec(words)![0]))).toEqual(groups.map(({ entries }) => entries.length));
  expect(groups.reduce((sum, { entries }) => sum + entries.length, 0)).toBe(count);
  expect(wordsIn(HOME)).toContain(`${count} colours`);
  for (const section of allByRole(HOME, 'region').filter((each) => each.matches('.hue')))
    expect(nameOf(section)).toMatch(new RegExp(` ${section.querySelectorAll('li.tile').length} colours?$`));
});

test('each tile tells its colour in words, of the body and of the thin part', () => {
  for (const { id, title, pattern, facets, body, thin } of DEMO_BOOK.recipes) {
    const tile = HOME.querySelector(`a[href$="/colours/${id}/"]`)!.closest('li')!;
    expect(nameOf(byRole(tile, 'link'))).toBe(title);
    const words = wordsIn(byRole(tile, 'paragraph'));
    if (facets.hueFamilies.length === 1)
      expect([pattern, words.startsWith(hexWords(body.overWhite.hex))]).toEqual([pattern, true]);
    const end = hexWords(thin.overWhite.hex);
    expect([id, words.includes(end)]).toEqual([id, true]);
  }
});
