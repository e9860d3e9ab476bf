/**
 * Cards for the bench: one recipe's, and sheets of all.
 *
 * @packageDocumentation
 */
import type { Book, Recipe } from '../../book/model.ts';
import { required } from '../../values/required.ts';
import { bookIndex } from '../book-index.ts';
import { type CardContent, cardContent } from '../card/content.ts';
import { CARD_FORMATS, type CardFormat, fitCard } from '../card/fit.ts';
import { cardSides } from '../card/view.ts';
import { coloursByHue, lookInHue } from '../colour-entry.ts';
import { document } from '../document.ts';
import { type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageKind } from '../page.ts';
import { PRINT_AT_SIZE, printBar, sheetBar } from '../print-bar.ts';
import { chipColours, chips } from '../swatch/chip.ts';
import { recipeCoats } from '../swatch/coat.ts';
import { tileBudget } from '../tile.ts';
import { counted, sentence } from '../words.ts';
import { A4_LABELS, LETTER_LABELS } from './labels.ts';

// The same on all four pages on which a recipe has a card.
const contents = new WeakMap<Book, Map<Recipe, CardContent>>();

function contentOf(book: Book, recipe: Recipe): CardContent {
  const known = contents.get(book) ?? new Map<Recipe, CardContent>();
  contents.set(book, known);
  const content = known.get(recipe) ?? cardContent(book, recipe);
  known.set(recipe, content);
  return content;
}

function sidesOf(book: Book, recipe: Recipe, format: CardFormat, cards: number): readonly Html[] {
  const mold = required(bookIndex(book).molds, recipe.mold);
  return cardSides(fitCard(contentOf(book, recipe), format), recipeCoats(recipe, mold), {
    id: `c-${recipe.id}`,
    budget: tileBudget(cards),
  });
}

function cardPage(kind: string, format: CardFormat, size: string, url: (id: string) => string): PageKind {
  return {
    kind,
    items: (book) => book.recipes.map(({ id }) => id),
    url,
    render: (context, id) => {
      const { book } = context;
      const recipe = required(bookIndex(book).recipes, id);
      const sides = sidesOf(book, recipe, format, 1);
      const unaddressed = book.address === undefined ? ' No QR code: the book has no address yet.' : '';
      const two =
        sides.length > 1 ? ` ${counted(sides.length, 'side')}: print them back to back, or side by side.` : '';
      return document(context, {
        title: `Card: ${recipe.title}`,
        description: `Bench card of ${recipe.title}, ${size}, with measured amounts, order of work and cautions.`,
        part: paths.cards,
        scripts: ['print'],
        paper: 'paper',
        main: html`<h1 class="print-title">Bench card of ${recipe.title}</h1>${printBar(
          html`${size}. ${PRINT_AT_SIZE}${two}${unaddressed}`,
          html`<a href="${link(context, paths.recipe(id))}">Back to the recipe</a>`,
        )}<div class="papers">${sides}</div>`,
      });
    },
  };
}

export const recipeCardPage: PageKind = cardPage('recipe-card', CARD_FORMATS.a6, '105 × 148 mm (A6)', paths.card);
export const recipeSmallCardPage: PageKind = cardPage(
  'recipe-card-4x6',
  CARD_FORMATS['4x6'],
  '4 × 6 in',
  paths.smallCard,
);

const CELLS = 4;

function sheetPage(kind: string, format: CardFormat, sheet: 'a4' | 'letter', size: string, url: string): PageKind {
  return {
    kind,
    items: () => [''],
    url: () => url,
    render: (context) => {
      const { book } = context;
      const cells = book.recipes.flatMap((recipe) => sidesOf(book, recipe, format, book.recipes.length));
      const sheets = Array.from({ length: Math.ceil(cells.length / CELLS) }, (_, index) =>
        cells.slice(index * CELLS, (index + 1) * CELLS),
      );
      return document(context, {
        title: `Cards, ${size}`,
        description: `All bench cards of ${book.title}, four to a ${size} sheet with cut marks.`,
        part: paths.cards,
        scripts: ['print'],
        paper: 'paper',
        main: html`<h1 class="print-title">All cards on ${size}</h1>${sheetBar(
          context,
          sheets.length,
          html`Four to a sheet, ${counted(sheets.length, 'sheet')}. ${PRINT_AT_SIZE} Cut along the marks.`,
        )}<div class="papers">${sheets.map((four) => html`<div class="sheet sheet-${sheet}">${four}<span class="mark mark-top"></span><span class="mark mark-bottom"></span><span class="mark mark-left"></span><span class="mark mark-right"></span><span class="mark mark-middle"></span></div>`)}</div>`,
      });
    },
  };
}

export const sheetA4Page: PageKind = sheetPage('cards-a4', CARD_FORMATS.a6, 'a4', 'A4', paths.sheetA4);
export const sheetLetterPage: PageKind = sheetPage(
  'cards-letter',
  CARD_FORMATS.quarter,
  'letter',
  'Letter',
  paths.sheetLetter,
);

/** Where cards are chosen. */
export const cardsPage: PageKind = {
  kind: 'cards',
  items: () => [''],
  url: () => paths.cards,
  render: (context) => {
    const { book } = context;
    const to = (path: string): string => link(context, path);
    const groups = coloursByHue(book);
    return document(context, {
      title: 'Cards',
      description: `Cards of ${book.title} for the bench: single, or all on sheets.`,
      part: paths.cards,
      main: html`<h1>Cards</h1>
<p class="lead">For the wall above the bench: measured amounts for the recipe’s own batch, the order of work, the maximum temperature and the cautions.</p>
${
  book.recipes.length === 0
    ? html`<p>The book has no recipes to print yet.</p>`
    : html`<ul class="sheets"><li><a href="${to(paths.sheetA4)}">All cards on A4, four to a sheet</a></li><li><a href="${to(paths.sheetLetter)}">All cards on Letter, four to a sheet</a></li><li><a href="${to(paths.labels)}">Bag labels on A4, ${A4_LABELS.count} to a sheet</a></li><li><a href="${to(paths.labelsLetter)}">Bag labels on Letter, ${LETTER_LABELS.count} to a sheet</a></li></ul>`
}
${groups.map(({ hue, entries }) => {
  const cards = entries.flatMap((entry) => {
    const { id, title, recipe } = entry;
    return recipe === undefined
      ? []
      : [
          html`<li><span class="choice-chip">${chips([chipColours(lookInHue(entry, hue))], '')}</span><span class="choice-name">${title}</span><a href="${to(paths.card(id))}" aria-label="105 × 148 mm card of ${title}">105 × 148 mm</a><a href="${to(paths.smallCard(id))}" aria-label="4 × 6 in card of ${title}">4 × 6 in</a></li>`,
        ];
  });
  return cards.length === 0 ? html`` : html`<h2>${sentence(hue)}</h2><ul class="card-choice">${cards}</ul>`;
})}`,
    });
  },
};
