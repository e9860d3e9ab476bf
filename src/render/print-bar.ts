import { type Html, html } from './html.ts';
import { link, paths } from './links.ts';
import type { PageContext } from './page.ts';

/** What stands above the papers on a screen: how to print, and where else to go. */
export function printBar(words: Html, back: Html): Html {
  return html`<div class="print-bar"><p>${words}</p><p class="print-actions"><button type="button" data-print hidden>Print</button> ${back}</p></div>`;
}

/** The bar of a page of sheets; without any there is nothing to print. `others`: links to pages of more sheets. */
export function sheetBar(context: PageContext, sheets: number, words: Html, others: readonly Html[] = []): Html {
  const back = html`<a href="${link(context, paths.cards)}">All cards</a>${others.map((other) => html` ${other}`)}`;
  return sheets === 0 ? html`<p>The book has no recipes to print. ${back}</p>` : printBar(words, back);
}

/** How paper comes out at its size. */
export const PRINT_AT_SIZE = 'Print at 100 %, no margins, background graphics on.';

/** How fronts and backs meet. */
export const PRINT_BOTH_SIDES = 'On both sides, flipped on the long edge.';
