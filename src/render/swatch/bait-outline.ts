import type { Mold } from '../../book/model/shelf.ts';
import { baitShape } from '../../shapes/bait-shapes.ts';
import { outline, round } from '../../shapes/ribbon.ts';
import { type Html, html } from '../html.ts';

/** The outline of a mold's bait, in grey. */
export function baitOutline(mold: Mold): Html {
  const { lengthMm, ...shape } = baitShape(mold);
  const height = round(2 * shape.reachMm + 2);
  return html`<svg class="bait-outline" aria-hidden="true" width="${round(lengthMm + 2)}mm" height="${height}mm" viewBox="-1 ${round(-height / 2)} ${round(lengthMm + 2)} ${height}">${shape.thin.map((part) => html`<path class="thin" d="${outline(part)}"/>`)}<path class="body" d="${outline(shape.body)}"/><g class="bait-lines">${shape.lines.map((d) => html`<path d="${d}"/>`)}</g></svg>`;
}
