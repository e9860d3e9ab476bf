import { type Html, html } from '../html.ts';

/**
 * A part of a page that opens at a touch. What matters of it stands on its lid, so that a page with all of them closed still answers.
 *
 * @param gist the part in a few words; empty where there is nothing to say in short
 */
export function fold(id: string, title: string, gist: Html | string, content: Html): Html {
  return html`<section class="fold" aria-labelledby="${id}"><details><summary><h2 id="${id}">${title}</h2>${gist.toString() === '' ? '' : html`<span class="gist">${gist}</span>`}</summary>
<div class="folded">${content}</div></details></section>`;
}

/** A part of what is folded, which can be linked to. */
export function inFold(id: string, title: string, content: Html): Html {
  return html`<section class="in-fold" aria-labelledby="${id}"><h3 id="${id}">${title}</h3>${content}</section>`;
}
