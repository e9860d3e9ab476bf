import { type Html, html } from './html.ts';
import { link, paths } from './links.ts';
import type { PageContext } from './page.ts';

/** Where the page *Method* says what ΔE is. */
export const DELTA_E_ANCHOR = 'delta-e';

/** What ΔE is, at the first one of a page. The two steps are those of the page *Method*: common practice, no source. */
export function deltaEGloss(context: PageContext): Html {
  return html`<p class="fine">ΔE says how different two colours look: 1 is barely visible, 10 is clearly another colour. <a href="${link(context, paths.method)}#${DELTA_E_ANCHOR}">More about ΔE</a></p>`;
}
