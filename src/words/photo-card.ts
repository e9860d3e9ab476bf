import type { CardPrint } from '../book/model/card-print.ts';
import { SCALE_MM } from '../measuring-card/measuring-card.ts';
import { formatDecimal } from '../units/format-quantity.ts';

const AS_USUAL = `its ${SCALE_MM} mm are taken at their word, its paper for a usual one, and its greys are half believed`;

/** What is known of a card by a book, and what the colours of a photo rest on; a sentence. */
export function photoCardText(print: CardPrint | undefined, file: string): string {
  if (print === undefined) return `${file} says nothing of your card (measuring-card), so ${AS_USUAL}.`;
  const length = `${SCALE_MM} mm are ${formatDecimal(print.scaleMm, 4)} mm`;
  return print.greys === undefined
    ? `By ${file} the printed ${length}. Your card isn’t certified: its greys are half believed.`
    : `Your card is certified by ${file}: its paper and its greys are known, and its printed ${length}.`;
}

/** The same without a book. */
export function photoNoBookText(folder: string): string {
  return `There is no book.md in ${folder} to say what your card is, so ${AS_USUAL}.`;
}
