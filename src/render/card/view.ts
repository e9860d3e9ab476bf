/**
 * A fitted card as HTML: each side is one paper.
 *
 * @packageDocumentation
 */
import { type Html, html } from '../html.ts';
import { stepHtml } from '../step-html.ts';
import { dot } from '../swatch/chip.ts';
import type { CardBlock } from './block-height.ts';
import { NOTES } from './card-type.ts';
import type { CardContent } from './content.ts';
import type { CardFormat, FittedCard } from './fit.ts';
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
          const head = html`<span class="card-name">${name}</span>${note === undefined ? '' : html` <span class="card-note">${note}</span>`}`;
          return html`<tr${plastic ? html` class="plastic"` : ''}><td class="card-measure"><b>${measure}</b>${weighs === undefined ? '' : ` ${weighs}`}</td>${
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
      return html`<section class="card-steps"><h3>Order of work${block.from > 0 ? ', continued' : content.noted ? html` <span class="card-share">the maker’s notes come first</span>` : ''}</h3><ol start="${block.from + 1}">${block.steps.map((step) => html`<li>${stepHtml(step)}</li>`)}</ol></section>`;
    case 'cautions':
      return html`<section class="card-cautions"><h3>Cautions</h3> <ul>${content.cautions.map((caution) => html`<li>${caution}</li> `)}</ul></section>`;
  }
}

/** What every side of a card begins with: which recipe and which batch it is, when it was poured, and how hot it may get. */
function head({ title, batch, limit, mark }: CardContent): Html {
  return html`<header class="card-head"><div class="card-names"><h2>${title}</h2><p class="card-batch">${mark === undefined ? '' : html`<b class="card-mark">${mark}</b> `}${batch}</p><p class="card-written"><span>Poured</span> <span>Lot</span></p></div><p class="card-limit">${limit.words}${limit.temperature === undefined ? '' : html` <b>${limit.temperature}</b>`}</p></header>`;
}

/** All sides of a card, with a picture of the bait on the first. */
export function cardSides({ content, format, sides, spare }: FittedCard, picture: Html): readonly Html[] {
  return sides.map((blocks, index) => {
    const code =
      content.address === undefined ? '' : html`<div class="card-qr">${codeOf(content, content.address)}</div>`;
    const shown =
      index === 0 ? html`<div class="card-picture"><div class="card-bait">${picture}</div>${code}</div>` : '';
    return html`<article class="bench-card card-${format.name}" data-card="${content.id}">${head(content)}${shown}<div class="card-body">${blocks.map((block) => blockView(block, content))}${index === sides.length - 1 && spare >= NOTES ? html`<p class="card-notes">Notes</p>` : ''}</div><p class="card-foot"><b>Hot vinyl burns: goggles, gloves, hood.</b> <span>Side ${index + 1} of ${sides.length}</span></p></article>`;
  });
}

/** The bare back of a card with one side more than it has cards. */
export function bareSide({ name }: CardFormat): Html {
  return html`<div class="bench-card card-${name} card-bare"></div>`;
}
