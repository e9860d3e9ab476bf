import { expect, test } from 'vitest';
import type { BatchAmounts } from '../../src/book/model.ts';
import { batchCups } from '../../src/render/batch-view.ts';
import { bookIndex } from '../../src/render/book-index.ts';
import { plannedNames, plannerData } from '../../src/render/planner-data.ts';
import { doses } from '../../src/render/recipe/doses.ts';
import { pageOf, SAMPLE_BOOK } from './sample-book.ts';

const recipe = SAMPLE_BOOK.recipes.find(({ id }) => id === 'alder-smoke')!;
const { materials, molds } = bookIndex(SAMPLE_BOOK);
const data = plannerData(
  { materials, molds, settings: SAMPLE_BOOK.settings, edition: 'shared' },
  [recipe],
  (id) => `../${id}/`,
);
const shown = (batch: BatchAmounts): string => batchCups(batch, plannedNames(data, data.recipes[0]!)).toString();
const cells = (html: string, name: string): readonly string[] =>
  [...html.matchAll(new RegExp(`<td class="${name}">(.*?)</td>`, 'g'))].map(([, cell]) =>
    cell!.replace(/<[^>]+>/g, '').trim(),
  );

test('batchCups(batch) shows one number to weigh in a row, and no rate beside it', () => {
  const page = shown(recipe.batch);
  const rows = recipe.batch.cups.reduce((sum, { plastics, amounts }) => sum + plastics.length + amounts.length, 0);
  const exact = cells(page, 'exact');
  expect(exact.length).toBe(rows);
  for (const cell of exact) expect(cell).toMatch(/^[\d.]+\u00a0(g|ml)$/);
  expect(page).not.toMatch(/100.ml/);
});

test('batchCups(batch) names each table after its cup', () => {
  const tables = [...shown(recipe.batch).matchAll(/<table class="amounts" aria-label="([^"]+)">/g)];
  expect(tables.map(([, name]) => name)).toEqual(['Body: amounts', 'Back: amounts']);
});

test('batchCups(batch) parts no number from its unit, nor a measure but after its plus signs', () => {
  const [cup] = recipe.batch.cups;
  const [amount] = cup!.amounts;
  const spooned = { ...amount!, text: '1/8 tsp + 1 pinch + 1 smidgen', measuredGrams: 0.68, tool: 'spoons' as const };
  const page = shown({ ...recipe.batch, cups: [{ ...cup!, amounts: [spooned], measuringDeltaE: 1.2 }] });
  expect(page).toContain(
    '<b>1/8\u00a0tsp\u00a0+ 1\u00a0pinch\u00a0+ 1\u00a0smidgen</b> <span class="or">= 0.68\u00a0g</span>',
  );
  expect(page).toContain('ΔE\u00a01.2');
  expect(page.replace(/<[^>]+>/g, ' ')).not.toMatch(/\d (g|ml|tsp|pinch|smidgen|drops?)\b/);
});

test('doses(recipe) has what a hundred millilitres take in a table of its own, folded', async () => {
  const page = doses(recipe, materials, SAMPLE_BOOK.settings).toString();
  expect(page).toMatch(/^<details class="rates"><summary>In 100\u00a0ml of plastic<\/summary>/);
  const { contents } = recipe.cups[1]!;
  const peat = contents.find(({ material }) => material === 'peat')!;
  expect(page).toContain(
    `<td>${(peat.gramsPerMl * 100).toFixed(1).replace(/\.0$/, '')}\u00a0g</td><td>20\u00a0drops</td>`,
  );
  expect(page).toMatch(/Copper hexagon<\/th><td>[\d.]+\u00a0g<\/td><td>–<\/td>/);
  expect(await pageOf('recipe', 'alder-smoke')).toContain(page);
});

test('batchCups(batch) says in the row that a drop is better weighed, and what the scale has measured', () => {
  const [cup] = recipe.batch.cups;
  const [amount] = cup!.amounts;
  const drops = { ...amount!, text: '2 drops', tool: 'drops' as const, measuredGrams: amount!.grams };
  const touchy = { ...drops, dropDeltaE: 3.5, betterWeighed: true };
  const scale = { ...drops, text: '0.17 g', tool: 'scale' as const };
  const page = shown({ ...recipe.batch, cups: [{ ...cup!, amounts: [touchy, scale], together: true }] });
  expect(page).toContain('better weigh all: one drop moves the colour by ΔE\u00a03.5');
  expect(page).toContain('<b>0.17\u00a0g</b> <span class="or">by scale</span>');
  expect(page).toContain('Apart from what is weighed, drops and spoons make up for each other');
});

test('batchCups(batch) tells the true amount of what the scale is too coarse for, and that it is not to be weighed', () => {
  const [cup] = recipe.batch.cups;
  const { byWeight: _, ...amount } = cup!.amounts[0]!;
  const small = { ...amount, text: '1/4 tsp', tool: 'spoons' as const, grams: 0.7089, offScale: 'too-little' as const };
  const page = shown({ ...recipe.batch, cups: [{ ...cup!, amounts: [small], together: true }] });
  expect(page).toContain('<td class="exact">0.71\u00a0g <span class="or">too little to weigh here</span></td>');
  expect(page).not.toContain('or weigh all');
  expect(page).toContain('<th scope="col">Exact</th>');
  expect(shown(recipe.batch)).toContain('<th scope="col">Or exactly</th>');
});
