import { qrCode } from '../card/qr.ts';
import { type Html, html } from '../html.ts';
import type { LabelSheet } from './label-sheet.ts';
import { hasRoomForAll, isLarge } from './label-type.ts';
import { BAG_CAUTIONS, type LabelWords } from './label-words.ts';

/** A label for a bag, with a picture of the bait. Date and lot are written by hand, or filled in before it is printed. */
export function bagLabel(words: LabelWords, sheet: LabelSheet, picture: Html): Html {
  const { title, says, ingredients, address } = words;
  const contents = hasRoomForAll(words, sheet) ? html`<b>Ingredients:</b> ${ingredients} ` : '';
  const code = address === undefined ? '' : html`<div class="bag-qr">${qrCode(address, `QR code of ${address}`)}</div>`;
  return html`<article class="bag-label bag-${sheet.name}${isLarge(sheet) ? ' bag-large' : ''}"><div class="bag-top"><div class="bag-words"><h2>${title}</h2><p>${says}</p><div class="bag-bait">${picture}</div></div>${code}</div><p class="bag-more">${contents}${BAG_CAUTIONS}</p><p class="bag-written"><span>Poured <b data-poured></b></span> <span>Lot <b data-lot></b></span></p></article>`;
}
