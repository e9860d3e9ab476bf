import { type Html, html, joined } from './html.ts';
import { hueAnchor, link, paths } from './links.ts';
import type { PageContext } from './page.ts';
import { sentence } from './words.ts';

/** What a family of hue is called at the head of a colour's page. */
const HUE_WORDS: Readonly<Record<string, string>> = { clear: 'Clear, no colour in it' };

/** Links to the colours of each family of hue: the first is where the colour hangs on the wall, others are searched for. */
export function hueLinks(context: PageContext, hueFamilies: readonly string[]): Html {
  return joined(
    hueFamilies.map((hue, at) => {
      const wall = html`${link(context, paths.home)}#${hueAnchor(hue)}`;
      const search = html`${link(context, paths.find)}?hue=${encodeURIComponent(hue)}`;
      return html`<a href="${at === 0 ? wall : search}">${HUE_WORDS[hue] ?? sentence(hue)}</a>`;
    }),
  );
}
