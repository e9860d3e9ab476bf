import { expect, test } from 'vitest';
import { bookOf, pageOf, SAMPLE_FILES } from './sample-book.ts';

test('the shelf of the Match page says of which material none is left', async () => {
  const shelfOf = async (peat: string): Promise<string> => {
    const page = await pageOf('match', '', bookOf({ ...SAMPLE_FILES, 'shelf/colorants/peat.md': peat }, 'mine'));
    return page
      .match(/<ul class="checks">[\s\S]*?<\/ul>/g)!
      .join(' ')
      .replace(/<[^>]*>/g, ' ');
  };
  const peat = SAMPLE_FILES['shelf/colorants/peat.md']!;
  expect(await shelfOf(peat.replace('stock: 3 ml', 'stock: 0'))).toMatch(/Peat\s+, none left/);
  expect(await shelfOf(peat)).not.toContain('none left');
});
