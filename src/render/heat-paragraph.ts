import { type Html, html, joined } from './html.ts';
import { unitsKept } from './unbroken.ts';

/** What the suppliers say of the heat, the first of it in strong letters: the limit, where one is known. */
export function heatParagraph(words: readonly string[]): Html {
  return html`<p class="heat">${joined(
    words.map(unitsKept).map((line, index) => (index === 0 ? html`<strong>${line}</strong>` : line)),
    ' ',
  )}</p>`;
}
