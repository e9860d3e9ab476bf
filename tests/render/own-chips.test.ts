import { describe, expect, test } from 'vitest';
import { allByRole, byRole, documentOf, wordsIn } from '../page-dom.ts';
import { MAKERS_BOOK, pageOf, SAMPLE_BOOK } from './sample-book.ts';

const pageWords = async (kind: string, id: string, book = MAKERS_BOOK): Promise<string> =>
  wordsIn(documentOf(await pageOf(kind, id, book)));

describe('chips of the maker’s own', () => {
  test('stand on the pages of what is in them, each pour with what it held and how it was seen', async () => {
    const chips = byRole(documentOf(await pageOf('material', 'peat', MAKERS_BOOK)), 'region', {
      name: '1 chip of yours',
    });
    const words = wordsIn(chips);
    expect(words).toMatch(/2 drops of Peat in 100 ml\..*over white, .* over black\. 6 mm/s);
    expect(words).toMatch(/of Ivory Pearl.*in 100 ml/s);
    expect(allByRole(chips, 'img').length + chips.querySelectorAll('svg').length).toBe(2);
    for (const [id, title] of [
      ['ivory-pearl', '1 chip of yours'],
      ['lamp-black', '1 chip of yours'],
    ] as const)
      expect(allByRole(documentOf(await pageOf('material', id, MAKERS_BOOK)), 'region', { name: title })).toHaveLength(
        1,
      );
  });

  test('are counted on the shelf, and stand nowhere else', async () => {
    expect(await pageWords('shelf', '')).toContain('1 chip of yours');
    for (const kind of ['home', 'find', 'families', 'labels', 'cards'])
      expect(await pageWords(kind, ''), kind).not.toMatch(/Zibeline drop|pale/);
  });

  test('that are worth pouring stand on the maker’s shelf, each with its worth, and on no reader’s', async () => {
    const worth = byRole(documentOf(await pageOf('shelf', '', MAKERS_BOOK)), 'region', { name: 'Worth a chip' });
    const items = allByRole(worth, 'listitem').map(wordsIn);
    expect(items.length).toBeGreaterThan(0);
    expect(items.length).toBeLessThanOrEqual(3);
    for (const item of items)
      expect(item).toMatch(
        / in 100 ml, 6 mm thick: (?:halves the doubt of \d+ recipes?|brings you closer with .+ in the cup \(.*ΔE.*\))\./,
      );
    expect(await pageWords('shelf', '', SAMPLE_BOOK)).not.toContain('Worth a chip');
  });

  test('are shown to readers only where they are published', async () => {
    const peat = documentOf(await pageOf('material', 'peat', SAMPLE_BOOK));
    expect(allByRole(peat, 'region', { name: '1 chip' })).toHaveLength(1);
    expect(JSON.stringify(SAMPLE_BOOK)).not.toContain('Zibeline');
    expect(
      allByRole(documentOf(await pageOf('material', 'lamp-black', SAMPLE_BOOK)), 'region', { name: '1 chip' }),
    ).toEqual([]);
  });
});
