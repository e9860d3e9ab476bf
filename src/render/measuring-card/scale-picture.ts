import type { Box } from '../../measuring-card/measuring-card.ts';
import { type Html, html } from '../html.ts';

/** How thick a tick of the scale is, mm. */
const TICK = 0.15;

/** The scale of a card: a tick a millimetre, their middles where the millimetres are; longer ones at 5 and 10, with figures. */
export function scalePicture({ x, y, width, height }: Box): Html {
  const ticks = Array.from({ length: width + 1 }, (_, mm) => {
    const long = mm % 10 === 0 ? 1 : mm % 5 === 0 ? 0.75 : 0.5;
    return `M${x + mm} ${y}v${height * long}`;
  });
  const figures = Array.from({ length: width / 10 + 1 }, (_, tens) => tens * 10);
  return html`<path d="${ticks.join('')}" stroke="#000" stroke-width="${TICK}"/><g font-size="2.6" text-anchor="middle">${figures.map((mm) => html`<text x="${x + mm}" y="${y + height + 2.6}">${mm}</text>`)}</g>`;
}
