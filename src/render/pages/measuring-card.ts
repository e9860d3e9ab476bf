/**
 * The page of the measuring card: what it is for, how it is printed, laid out and photographed.
 *
 * @packageDocumentation
 */
import { CARDS, type CardKind, SCALE_MM } from '../../measuring-card/measuring-card.ts';
import { document } from '../document.ts';
import { type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import { cardPicture } from '../measuring-card/card-picture.ts';
import { CARD_PAPERS, type CardPaper } from '../measuring-card/card-sheet.ts';
import { measuringAddress } from '../measuring-card/measuring-address.ts';
import { ownPrint } from '../measuring-card/own-print.ts';
import type { PageContext, PageKind } from '../page.ts';

export const measuringCardPage: PageKind = {
  kind: 'measuring-card',
  items: () => [''],
  url: () => paths.measuringCard,
  render: (context) =>
    document(context, {
      title: 'Measuring card',
      description:
        'A card to print: lay a bait on it, take a photo, and the book knows its colour over white and over black, how well it hides, its flake and its size.',
      part: paths.cards,
      main: html`<article class="text measuring-card"><h1>Measuring card</h1>
<p class="lead">Lay a bait along the card, half on white and half on black, and take one photo. The book reads from it the colour over both, how well the bait hides what is behind it, its flake and its size, and how sure all that is.</p>
${cardFigure(context)}
${printing(context)}
${shooting(context)}
${certifying(context)}
${ownPrint(context)}</article>`,
    }),
};

function cardFigure({ book }: PageContext): Html {
  const { width, height } = CARDS.small;
  return html`<figure class="card-figure"><svg role="img" aria-label="The small measuring card: a mark in each corner, a window that is half white and half black, five greys above it and below it, and a scale of ${SCALE_MM} mm" viewBox="0 0 ${width} ${height}">${cardPicture(CARDS.small, measuringAddress(book))}</svg><figcaption>The small card, ${width} × ${height} mm. The bait lies along the window, across the middle where white meets black.</figcaption></figure>`;
}

function printing(context: PageContext): Html {
  const { A4, Letter } = { A4: CARD_PAPERS.a4, Letter: CARD_PAPERS.letter };
  const papers = context.book.settings.volume === 'fl oz' ? [Letter, A4] : [A4, Letter];
  const to = (kind: CardKind, { name, title }: CardPaper): Html =>
    html`<a href="${link(context, paths.measuringCardSheet(kind, name))}"${kind === 'large' ? html` aria-label="The large card on ${title}"` : html` aria-label="Four small cards on ${title}"`}>${title}</a>`;
  const both = (kind: CardKind): Html => html`${to(kind, papers[0]!)} or ${to(kind, papers[1]!)}`;
  return html`<h2 id="print">Print it</h2>
<ul class="card-sheets"><li><b>Four small cards</b> on ${both('small')}, for baits up to ${CARDS.small.window.width} mm</li><li><b>The large card</b> on ${both('large')}, for baits up to ${CARDS.large.window.width} mm, and for several chips at once</li></ul>
<ol class="steps"><li><b>At 100 %</b>: not “fit to page”, and not borderless. Both change the size, and no photo can see that.</li>
<li><b>In black ink alone.</b> Choose black and white, or greyscale, in the print window. Greys mixed from colours change with the light.</li>
<li><b>On plain matt paper</b>, with no photo enhancement. Glossy paper mirrors your lamp.</li>
<li><b>Lay a ruler on the scale.</b> ${SCALE_MM} mm should be ${SCALE_MM} mm. If they aren’t, print again at 100 %${context.book.edition === 'mine' ? html`, or tell the book how long they are: see <a href="#your-card">Your card</a>` : ''}.</li>
<li><b>Glue it on something flat</b>, once you have cut it out: mounting board, a tile, a piece of plastic sheet. A card that bows is refused.</li></ol>`;
}

function shooting(context: PageContext): Html {
  return html`<h2 id="shoot">Take the photo</h2>
<ol class="steps"><li><b>In daylight, in the shade</b>: by a window is best. No direct sun, no flash, and only one kind of light. White LED lamps lack some of the colours of daylight, and no card brings those back.</li>
<li><b>The bait along the window</b>, across the seam, so that half of it lies on white and half on black. Keep it off the greys and the corner marks.</li>
<li><b>Dry, and pressed flat.</b> Air beneath a clear bait makes it look paler. A drop of water or clear oil under it fills the gap. Wet paper is a little darker, so take a fresh card when yours has stains.</li>
<li><b>From straight above</b>, the whole card in the picture with a little of the table around it. Tap on the card to focus, and hold still.</li>
<li><b>Not too bright.</b> The paper should look white, not burnt out.</li>
<li><b>Three photos are better than one</b>: turn the card a little between them. For a target always take three, since its error stays in every match.</li></ol>
<p>Then choose them on the page <a href="${link(context, paths.photograph)}">Photograph</a>. They are measured on your device: nothing is sent anywhere.</p>`;
}

/** The figures are those of photos of colour charts with published values, none of them of a bait. */
function certifying(context: PageContext): Html {
  return html`<h2 id="certify">Certify it, once</h2>
<p>What limits a photo most is that each phone bends light and dark in its own way. The greys show how, but only as well as the book knows them, and printers differ. So it half believes them until you have measured your own print once. On photos of colour charts with published values, half of the colours came within ΔE 5.3 with greys half believed. With greys that were known, half came within 4.4, and nine in ten within 9.5.</p>
<ul><li>A friend with a colour instrument, or a print shop, measures the paper, the black and the five greys of one card in a minute.</li>
<li>Or lay your card beside a bought colour chart of 24 patches whose values are published, and take a photo of both. The command <code>cupbook photo</code> reads the greys off between the chart’s own.</li></ul>
<p>All cards from one print run, on the same paper, are alike. Another printer, another cartridge or another paper is another card.${context.book.edition === 'mine' ? '' : ' In a book of your own you write the values into its settings.'}</p>`;
}
