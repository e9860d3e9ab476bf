import type { CardPrint } from '../../book/model/card-print.ts';
import type { Book } from '../../book/model.ts';
import { SCALE_MM } from '../../measuring-card/measuring-card.ts';
import { formatDecimal } from '../../units/format-quantity.ts';
import { type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';

/** What the maker's book knows of the card they printed, and how it is told; readers have prints of their own. */
export function ownPrint(context: PageContext): Html {
  const { book } = context;
  if (book.edition !== 'mine') return html``;
  return html`<h2 id="your-card">Your card</h2>
<p>${knownOf(book)}</p>
<p>You write it in <code>book.md</code>, and every photo from then on is corrected by it:</p>
<pre class="scroll" role="group" aria-label="Example" tabindex="0"><code>${EXAMPLE}</code></pre>
<p><a href="${link(context, paths.manual('photo'))}">Measuring with a photo</a>, in the manual, has the rest.</p>`;
}

const EXAMPLE = `measuring-card:
  # how long the printed 80 mm are
  scale: 79.6 mm
  # the rest once it is certified
  paper: "#f0efe9"
  black: "#343434"
  # the upper row, from left to right
  greys: ["#c2c2c0", "#8f8f8e",
    "#686868", "#4a4a49", "#393938"]
`;

function knownOf({ measuringCard }: Pick<Book, 'measuringCard'>): string {
  if (measuringCard === undefined)
    return `The book knows nothing of your card yet. It takes the ${SCALE_MM} mm at their word, takes your paper for a usual one, and believes the greys half.`;
  return `${lengthOf(measuringCard)} ${
    measuringCard.greys === undefined
      ? 'It isn’t certified: the book believes the greys half.'
      : 'It is certified: the book knows its paper and its greys.'
  }`;
}

function lengthOf({ scaleMm }: CardPrint): string {
  return scaleMm === SCALE_MM
    ? `The ${SCALE_MM} mm scale on your card is ${SCALE_MM} mm long.`
    : `The ${SCALE_MM} mm scale on your card is ${formatDecimal(Math.round(scaleMm * 100) / 100)} mm long, and the book allows for that.`;
}
