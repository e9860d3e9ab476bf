import { type Html, html } from '../html.ts';

/** A part of the page: its heading and what stands under it. */
export interface MethodPart {
  readonly id: string;
  readonly title: string;
  readonly content: Html;
}

/** A row of colours with their names under them, joined edge to edge. */
export function namedChips(drawing: Html, names: readonly string[], caption: string): Html {
  return html`<figure class="method-figure"><div class="method-chips">${drawing}</div><ol class="method-names count-${names.length}">${names.map((name) => html`<li>${name}</li>`)}</ol><figcaption>${caption}</figcaption></figure>`;
}
