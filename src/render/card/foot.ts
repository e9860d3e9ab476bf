import { type Html, html } from '../html.ts';
import type { CardContent } from './content.ts';
import type { CardSide } from './fit.ts';

const BURNS = 'Hot vinyl burns and its fumes harm: goggles, gloves, hood.';
// What the paper has room for in one line beside the limit.
const BURNS_SHORT = 'Hot vinyl burns: goggles, gloves, hood.';

/** What stands at the foot of a side: of the limit and the cautions, whatever the side lacks, for it may be read alone. */
export function cardFoot({ blocks }: CardSide, { limit, book }: CardContent): Html {
  const has = (wanted: string): boolean => blocks.some(({ kind }) => kind === wanted);
  const never = has('heat') || limit === undefined ? '' : limit;
  if (!has('cautions')) return html`<b>${never === '' ? BURNS : `${never} ${BURNS_SHORT}`}</b>`;
  return never === '' ? html`<span>${book}</span>` : html`<b>${never}</b>`;
}
