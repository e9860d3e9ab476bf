/**
 * Measuring cards on sheets: four small ones or a large one, on A4 or Letter.
 *
 * @packageDocumentation
 */
import type { CardKind } from '../../measuring-card/measuring-card.ts';
import { document } from '../document.ts';
import { html } from '../html.ts';
import { link, paths } from '../links.ts';
import { CARD_PAPERS, type CardPaper, cardSheet } from '../measuring-card/card-sheet.ts';
import { measuringAddress } from '../measuring-card/measuring-address.ts';
import type { PageKind } from '../page.ts';
import { printBar } from '../print-bar.ts';

function sheetPage(kind: CardKind, paper: CardPaper): PageKind {
  const cards = kind === 'small' ? 'Four measuring cards' : 'The large measuring card';
  return {
    kind: `measuring-card-${kind}-${paper.name}`,
    items: () => [''],
    url: () => paths.measuringCardSheet(kind, paper.name),
    render: (context) =>
      document(context, {
        title: `${cards}, ${paper.title}`,
        description: `${cards} on ${paper.title}, to print at 100 % in black and white on matt paper.`,
        part: paths.cards,
        scripts: ['print'],
        paper: 'paper',
        main: html`<h1 class="print-title">${cards} on ${paper.title}</h1>${printBar(
          html`Print at 100 %, no margins and not borderless, in black and white (grey scale), on plain matt ${paper.title} paper.${kind === 'small' ? ' Cut along the marks.' : ''}`,
          html`<a href="${link(context, paths.measuringCard)}">What to look out for</a>`,
        )}<div class="papers"><div class="sheet sheet-${paper.name} sheet-measuring">${cardSheet(kind, paper, measuringAddress(context.book))}</div></div>`,
      }),
  };
}

export const measuringCardSheets: readonly PageKind[] = [
  sheetPage('small', CARD_PAPERS.a4),
  sheetPage('small', CARD_PAPERS.letter),
  sheetPage('large', CARD_PAPERS.a4),
  sheetPage('large', CARD_PAPERS.letter),
];
