import { FRAME_MM } from '../../measuring-card/card.ts';
import { GREY_VALUES, type MeasuringCard, SCALE_MM } from '../../measuring-card/measuring-card.ts';
import { qrCode } from '../card/qr.ts';
import { type Html, html } from '../html.ts';
import { markPicture } from './mark-picture.ts';
import { scalePicture } from './scale-picture.ts';

/**
 * A measuring card as it is printed: what stands in an SVG whose unit is a millimetre, with the card's left top corner
 * at 0 0. `address`: of the page that measures photos, for a code on the card; without it there is none.
 */
export function cardPicture(card: MeasuringCard, address?: string): Html {
  const { marks, greys, scale } = card;
  return html`${marks.map(markPicture)}${windowPicture(card)}${greys.map(
    ({ x, y, width, height, step }) =>
      html`<path fill="${greyHex(GREY_VALUES[step]!)}" d="M${x} ${y}h${width}v${height}h-${width}z"/>`,
  )}${scalePicture(scale)}${wordsPicture(card)}${address === undefined ? '' : addressPicture(card, address)}`;
}

function greyHex(value: number): string {
  return `#${value.toString(16).padStart(2, '0').repeat(3)}`;
}

/** Black to the right of the seam; to the left paper, with a line around it that lies outside the window. */
function windowPicture({ window: { x, y, width, height }, seamX }: MeasuringCard): Html {
  const middle = FRAME_MM / 2;
  const frame = `M${seamX} ${y - middle}H${x - middle}V${y + height + middle}H${seamX}`;
  return html`<path d="M${seamX} ${y}H${x + width}v${height}H${seamX}z"/><path d="${frame}" fill="none" stroke="#000" stroke-width="${FRAME_MM}"/>`;
}

/** How wide the longest line is, in sizes of its type: generous, since a phone or a printer may take another typeface. */
const LONGEST_LINE = 33;

/** The words are as large as their box allows: three lines above, and one below the figures of the scale. */
function wordsPicture({ kind, version, words: [above, below] }: MeasuringCard): Html {
  const size = Math.min(above.height / 3.4, above.width / LONGEST_LINE);
  const middle = above.x + above.width / 2;
  const lines = [
    `Measuring card, ${kind}, version ${version}`,
    'Lay the bait along the window, half on white and half on black.',
    'Out of the sun, from straight above, with the whole card in the photo.',
  ];
  return html`<g text-anchor="middle">${lines.map(
    (line, at) =>
      html`<text x="${middle}" y="${above.y + size * (0.85 + 1.2 * at)}" font-size="${at === 0 ? size : size * 0.9}"${at === 0 ? html` font-weight="700"` : ''}>${line}</text>`,
  )}<text x="${below.x + below.width / 2}" y="${below.y + below.height - 0.8}" font-size="2.4">Print at 100 %, then check these ${SCALE_MM} mm with a ruler.</text></g>`;
}

/** Longest address whose code has dots large enough for a phone at a card's size: 33 modules at error correction M (ISO/IEC 18004). */
const LONGEST_ADDRESS = 62;

/** White that belongs to the code, as a share of the code's own size. */
const QUIET = 4 / 29;

function addressPicture({ address: { x, y, width, height } }: MeasuringCard, text: string): Html {
  if (text.length > LONGEST_ADDRESS) return html``;
  const quiet = width * QUIET;
  return html`<svg x="${x - quiet}" y="${y - quiet}" width="${width + 2 * quiet}" height="${height + 2 * quiet}">${qrCode(text, 'QR code of the page that measures photos')}</svg>`;
}
