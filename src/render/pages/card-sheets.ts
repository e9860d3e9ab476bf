/**
 * All cards of a book on sheets, page by page where the book is large.
 *
 * @packageDocumentation
 */

import type { Recipe } from '../../book/model/recipe.ts';
import type { Book } from '../../book/model.ts';
import { cardsOf, duplexSheets } from '../card/duplex-sheets.ts';
import { CARD_FORMATS, type CardFormat } from '../card/fit.ts';
import { sidesOf } from '../card/sides-of.ts';
import { bareSide } from '../card/view.ts';
import { document } from '../document.ts';
import { type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext, PageKind } from '../page.ts';
import { PRINT_AT_SIZE, PRINT_BOTH_SIDES, sheetBar } from '../print-bar.ts';
import { counted } from '../words.ts';

/** So many recipes’ cards still load on a phone, and most printers hold the paper for them. */
const RECIPES_A_PAGE = 48;

/** Recipes of each page of sheets; of a book without any, one page that says so. */
function sheetPages({ recipes }: Book): readonly (readonly Recipe[])[] {
  const count = Math.max(1, Math.ceil(recipes.length / RECIPES_A_PAGE));
  return Array.from({ length: count }, (_, index) =>
    recipes.slice(index * RECIPES_A_PAGE, (index + 1) * RECIPES_A_PAGE),
  );
}

/** One side of a sheet, with marks to cut along. */
function sheetSide(places: readonly (Html | undefined)[], format: CardFormat, sheet: 'a4' | 'letter'): Html {
  return html`<div class="sheet sheet-${sheet}">${places.map((side) => side ?? bareSide(format))}<span class="mark mark-top"></span><span class="mark mark-bottom"></span><span class="mark mark-left"></span><span class="mark mark-right"></span><span class="mark mark-middle"></span></div>`;
}

function sheetPage(
  kind: string,
  format: CardFormat,
  sheet: 'a4' | 'letter',
  size: string,
  url: (number: number) => string,
): PageKind {
  return {
    kind,
    // The first is asked for as a page that is there once.
    items: (book) => sheetPages(book).map((_, index) => (index === 0 ? '' : String(index + 1))),
    url: (item) => url(Number(item || 1)),
    render: (context, item) => {
      const { book } = context;
      const pages = sheetPages(book);
      const number = Number(item || 1);
      const recipes = pages[number - 1] ?? [];
      const sheets = duplexSheets(recipes.map((recipe) => cardsOf(sidesOf(context, recipe, format))));
      const which = pages.length === 1 ? '' : `, page ${number} of ${pages.length}`;
      const to = (other: number, words: string): readonly Html[] =>
        pages[other - 1] === undefined ? [] : [html`<a href="${link(context, url(other))}">${words}</a>`];
      return document(context, {
        title: `Cards, ${size}${which}`,
        description: `${pages.length === 1 ? 'All bench' : 'Bench'} cards of ${book.title}, four to a ${size} sheet with cut marks${which}.`,
        part: paths.cards,
        scripts: ['print'],
        paper: 'paper',
        main: html`<h1 class="print-title">${pages.length === 1 ? 'All cards' : 'Cards'} on ${size}${which}</h1>${sheetBar(
          context,
          sheets.length,
          html`Four cards to a sheet, ${counted(sheets.length, 'sheet')}. ${PRINT_AT_SIZE} ${PRINT_BOTH_SIDES} Cut along the marks.`,
          [...to(number - 1, 'Previous page'), ...to(number + 1, 'Next page')],
        )}<div class="papers">${sheets.map(({ fronts, backs }) => [sheetSide(fronts, format, sheet), sheetSide(backs, format, sheet)])}</div>`,
      });
    },
  };
}

/** Links to all cards on sheets of a size: one, or of each page with its first and its last recipe. */
export function sheetLinks(context: PageContext, size: string, url: (number: number) => string): Html {
  const pages = sheetPages(context.book);
  if (pages.length === 1)
    return html`<li><a href="${link(context, url(1))}">All cards on ${size}, four to a sheet</a></li>`;
  return html`<li>Cards on ${size}, four to a sheet: ${pages.map((recipes, index) => {
    const [first, last] = [recipes[0]!.title, recipes.at(-1)!.title];
    return html`${index === 0 ? '' : ', '}<a href="${link(context, url(index + 1))}" aria-label="Cards on ${size}, page ${index + 1}: ${first} to ${last}">${first} to ${last}</a>`;
  })}</li>`;
}

/** All cards on A4. */
export const sheetA4Page: PageKind = sheetPage('cards-a4', CARD_FORMATS.a6, 'a4', 'A4', paths.sheetA4);
/** All cards on Letter. */
export const sheetLetterPage: PageKind = sheetPage(
  'cards-letter',
  CARD_FORMATS.quarter,
  'letter',
  'Letter',
  paths.sheetLetter,
);
