import { create } from 'qrcode';
import { type Html, html } from '../html.ts';

/** Quiet zone round the code, in modules: ISO/IEC 18004 asks for four. */
const MARGIN = 4;

/** A QR code of a text as an SVG, error correction M, with its quiet zone; black on white whatever the theme. */
export function qrCode(text: string, label: string): Html {
  const { modules } = create(text, { errorCorrectionLevel: 'M' });
  const { size } = modules;
  // A run of dark modules is a stroke along their middle, one module wide; each begins from where the last one began.
  let path = '';
  let [lastRow, lastColumn] = [-0.5, 0];
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      if (!modules.get(row, column)) continue;
      let length = 1;
      while (column + length < size && modules.get(row, column + length)) length++;
      const [right, down] = [column - lastColumn, row - lastRow];
      path += `m${right}${down < 0 ? '' : ' '}${down}h${length}`;
      [lastRow, lastColumn] = [row, column + length];
      column += length;
    }
  }
  const side = size + 2 * MARGIN;
  return html`<svg class="qr" role="img" aria-label="${label}" viewBox="${-MARGIN} ${-MARGIN} ${side} ${side}" shape-rendering="crispEdges"><path d="M${-MARGIN} ${-MARGIN}h${side}v${side}h-${side}z" fill="#fff"/><path d="${path}" stroke="#000"/></svg>`;
}
