import type { DoubtedLook } from '../book/model/doubted-look.ts';
import { doubtedLookText } from '../words/doubted-look.ts';
import { bookIndex } from './book-index.ts';
import { type Html, html } from './html.ts';
import { inCode } from './in-code.ts';
import type { PageContext } from './page.ts';

/** What the maker is told of a look that counts for little; nothing of any other, and nothing to readers. */
export function doubtedLookView({ book }: PageContext, { of, id, at }: Pick<DoubtedLook, 'of' | 'id' | 'at'>): Html {
  const doubted = bookIndex(book)
    .doubted.get(`${of} ${id}`)
    ?.find((look) => isAt(look.at, at));
  return doubted ? html`<p class="doubted">${inCode(doubtedLookText(doubted))}</p>` : html``;
}

function isAt(one: DoubtedLook['at'], other: DoubtedLook['at']): boolean {
  if ('bait' in one || 'bait' in other) return 'bait' in one && 'bait' in other && one.bait === other.bait;
  return one.cup === other.cup && one.round === other.round;
}
