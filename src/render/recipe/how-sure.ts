import type { Material, Recipe } from '../../book/model.ts';
import { required } from '../../values/required.ts';
import { bookIndex } from '../book-index.ts';
import { type Html, html, joined } from '../html.ts';
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
<p>${sentence(cups.every(({ contents }) => contents.length === 0) ? PLAIN_PLASTIC_WORDS : TIER_WORDS[tier])}.</p>${leastKnown(context, cups)}
<p><a href="${link(context, paths.method)}#sure">How sure a colour is</a></p>`,
  );
}

/** Which materials of some cups are known by one colour alone: flake by that of its face, the others by theirs and their kind. */
function leastKnown(context: PageContext, cups: Recipe['cups']): Html {
  const { materials } = bookIndex(context.book);
  const used = [...new Set(cups.flatMap(({ contents }) => contents.map(({ material }) => material)))];
  const estimated = used.flatMap((id) => {
    const material = required(materials, id);
    const colours = material.constants !== undefined || material.flake !== undefined;
    return colours && material.tier === 'estimated' ? [material] : [];
  });
  const list = (words: string, some: readonly Material[]): Html =>
    some.length === 0
      ? html``
      : html`<li>${words}: ${joined(some.map(({ id, title }) => html`<a href="${link(context, paths.material(id))}">${title}</a>`))}.</li>`;
  const flakes = estimated.filter(({ flake }) => flake !== undefined);
  const others = estimated.filter(({ flake }) => flake === undefined);
  return estimated.length === 0
    ? html``
    : html`<ul class="least-known">${list('By one colour and the kind', others)}${list('By the colour of its face, as all flake', flakes)}</ul>`;
}
