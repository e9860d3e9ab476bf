import { expect, test, vi } from 'vitest';
import type { Batch, BatchAmounts } from '../../src/book/model.ts';
import { plannedBatch } from '../../src/browser/planned-batch.ts';
import { main } from '../../src/cli/main.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { bookIndex } from '../../src/render/book-index.ts';
import { plannerData } from '../../src/render/planner-data.ts';
import { loadBook } from '../../src/shell/load-book.ts';
import { ROOT } from '../run-cupbook.ts';
import { smallBook } from '../small-book.ts';
import { leaveAsFound } from './leave-as-found.ts';

leaveAsFound();

const THIN_MOLD = { 'molds/leaf.md': '---\ntitle: Leaf\ncavity: 1 ml\nbody: 0.5 mm\n---\n' };

async function batchOf(folder: string, ...words: readonly string[]): Promise<Batch> {
  let said = '';
  vi.spyOn(console, 'log').mockImplementation((text: string) => {
    said += text;
  });
  expect(await main(['batch', 'bog-pool', ...words, '--json', '--recipes', folder], { root: ROOT })).toBe(0);
  return JSON.parse(said) as Batch;
}

const measures = ({ cups }: BatchAmounts): readonly (readonly string[])[] =>
  cups.map(({ amounts }) => amounts.map(({ text }) => text));

test('batch RECIPE of several molds is measured for the body of the recipe’s own mold: one cup is poured into all, whichever comes first, as on its page', async () => {
  const folder = await smallBook(THIN_MOLD);
  const book = loadBook(folder).book!;
  const { materials, molds } = bookIndex(book);
  const recipe = book.recipes.find(({ id }) => id === 'bog-pool')!;
  const data = plannerData(
    { optics: USUAL_OPTICS, materials, molds, settings: book.settings, edition: book.edition },
    [recipe],
    () => '',
  );
  for (let baits = 5; baits < 25; baits++) {
    const lines = [
      { mold: 'leaf', baits },
      { mold: recipe.mold, baits: 5 },
    ];
    const words = lines.map((line) => `${line.mold}=${line.baits}`);
    const thinFirst = measures(await batchOf(folder, ...words));
    expect(thinFirst, `${baits}`).toEqual(measures(await batchOf(folder, ...words.reverse())));
    expect(thinFirst, `${baits}`).toEqual(measures(plannedBatch(data, data.recipes[0]!, lines)));
  }
});

test('batch tells money as the pages do: a bait below a cent costs less than that, and what has no price is named', async () => {
  const priced = (price: number): Readonly<Record<string, string>> => ({
    'shelf/colorants/peat.md': `---\ntitle: Peat\nprice: ${price}\npack: 30 ml\nlook: { kind: dye, colour: "#6b4a2b", dose: 10 drops per 100 ml, thickness: 3 mm }\n---\n`,
  });
  const said = async (price: number): Promise<string> => {
    let text = '';
    vi.spyOn(console, 'log').mockImplementation((line: string) => {
      text += line;
    });
    await main(['batch', 'bog-pool', '24', '--recipes', await smallBook(priced(price))], { root: ROOT });
    return text;
  };
  expect(await said(1)).toContain('Materials: €0.03 (less than €0.01 per bait), without Supple: no price\n');
  expect(await said(100)).toMatch(/Materials: €[\d.]+ \(€0\.1\d per bait\), without Supple: no price\n/);
});

test('batch says, as the page does, where a cup may not get as hot as its plastic must', async () => {
  const said = async (highest: string): Promise<string> => {
    let text = '';
    vi.spyOn(console, 'log').mockImplementation((line: string) => {
      text += line;
    });
    const folder = await smallBook({
      'shelf/plastics/supple.md': '---\ntitle: Supple\nworking: { from: 165 °C, to: 177 °C }\n---\n',
      'shelf/colorants/peat.md': `---\ntitle: Peat\nhighest: ${highest}\nlook: { kind: dye, colour: "#6b4a2b", dose: 10 drops per 100 ml }\n---\n`,
    });
    await main(['batch', 'bog-pool', '24', '--recipes', folder], { root: ROOT });
    return text;
  };
  expect(await said('150 °C')).toMatch(
    /max 150 °C \(Peat\)\n {2}The plastic needs at least 165 °C to pour: ask the suppliers\.\n/,
  );
  expect(await said('165 °C')).not.toContain('needs at least');
});
