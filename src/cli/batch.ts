import type { Recipe } from '../book/model/recipe.ts';
import type { Material, Mold } from '../book/model/shelf.ts';
import type { Batch, BatchCup, Book, Measured } from '../book/model.ts';
import { batchOfRecipe } from '../book/recipes/batch-of-recipe.ts';
import { inOrderOfCup, sinksIn } from '../book/recipes/work-material.ts';
import { Refusal } from '../diagnostics/refusal.ts';
import { printable } from '../shell/printable.ts';
import { moneyText } from '../units/money-text.ts';
import { volumeText } from '../units/volume-text.ts';
import { required } from '../values/required.ts';
import { costWords } from '../words/cost.ts';
import { measuredName } from '../words/cut.ts';
import { fillsText, lineText } from '../words/fills.ts';
import { batchFlakesText } from '../words/flake.ts';
import { needsHeatText } from '../words/heat.ts';
import { maxText } from '../words/limit.ts';
import { exactWords, measureNote, measuringNotes, weighsText } from '../words/measured.ts';
import { listText } from '../words/sentence-text.ts';
import { shortWords } from '../words/stock.ts';
import { CAUTION } from './caution.ts';
import type { Command } from './command.ts';
import { findNamed } from './find-named.ts';
import { type SoundBook, soundBook } from './sound-book.ts';

/** `cupbook batch` */
export const batchCommand: Command = {
  name: 'batch',
  usage: 'RECIPE [[MOLD=]BAITS …]',
  summary: 'work out how much of everything you need for a number of baits',
  words: [1, Number.POSITIVE_INFINITY],
  options: { json: { help: 'as JSON, for other programs' } },
  details:
    "For example: cupbook batch alder-smoke minnow-3=60 claw-4=25. Without a mold it takes the recipe's own; without a number, the\nrecipe's own baits. It counts baits, not bags: for three bags of eight write 24.",
  run([id = '', ...wanted], values, { recipes }) {
    const sound = soundBook(recipes);
    const { book } = sound;
    if (BAITS.test(id) && !book.recipes.some((recipe) => recipe.id === id))
      throw new Refusal(
        `Name the recipe first: \`batch ${[wanted[0] ?? 'RECIPE', id, ...wanted.slice(1)].join(' ')}\`.`,
      );
    const recipe = findNamed('recipe', id, sound);
    const own = recipe.batch.lines.map(({ mold, baits }) => `${mold}=${baits}`);
    const lines = (wanted.length > 0 ? wanted : own).map((text) => lineOf(text, recipe, sound));
    const materials = new Map(book.materials.map((material) => [material.id, material]));
    const shelf = (material: string): Material => required(materials, material);
    const { bodyMm } = required(book.molds, recipe.mold);
    const batch = batchOfRecipe(recipe, lines, shelf, book.settings, { bodyMm, optics: book.optics });
    console.log(values.json ? JSON.stringify(batch, null, 2) : printable(batchText(recipe, batch, book)));
    return 0;
  },
};

/** `60`, `minnow-3=60` */
const BAITS = /^(?:([^=]*)=)?(\d+)$/;

function lineOf(text: string, recipe: Recipe, sound: SoundBook): { readonly mold: Mold; readonly baits: number } {
  const [, mold = recipe.mold, count = ''] = BAITS.exec(text) ?? [];
  const baits = Number(count);
  if (baits >= 1 && Number.isSafeInteger(baits)) return { mold: findNamed('mold', mold, sound), baits };
  throw new Refusal(`"${text}" is not a number of baits: write for example ${recipe.mold}=60, or 60 alone.`);
}

/** A batch as text: what goes into each cup, how hot it may get, what must be bought, what it costs. */
export function batchText(recipe: Recipe, batch: Batch, book: Book): string {
  const title = new Map(book.materials.map((material) => [material.id, material.title]));
  const name = (material: string): string => title.get(material) ?? material;
  const shelf = (material: string): Material => required(book.materials, material);
  const mold = (id: string): string => required(book.molds, id).title;
  const volume = (ml: number): string => volumeText(ml, book.settings);
  const money = (amount: number): string => moneyText(amount, book.settings);
  const unpriced = batch.unpriced.map(name);
  const wide = Math.max(
    LEAST_COLUMN,
    ...batch.cups.flatMap(({ amounts }) => amounts.map((measured) => measureText(measured).length)),
  );
  const cups = batch.cups.flatMap((cup, index) => {
    const { limit, limitUnknown } = recipe.cups[index]!;
    const pouredFrom = Math.max(...cup.plastics.map(({ material }) => shelf(material).working?.from ?? 0));
    return [
      '',
      `${cup.name}${timesText(cup.split)}:`,
      ...cup.plastics.map(({ material, ml }) => `  ${volume(ml).padEnd(wide)}  ${name(material)}`),
      ...inOrderOfCup(cup.amounts, cup.plastics, shelf).map((measured) =>
        amountLine(measured, cup, { name, mold }, wide),
      ),
      ...measuringNotes(cup, name).map((note) => `  ${note}`),
      ...(cup.fills === undefined
        ? []
        : [`  ${fillsText(cup.fills, mold, sinksIn({ plastics: cup.plastics, contents: cup.amounts }, shelf))}`]),
      ...(limit === undefined ? [] : [`  ${maxText(limit.celsius, name(limit.material), book.settings)}`]),
      ...(limit === undefined || limit.celsius >= pouredFrom ? [] : [`  ${needsHeatText(pouredFrom, book.settings)}`]),
      ...(limitUnknown.length === 0
        ? []
        : [`  no maximum temperature on file for ${listText(limitUnknown.map(name))}`]),
    ];
  });
  const short = batch.materials.filter(({ shortGrams }) => shortGrams > 0);
  return [
    `${recipe.title}: ${batch.lines.map((line) => lineText(line, `in ${line.mold}`)).join(', ')}`,
    ...cups,
    '',
    ...short.map(
      (missing) =>
        `${name(missing.material)}: ${shortWords(missing, required(book.materials, missing.material), book.settings)}`,
    ),
    `Materials: ${costWords(batch.cost, unpriced, money, ` (${money(batch.costPerBait)} per bait)`)}`,
    '',
    CAUTION,
  ].join('\n');
}

/** Narrowest column of amounts, so that small batches look alike. */
const LEAST_COLUMN = 18;

function timesText(split: number): string {
  return split === 1 ? '' : split === 2 ? ', mix twice' : `, mix ${split} times`;
}

/** `1/4 tsp = 0.68 g` */
function measureText(measured: Measured): string {
  return [measured.text, weighsText(measured)].filter((text) => text !== undefined).join(' ');
}

/** `1/4 tsp = 0.68 g    Ivory pearl, or exactly 0.80 g`; `exactly 0.80 g (too little for this scale)` */
function amountLine(
  measured: Measured,
  cup: BatchCup,
  { name, mold }: { readonly name: (material: string) => string; readonly mold: (id: string) => string },
  wide: number,
): string {
  const note = measureNote(measured, cup);
  const flakes = batchFlakesText(measured.flakesABait, mold);
  return [
    `  ${measureText(measured).padEnd(wide)}  ${measuredName(measured, name)}`,
    ...(measured.tool === 'drops' || measured.tool === 'spoons' ? [exactly(measured)] : []),
    ...(note === undefined ? [] : [note]),
    ...(flakes === undefined ? [] : [flakes]),
  ].join(', ');
}

function exactly(measured: Measured): string {
  const { amount, note } = exactWords(measured);
  if (note !== undefined) return `exactly ${amount} (${note})`;
  return measured.byWeight === undefined ? `exactly ${amount}` : `or exactly ${amount}`;
}
