import { describe, expect, test } from 'vitest';
import { learnedPath } from '../../src/render/learned-file.ts';
import { FILES } from '../../src/render/pages.ts';
import { learnedIn } from '../browser/taught-book.ts';
import { documentOf } from '../page-dom.ts';
import { bookOf, pageOf, SAMPLE_FILES } from './sample-book.ts';

const recipe = (title: string, white: string, publish: string): string =>
  `---\ntitle: ${title}\nmold: minnow-3\npublish: ${publish}\ncups:\n  body:\n    plastic: 120 ml supple\n    log:\n      - add: { peat: 6 drops }\n      - pour: 14 ml\n        seen: { over-white: { lab: [${white}] }, over-black: { lab: [31, 4, 12] } }\n---\n`;
const files = {
  ...SAMPLE_FILES,
  'colours/shown.md': recipe('Shown', '61.25, 8, 21', 'full'),
  'colours/quaggle.md': recipe('Quaggle', '57.75, 9, 24', 'no'),
  'colours/glimpsed.md': recipe('Glimpsed', '53.5, 7, 19', 'look'),
};

describe('what the Match page loads', () => {
  const mine = bookOf(files, 'mine');
  const shared = bookOf(files, 'shared');
  const seenIn = (book: typeof mine): readonly unknown[] =>
    learnedIn(book).looks.map(([, , , white]) => (white === 0 ? undefined : white[0]));

  test('is every look of the book in the maker’s edition, and in the shared one those that are published', () => {
    expect(mine.edition).toBe('mine');
    expect(shared.edition).toBe('shared');
    for (const [lightness, isPublished] of [
      [61.25, true],
      [57.75, false],
      [53.5, false],
    ] as const) {
      expect(seenIn(mine)).toContain(lightness);
      expect([lightness, seenIn(shared).includes(lightness)]).toEqual([lightness, isPublished]);
    }
    expect(JSON.stringify(learnedIn(mine))).not.toMatch(/quaggle|shown|glimpsed/i);
  });

  test('is a file of its own, which the page names and does not hold', async () => {
    const page = await pageOf('match', '', mine);
    const named = documentOf(page).querySelector<HTMLElement>('[data-match]')!.dataset.learned!;
    expect(named).toBe(`../${learnedPath(mine)}`);
    expect(named).not.toBe(`../${learnedPath(shared)}`);
    expect(page).not.toContain('"theta"');
    expect(page).not.toMatch(/<script[^>]*learned/);
    const file = FILES.find(({ kind }) => kind === 'learned')!;
    expect(file.items(mine).map((item) => file.url(item))).toEqual(['match/learned.js']);
    expect(file.items(bookOf({ 'book.md': SAMPLE_FILES['book.md']! }, 'mine'))).toEqual([]);
  });
});
