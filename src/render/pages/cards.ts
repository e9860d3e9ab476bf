/**
 * Cards for the bench: one recipe's, and where they are chosen.
 *
 * @packageDocumentation
 */
import { required } from '../../values/required.ts';
import { tileSources } from '../bait-picture.ts';
import { bookIndex } from '../book-index.ts';
import { CARD_FORMATS, type CardFormat } from '../card/fit.ts';
import { sidesOf } from '../card/sides-of.ts';
import { coloursByHue } from '../colour-entry.ts';
import { document } from '../document.ts';
import { html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageKind } from '../page.ts';
import { PRINT_AT_SIZE, printBar } from '../print-bar.ts';
import { smallBait } from '../small-bait.ts';
import { counted, sentence } from '../words.ts';
import { sheetLinks } from './card-sheets.ts';
import { labelLinks } from './labels.ts';

function cardPage(kind: string, format: CardFormat, size: string, url: (id: string) => string): PageKind {
  return {
    kind,
    items: (book) => book.recipes.map(({ id }) => id),
    url,
    render: (context, id) => {
      const { book } = context;
      const recipe = required(bookIndex(book).recipes, id);
      const sides = sidesOf(context, recipe, format);
      const unaddressed = book.address === undefined ? ' No QR code: the book has no address yet.' : '';
      const cards = Math.ceil(sides.length / 2);
      const on = cards === 1 ? 'one card' : `${cards} cards`;
      const more =
        sides.length === 1
          ? ''
          : ` ${counted(sides.length, 'side')} on ${on}: print on both sides, flipped on the long edge.`;
      return document(context, {
        title: `Card: ${recipe.title}`,
        description: `Bench card of ${recipe.title}, ${size}, with measured amounts, order of work and cautions.`,
        part: paths.cards,
        scripts: ['print'],
        paper: 'paper',
        main: html`<h1 class="print-title">Bench card of ${recipe.title}</h1>${printBar(
          html`${size}. ${PRINT_AT_SIZE}${more}${unaddressed}`,
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
<p>To measure a bait with your phone, print a <a href="${to(paths.measuringCard)}">measuring card</a>.</p>
${
  book.recipes.length === 0
    ? html`<p>The book has no recipes to print yet.</p>`
    : html`<ul class="sheets">${sheetLinks(context, 'A4', paths.sheetA4)}${sheetLinks(context, 'Letter', paths.sheetLetter)}${labelLinks(context)}</ul>`
}
${groups.map(({ hue, entries }) => {
  const cards = entries.flatMap((entry) => {
    const { id, title, recipe } = entry;
    return recipe === undefined
      ? []
      : [
          html`<li>${smallBait(tileSources(context, id))}<span class="choice-name">${title}</span><a href="${to(paths.card(id))}" aria-label="105 × 148 mm card of ${title}">105 × 148 mm</a><a href="${to(paths.smallCard(id))}" aria-label="4 × 6 in card of ${title}">4 × 6 in</a></li>`,
        ];
  });
  return cards.length === 0 ? html`` : html`<h2>${sentence(hue)}</h2><ul class="card-choice">${cards}</ul>`;
})}`,
    });
  },
};
