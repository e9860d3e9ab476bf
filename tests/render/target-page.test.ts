import { expect, test } from 'vitest';
import { matchChart } from '../../src/render/target/match-chart.ts';
import { allByRole, wordsIn } from '../page-dom.ts';
import { DEMO_BOOK } from './demo-book.ts';
import { bookOf, readPage, SAMPLE_FILES } from './sample-book.ts';

const headings = (page: Document): readonly string[] =>
  allByRole(page, 'heading').map((heading) => `${heading.nodeName.slice(1)} ${wordsIn(heading)}`);

test('a target of two parts has each part’s rounds under its name', async () => {
  const found = headings(await readPage('target', 'two-tone-elver', DEMO_BOOK));
  const back = found.indexOf('4 Back');
  const belly = found.indexOf('4 Belly');
  expect(back).toBeGreaterThan(found.indexOf('3 Eel Bridge'));
  expect(belly).toBeGreaterThan(back);
  for (const at of [back, belly]) expect(found[at + 1]).toMatch(/^5 Round 1/);
});

test('a target of one part has its rounds right under the colour', async () => {
  const found = headings(await readPage('target', 'rack-claw', DEMO_BOOK));
  expect(found.some((heading) => heading.startsWith('4 Round 1'))).toBe(true);
  expect(found.some((heading) => heading.startsWith('5 '))).toBe(false);
});

test('matchChart(…) has no words that its rule could strike out', () => {
  const { rounds } = DEMO_BOOK.recipes.flatMap(({ match }) => match?.cups ?? []).find((cup) => cup.rounds.length > 1)!;
  const [first, last] = rounds;
  const nearly = { ...last!, verdict: { ...last!.verdict, deltaE: 0.02 } };
  const chart = matchChart([first!, nearly], 2, 'Any').toString();
  expect(chart).toContain('>&lt; 0.1</text>');
  expect(chart).toMatch(/aria-label="[^"]*less than 0\.1/);
});

test('a target of two sides that no bait has asks its maker about them, and no reader', async () => {
  const glass =
    '---\ntitle: Glass\npublish: full\nparts:\n  back: { over-white: "#5b4a2f", over-black: "#483a26" }\n  belly: { over-white: "#cdb98c", over-black: "#97865f" }\n---\n';
  const asked = async (edition: 'mine' | 'shared'): Promise<readonly string[]> =>
    allByRole(
      await readPage('target', 'glass', bookOf({ ...SAMPLE_FILES, 'targets/glass.md': glass }, edition)),
      'complementary',
    )
      .map(wordsIn)
      .filter((words) => words.includes('can’t be the sides'));
  expect(await asked('mine')).toHaveLength(1);
  expect(await asked('shared')).toEqual([]);
});
