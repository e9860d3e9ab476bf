import type { Recipe } from '../../book/model.ts';
import { type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';
import { deltaEText, PLAIN_PLASTIC_WORDS, sentence, TIER_WORDS } from '../words.ts';
import { fold } from './fold.ts';
import { spreadPicture } from './spread-picture.ts';

/** What the predicted colour rests on, and how far a poured bait may be from it: in words, and as colours. */
export function howSure(context: PageContext, { tier, spread, body, cups }: Recipe): Html {
  const { expected, bound, fromMaterials, fromMeasuring } = spread;
  return fold(
    'sure',
    'How sure',
    `${sentence(tier)}: nine in ten within ΔE ${deltaEText(bound)}`,
    html`${spreadPicture(spread, body.overWhite.hex)}
<p>Half of all batches come out within ΔE ${deltaEText(expected)} of the colour shown, nine in ten within ${deltaEText(bound)}. The materials alone would make that ${deltaEText(fromMaterials)}, the measuring alone ${deltaEText(fromMeasuring)}.</p>
<p>${sentence(cups.every(({ contents }) => contents.length === 0) ? PLAIN_PLASTIC_WORDS : TIER_WORDS[tier])}.</p>
<p><a href="${link(context, paths.method)}#sure">How sure a colour is</a></p>`,
  );
}
