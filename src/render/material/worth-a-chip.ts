import { worthAChip } from '../../book/chips/worth-a-chip.ts';
import { chipToPourText, worthText } from '../../words/worth-looking.ts';
import { titleOnShelf } from '../book-index.ts';
import { type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';
import { sentence } from '../words.ts';

const SHOWN = 3;

/** The chips that the maker would learn most from; nothing for readers, and where there is little to learn. */
export function worthAChipSection(context: PageContext): Html {
  const { book } = context;
  if (book.edition !== 'mine') return html``;
  const worth = worthAChip(book, SHOWN);
  if (worth.length === 0) return html``;
  const title = (material: string): string => titleOnShelf(book, material);
  return html`<section class="part" aria-labelledby="worth"><h2 id="worth">Worth a chip</h2>
<p>Pour one of these, look at it on a white and on a black card, and the book knows your bottles better. <code>npx cupbook chips --write</code> starts their files.</p>
<ol class="worth">${worth.map((chip) => {
    const [first] = chip.doses;
    return html`<li><a href="${link(context, paths.material(first!.material))}">${sentence(chipToPourText(chip, title, book.settings))}</a>: ${worthText(chip, title)}.</li>`;
  })}</ol></section>`;
}
