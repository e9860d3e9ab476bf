import { expect, test } from 'vitest';
import type { Batch, BatchAmounts } from '../../src/book/model.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { batchCups, batchShort } from '../../src/render/batch-view.ts';
import { bookIndex } from '../../src/render/book-index.ts';
import { plannedNames, plannerData } from '../../src/render/planner-data.ts';
import { doses } from '../../src/render/recipe/doses.ts';
import { allByRole, byRole, documentOf, nameOf, rowsOf, wordsIn } from '../page-dom.ts';
import { MAKERS_BOOK, readPage, SAMPLE_BOOK } from './sample-book.ts';

const recipe = SAMPLE_BOOK.recipes.find(({ id }) => id === 'alder-smoke')!;
const { materials, molds } = bookIndex(SAMPLE_BOOK);
const data = plannerData(
  { optics: USUAL_OPTICS, materials, molds, settings: SAMPLE_BOOK.settings, edition: 'shared' },
  [recipe],
  (id) => `../${id}/`,
);
const shown = (batch: BatchAmounts): Document => documentOf(batchCups(batch, plannedNames(data, data.recipes[0]!)));
const rows = (page: Document | Element): readonly Readonly<Record<string, string>>[] =>
  allByRole(page, 'table').flatMap(rowsOf);

test('batchCups(batch) shows one number to weigh in a row, and no rate beside it', () => {
  const page = shown(recipe.batch);
  const number = recipe.batch.cups.reduce((sum, { plastics, amounts }) => sum + plastics.length + amounts.length, 0);
  expect(rows(page).length).toBe(number);
  for (const row of rows(page)) expect(row.Exact).toMatch(/^[\d.]+ (g|ml)$/);
  expect(wordsIn(page)).not.toMatch(/100 ml/);
});

test('batchCups(batch) names each table after its cup', () => {
  expect(allByRole(shown(recipe.batch), 'table').map(nameOf)).toEqual(['Body: amounts', 'Back: amounts']);
});

test('batchCups(batch) parts no number from its unit, nor a measure but after its plus signs', () => {
  const [cup] = recipe.batch.cups;
  const [amount] = cup!.amounts;
  const spooned = { ...amount!, text: '1/8 tsp + 1 pinch + 1 smidgen', measuredGrams: 0.68, tool: 'spoons' as const };
  const page = shown({ ...recipe.batch, cups: [{ ...cup!, amounts: [spooned], measuringDeltaE: 1.2 }] });
  const text = page.body.textContent!;
  expect(text).toContain('1/8\u00a0tsp\u00a0+ 1\u00a0pinch\u00a0+ 1\u00a0smidgen = 0.68\u00a0g');
  expect(text).toContain('ΔE\u00a01.2');
  expect(text).not.toMatch(/\d (g|ml|tsp|pinch|smidgen|drops?)\b/);
});

test('doses(recipe) has what a hundred millilitres take in a table of its own, folded', async () => {
  const folded = byRole(documentOf(doses(recipe, materials, SAMPLE_BOOK.settings)), 'group');
  expect([folded.hasAttribute('open'), wordsIn(folded.firstElementChild!)]).toEqual([false, 'Per 100 ml of plastic']);
  const { contents } = recipe.cups[1]!;
  const peat = contents.find(({ material }) => material === 'peat')!;
  const cells = rows(folded).map((row) => Object.values(row));
  expect(cells).toContainEqual(['Peat', `${(peat.gramsPerMl * 100).toFixed(1).replace(/\.0$/, '')} g`, '20 drops']);
  expect(cells).toContainEqual(['Copper hexagon', expect.stringMatching(/^[\d.]+ g$/), '–']);
  const lids = allByRole(await readPage('recipe', 'alder-smoke'), 'group').map(wordsIn);
  expect(lids).toContain(wordsIn(folded));
});

test('batchCups(batch) says in the row that a drop is better weighed, and what the scale has measured', () => {
  const [cup] = recipe.batch.cups;
  const [amount] = cup!.amounts;
  const drops = { ...amount!, text: '2 drops', tool: 'drops' as const, measuredGrams: amount!.grams };
  const touchy = { ...drops, dropDeltaE: 3.5, betterWeighed: true };
  const scale = { ...drops, text: '0.17 g', tool: 'scale' as const };
  const page = shown({ ...recipe.batch, cups: [{ ...cup!, amounts: [touchy, scale], together: true }] });
  expect(wordsIn(page)).toContain('better to weigh it all: one drop more is easy to see (ΔE 3.5)');
  expect(rows(page).at(-1)!.Measure).toBe('0.17 g by scale about 6300 flakes a bait');
  expect(wordsIn(page)).toContain('Weigh what says “by scale”. Rounded as a set: use all');
});

test('batchCups(batch) tells the true amount of what the scale is too coarse for, and that it is not to be weighed', () => {
  const [cup] = recipe.batch.cups;
  const { byWeight: _, ...amount } = cup!.amounts[0]!;
  const small = { ...amount, text: '1/4 tsp', tool: 'spoons' as const, grams: 0.7089, offScale: 'too-little' as const };
  const page = shown({ ...recipe.batch, cups: [{ ...cup!, amounts: [small], together: true }] });
  expect(rows(page).at(-1)!.Exact).toBe('0.71 g');
  expect(rows(page).at(-1)!.Measure).toContain('by weight: too little for this scale');
  expect(wordsIn(page)).not.toContain('or weigh everything');
});

test('batchShort(batch) has what must be bought, one thing a line, and says so where nothing must', () => {
  const [mine] = MAKERS_BOOK.recipes.filter(({ batch }) => (batch as Batch).materials.length > 1);
  const { materials: all, ...batch } = mine!.batch as Batch;
  const names = plannedNames(data, data.recipes[0]!);
  const known = all.filter(({ material }) => data.materials.some(({ id }) => id === material));
  const [short, ...rest] = known.map((each) => ({ ...each, shortGrams: 0, packs: 0 }));
  const view = (materials: Batch['materials']) => documentOf(batchShort({ ...batch, materials }, names));
  expect(wordsIn(view(rest))).toBe('The shelf has enough of everything that is counted.');
  const lines = allByRole(view([{ ...short!, shortGrams: 12, packs: 2 }, ...rest]), 'listitem').map(wordsIn);
  expect(lines).toHaveLength(1);
  expect(lines[0]).toMatch(/ short: buy 2 packs$/);
  expect(lines[0]).toContain(names.material(short!.material).title);
});
