import { type Html, html } from './html.ts';
import { link, paths } from './links.ts';
import type { PageContext } from './page.ts';

/** Where the page *Method* says what ΔE is. */
export const DELTA_E_ANCHOR = 'delta-e';

/** What ΔE is, at the first one of a page. The two steps are those of the page *Method*: common practice, no source. */
export function deltaEGloss(context: PageContext): Html {
  return html`<p class="fine">ΔE is how far apart two colours are: 1 can hardly be seen, 10 is another colour. <a href="${link(context, paths.method)}#${DELTA_E_ANCHOR}">More about ΔE</a></p>`;
}
