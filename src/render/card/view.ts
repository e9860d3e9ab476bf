/**
 * A fitted card as HTML: each side is one paper.
 *
 * @packageDocumentation
 */
import { type Html, html } from '../html.ts';
import { stepHtml } from '../step-html.ts';
import { dot } from '../swatch/chip.ts';
import type { Coats } from '../swatch/coat.ts';
import { pour } from '../swatch/pour.ts';
import type { CardBlock } from './block-height.ts';
import type { CardContent } from './content.ts';
import type { FittedCard } from './fit.ts';
import { cardFoot } from './foot.ts';
import { qrCode } from './qr.ts';

// A recipe has a card on four pages, and to make its code takes as long as all the rest of one.
const codes = new WeakMap<CardContent, Html>();

function codeOf(content: CardContent, address: string): Html {
  const code = codes.get(content) ?? qrCode(address, `QR code of ${address}`);
  codes.set(content, code);
  return code;
}

function blockView(block: CardBlock, content: CardContent): Html {
  switch (block.kind) {
    case 'cup': {
      const { cup, rows, notes, continued } = block;
      return html`<section class="card-cup"><h3>${dot(cup.hex)}${cup.name}${continued ? ', continued' : ''} <span class="card-share">${cup.share}${cup.split === undefined ? '' : html`, <b>${cup.split}</b>`}</span></h3><table><colgroup><col class="col-measure"><col><col class="col-weight"></colgroup><tbody>${rows.map(
        ({ measure, weighs, name, weight, note, plastic }) => {
          const head = html`${name}${note === undefined ? '' : html`<span class="card-note">${note}</span>`}`;
          return html`<tr${plastic ? html` class="plastic"` : ''}><td class="card-measure">${measure}${weighs === undefined ? '' : html` <span class="card-weighs">${weighs}</span>`}</td>${
            weight === undefined
              ? html`<th scope="row" colspan="2">${head}</th>`
              : html`<th scope="row">${head}</th><td class="card-weight">${weight}</td>`
          }</tr>`;
        },
      )}</tbody></table>${notes.map((note) => html`<p class="card-cup-note">${note}</p>`)}</section>`;
    }
    case 'heat':
      return html`<p class="card-heat">${content.heat.join(' ')}</p>`;
    case 'steps':
      return html`<section class="card-steps"><h3>Order of work${content.noted ? html` <span class="card-share">the maker’s notes come first</span>` : ''}</h3><ol>${content.steps.map((step) => html`<li>${stepHtml(step)}</li>`)}</ol></section>`;
    case 'cautions':
      return html`<section class="card-cautions"><div><h3>Cautions</h3><ul>${content.cautions.map((caution) => html`<li>${caution}</li>`)}</ul></div>${
        content.address === undefined ? '' : html`<div class="card-qr">${codeOf(content, content.address)}</div>`
      }</section>`;
  }
}

/**
 * All sides of a card.
 *
 * @param options beginning of the ids in it, one that the page has once; most flakes of its drawing
 */
export function cardSides(
  card: FittedCard,
  coats: Coats,
  { id: idPrefix, budget }: { readonly id: string; readonly budget: number },
): readonly Html[] {
  const { content, format, sides } = card;
  const { title, batch, id } = content;
  const mark = content.mark === undefined ? '' : html`<b class="card-mark">${content.mark}</b>`;
  return sides.map((side, index) => {
    const { blocks, step } = side;
    const first = index === 0;
    const label = first ? `${title} over white and over black` : '';
    const drawing = pour(coats, { id: idPrefix, seed: id, budget, label, again: !first });
    const number = sides.length > 1 ? `side ${index + 1} of ${sides.length}` : '';
    const head = first
      ? html`<div class="card-swatch">${drawing}${mark}</div><h2>${title}</h2><p class="card-batch">${batch}</p>`
      : html`<div class="card-next"><span class="card-swatch-small">${drawing}</span><h2>${title}</h2>${mark}</div>`;
    return html`<article class="card card-${format.name} step-${step}" data-card="${id}">${head}<div class="card-body">${blocks.map((block) => blockView(block, content))}</div><p class="card-foot">${cardFoot(side, content)}<span>${number}</span></p></article>`;
  });
}
