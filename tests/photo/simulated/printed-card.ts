import { CARDS } from '../../../src/measuring-card/measuring-card.ts';
import { cardPicture } from '../../../src/render/measuring-card/card-picture.ts';
import { type CardPicture, drawnCard } from './card-picture.ts';

let drawn: Promise<CardPicture> | undefined;

/** The small card as the book prints it: its picture, and of its table only how long the window is. */
export function printedCard(): Promise<CardPicture> {
  const { width, height, window } = CARDS.small;
  drawn ??= drawnCard(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">${cardPicture(CARDS.small)}</svg>`,
    window.width,
  );
  return drawn;
}
