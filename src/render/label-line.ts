import { type Html, html } from './html.ts';

/** What is said in short below the name of a thing. A list to who hears it; the style sheet sets strokes between its items. */
export function labelLine(items: readonly (Html | string)[]): Html {
  return html`<ul class="label-line">${items.map((item) => html`<li>${item}</li>`)}</ul>`;
}
