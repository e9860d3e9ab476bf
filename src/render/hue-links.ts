import { type Html, html, joined } from './html.ts';
import { hueAnchor, link, paths } from './links.ts';
import type { PageContext } from './page.ts';
import { sentence } from './words.ts';

/** What a family of hue is called at the head of a colour's page. */
const HUE_WORDS: Readonly<Record<string, string>> = { clear: 'Clear, no colour in it' };

/** Links to the walls of a colour's families of hue. */
export function hueLinks(context: PageContext, hueFamilies: readonly string[]): Html {
  return joined(
    hueFamilies.map(
      (hue) => html`<a href="${link(context, paths.home)}#${hueAnchor(hue)}">${HUE_WORDS[hue] ?? sentence(hue)}</a>`,
    ),
  );
}
