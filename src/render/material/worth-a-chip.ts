import { worthText } from '../../words/worth-looking.ts';
import { askedChips } from '../asked-chips.ts';
import { titleOnShelf } from '../book-index.ts';
import { type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';
import { sentence } from '../words.ts';

/** The chips that the maker would learn most from; nothing for readers, and where there is little to learn. */
export function worthAChipSection(context: PageContext): Html {
  const { book } = context;
  const asked = askedChips(book);
  if (asked.length === 0) return html``;
  const title = (material: string): string => titleOnShelf(book, material);
  return html`<section class="part" aria-labelledby="worth"><h2 id="worth">Worth a chip</h2>
<p>Pour one of these and photograph it on the measuring card, one a photo, or look at it on a white and on a black card: the book then knows your bottles better. <code>npx cupbook chips --write</code> starts their files.</p>
<ol class="worth">${asked.map(({ chip, says }, at) => {
    const [first] = chip.doses;
    return html`<li><a href="${link(context, paths.material(first!.material))}">${sentence(says)}</a>: ${worthText(chip, title)}. <a href="${link(context, paths.photograph)}?of=chip-${at + 1}">Photograph it<span class="unseen-words">: ${says}</span></a></li>`;
  })}</ol></section>`;
}
