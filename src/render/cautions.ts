import { SHORT_CAUTIONS } from '../words/cautions.ts';
import { type Html, html } from './html.ts';
import { link, paths } from './links.ts';
import type { PageContext } from './page.ts';

/** The cautions in short, with links to all of them and to first aid. */
export function cautionsBlock(context: PageContext): Html {
  return html`<aside class="cautions" aria-label="Cautions"><p class="cautions-head">Before you heat anything</p><ul>${SHORT_CAUTIONS.map(
    (caution) => html`<li>${caution}</li>`,
  )}</ul><p class="cautions-more"><a href="${link(context, paths.care)}">All the cautions, and why</a> <a href="${link(context, paths.firstAid('burn'))}">First aid</a></p></aside>`;
}
