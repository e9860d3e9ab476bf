/**
 * What stands on a card: short texts in the order in which the bench needs them.
 *
 * @packageDocumentation
 */

import type { Recipe } from '../../book/model/recipe.ts';
import type { Mold } from '../../book/model/shelf.ts';
import type { Book } from '../../book/model.ts';
import { heatOf } from '../../book/recipes/heat-of.ts';
import { inOrderOfCup } from '../../book/recipes/work-material.ts';
import type { StepWords } from '../../patterns/pattern.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import { SHORT_CAUTIONS } from '../../words/cautions.ts';
import { measuredName } from '../../words/cut.ts';
import { batchFlakesText } from '../../words/flake.ts';
import { heatWords } from '../../words/heat.ts';
import { amissNote, betterWeighedWords, exactWords, measuringNotes, weighsText } from '../../words/measured.ts';
import { shortWorkWords } from '../../words/short-order-of-work.ts';
import { batchSentence, fillNotes } from '../batch-view.ts';
import { bookIndex } from '../book-index.ts';
import { cardMark } from '../edition-mark.ts';
import { paths } from '../links.ts';
import { unbroken, unitsKept } from '../unbroken.ts';
import { limitText, volumeText } from '../words.ts';
import { workOf } from '../work-of.ts';

/** One line of a cup: how much, of what, and the exact weight for those who weigh. */
export interface CardRow {
  readonly measure: string;
  /** What that weighs: `= 0.68 g` */
  readonly weighs?: string;
  readonly name: string;
  /** `or 0.80 g`; `exactly 0.71 g` where the scale is too coarse for it; `by scale` where the measure is a weight. */
  readonly weight?: string;
  /** How far off the measure is, or that weighing is better; how many flakes a bait has. */
  readonly note?: string;
  readonly plastic: boolean;
}

export interface CardCup {
  readonly name: string;
  /** `40 % of the bait` */
  readonly share: string;
  /** `2 equal cups, each:`; absent for one cup. */
  readonly split?: string;
  readonly hex: string;
  readonly rows: readonly CardRow[];
  /** What is to be known of the cup as it is measured. */
  readonly notes: readonly string[];
}

export interface CardContent {
  readonly id: string;
  readonly title: string;
  readonly pattern: Recipe['pattern'];
  /** What the batch makes. */
  readonly batch: string;
  readonly cups: readonly CardCup[];
  readonly heat: readonly string[];
  /** For the plate on every side: `Never above`, `185 °C`; or what to do where no limit is known. */
  readonly limit: { readonly words: string; readonly temperature?: string };
  readonly steps: readonly StepWords[];
  /** Whether the recipe has notes, which come before the order of work. */
  readonly noted: boolean;
  readonly cautions: readonly string[];
  /** Absolute address of the recipe's page, with the batch that the card is for; absent where the book states none. */
  readonly address?: string;
  /** Of the maker's own copy, on a card that is not for everybody: what is published of the recipe. */
  readonly mark?: string;
  readonly book: string;
}

// A card has no room for what hardly matters: the weight of a measure as good as exact, a colour error that few see.
const SAME = 0.05;
const CARD_DELTA_E = 1;

function rowsOf(book: Book, cup: Recipe['batch']['cups'][number]): readonly CardRow[] {
  const { materials, molds } = bookIndex(book);
  const plastics = cup.plastics.map(
    ({ material, ml }): CardRow => ({
      measure: unbroken(volumeText(ml, book.settings)),
      name: required(materials, material).title,
      plastic: true,
    }),
  );
  const amounts = inOrderOfCup(cup.amounts, cup.plastics, (material) => required(materials, material)).map(
    (amount): CardRow => {
      const { grams, measuredGrams, byWeight, offScale, tool } = amount;
      const same = Math.abs(measuredGrams / grams - 1) < SAME;
      const exact = unbroken(exactWords(amount).amount);
      const weight =
        tool === 'scale'
          ? unbroken('by scale')
          : byWeight !== undefined
            ? `or\u00a0${exact}`
            : offScale !== undefined && !same
              ? `exactly ${exact}`
              : undefined;
      const weighs = weight === undefined || same ? undefined : weighsText(amount);
      const flakes = batchFlakesText(amount.flakesABait, (mold) => required(molds, mold).title);
      const notes = [amissNote(amount) ?? betterWeighedWords(amount, cup), flakes].filter((text) => text !== undefined);
      return {
        measure: unbroken(amount.text),
        name: measuredName(amount, (material) => required(materials, material).title),
        plastic: false,
        ...defined({ weight }),
        ...(weighs === undefined ? {} : { weighs: unbroken(weighs) }),
        ...(notes.length === 0 ? {} : { note: unitsKept(notes.join('; ')) }),
      };
    },
  );
  return [...plastics, ...amounts];
}

/** The batch of a card as the recipe's page is asked for it; nothing where the page plans none. */
function batchOf({ batch, publish }: Recipe): string {
  const [line, ...more] = batch.lines;
  if (line === undefined || more.length > 0 || publish !== 'full') return '';
  return `?${new URLSearchParams({ baits: String(line.baits), mold: line.mold })}`;
}

/** Content of a recipe's card for its stated batch. */
export function cardContent(book: Book, recipe: Recipe): CardContent {
  const { materials, molds } = bookIndex(book);
  const { id, title, pattern, batch, publish } = recipe;
  const heat = heatOf(recipe.cups, (material) => materials.get(material));
  return {
    id,
    title,
    pattern,
    batch: batchSentence(batch, { mold: (mold: string): Mold => required(molds, mold) }),
    cups: batch.cups.map((cup, index) => ({
      name: cup.name,
      share: `${Math.round(recipe.cups[index]!.share * 100)} % of the bait`,
      hex: recipe.cups[index]!.body.overWhite.hex,
      rows: rowsOf(book, cup),
      notes: [
        ...measuringNotes(cup, (material) => required(materials, material).title, CARD_DELTA_E),
        ...fillNotes(cup, {
          mold: (mold) => required(molds, mold),
          material: (material) => required(materials, material),
        }),
      ],
      ...(cup.split === 1 ? {} : { split: `${cup.split} equal cups, each:` }),
    })),
    heat: heatWords(heat, book.settings, (material) => materials.get(material)?.title ?? material),
    limit:
      heat.limit === undefined
        ? { words: 'No maximum on file: read the data sheets.' }
        : { words: 'Never above', temperature: unbroken(limitText(heat.limit.celsius, book.settings)) },
    steps: shortWorkWords(workOf(book, recipe), {
      title: (id) => materials.get(id)?.title ?? id,
      settings: book.settings,
    }),
    noted: recipe.notes.trim() !== '',
    cautions: SHORT_CAUTIONS,
    // What is not published has no page at the book's address.
    ...(book.address === undefined || publish === 'no'
      ? {}
      : { address: `${book.address}${paths.recipe(id)}${batchOf(recipe)}` }),
    ...cardMark(book, publish),
    book: book.title,
  };
}
