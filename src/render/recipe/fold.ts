import { type Html, html } from '../html.ts';

/**
 * A part of the side column that opens at a touch. What matters of it stands on its lid, so that a page with all of them
 * closed still answers.
 *
 * @param gist the part in a few words; empty where there is nothing to say in short
 */
export function fold(id: string, title: string, gist: string, content: Html): Html {
  return html`<section class="fold" aria-labelledby="${id}"><details><summary><h2 id="${id}">${title}</h2>${gist === '' ? '' : html`<span class="gist">${gist}</span>`}</summary>
${content}</details></section>`;
}
