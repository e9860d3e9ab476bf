import { type Box, CARDS, type CardKind, type MeasuringCard } from '../../measuring-card/measuring-card.ts';
import { type Html, html } from '../html.ts';
import { cardPicture } from './card-picture.ts';

/** A paper that cards are printed on, upright; the class of its sheet is known to the style sheet. */
export interface CardPaper {
  readonly name: 'a4' | 'letter';
  readonly title: 'A4' | 'Letter';
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A4 is 297 mm high; a sheet that fills it to the last pixel would begin a second page. */
export const CARD_PAPERS = {
  a4: { name: 'a4', title: 'A4', widthMm: 210, heightMm: 296 },
  letter: { name: 'letter', title: 'Letter', widthMm: 215.9, heightMm: 279.4 },
} as const satisfies Record<string, CardPaper>;

/** Where a line is cut there is a short one in the paper's margin, mm. */
const CUT = 3;

/**
 * A sheet of measuring cards, each turned by a quarter, so that the paper stays upright: four small ones with marks to cut along, or a
 * large one. One unit of the drawing is a millimetre.
 */
export function cardSheet(kind: CardKind, paper: CardPaper, address?: string): Html {
  const card = CARDS[kind];
  const picture = cardPicture(card, address);
  const places = placesOn(paper, card);
  return html`<svg class="card-sheet" role="img" aria-label="${sheetLabel(kind, paper)}" viewBox="0 0 ${paper.widthMm} ${paper.heightMm}"><defs><g id="the-card">${picture}</g></defs>${places.map(
    ({ x, y, width }) => html`<use href="#the-card" transform="translate(${x + width} ${y}) rotate(90)"/>`,
  )}${kind === 'small' ? cutMarks(places) : ''}</svg>`;
}

/** How many small cards go on a sheet. */
export const SMALL_ON_SHEET = 4;

/** Where the cards lie on a sheet, turned. */
export function placesOn({ widthMm, heightMm }: CardPaper, { kind, width, height }: MeasuringCard): readonly Box[] {
  const [columns, rows] = kind === 'small' ? [2, SMALL_ON_SHEET / 2] : [1, 1];
  const left = (widthMm - columns * height) / 2;
  const top = (heightMm - rows * width) / 2;
  return Array.from({ length: columns * rows }, (_, at) => ({
    x: left + (at % columns) * height,
    y: top + Math.floor(at / columns) * width,
    width: height,
    height: width,
  }));
}

function sheetLabel(kind: CardKind, { title }: CardPaper): string {
  return kind === 'small' ? `Four small measuring cards on ${title}` : `The large measuring card on ${title}`;
}

/** Short lines outside the cards where they are cut, and one cross in their middle. */
function cutMarks(places: readonly Box[]): Html {
  const [xs, ys] = [
    [...new Set(places.flatMap(({ x, width }) => [x, x + width]))],
    [...new Set(places.flatMap(({ y, height }) => [y, y + height]))],
  ];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
  const lines = [
    ...xs.map((x) => `M${x} ${top}v${-CUT}M${x} ${bottom}v${CUT}`),
    ...ys.map((y) => `M${left} ${y}h${-CUT}M${right} ${y}h${CUT}`),
    `M${(left + right) / 2 - CUT / 2} ${(top + bottom) / 2}h${CUT}m${-CUT / 2} ${-CUT / 2}v${CUT}`,
  ];
  return html`<path d="${lines.join('')}" fill="none" stroke="#000" stroke-width="0.2"/>`;
}
