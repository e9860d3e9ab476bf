import { create } from 'qrcode';
import { type Html, html } from '../html.ts';

/** Quiet zone round the code, in modules: ISO/IEC 18004 asks for four. */
const MARGIN = 4;

/** A QR code of a text as an SVG, error correction M, with its quiet zone; black on white whatever the theme. */
export function qrCode(text: string, label: string): Html {
  const { modules } = create(text, { errorCorrectionLevel: 'M' });
  const { size } = modules;
  let path = '';
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      if (!modules.get(row, column)) continue;
      let length = 1;
      while (column + length < size && modules.get(row, column + length)) length++;
      path += `M${column + MARGIN} ${row + MARGIN}h${length}v1h-${length}z`;
      column += length;
    }
  }
  const side = size + 2 * MARGIN;
  return html`<svg class="qr" role="img" aria-label="${label}" viewBox="0 0 ${side} ${side}" shape-rendering="crispEdges"><rect width="${side}" height="${side}" fill="#fff"/><path d="${path}" fill="#000"/></svg>`;
}
