import type { Recipe } from '../../book/model/recipe.ts';
import type { Material } from '../../book/model/shelf.ts';
import { required } from '../../values/required.ts';
import { knownSentence, knownText, PLAIN_PLASTIC_SENTENCE } from '../../words/how-known.ts';
import { bookIndex } from '../book-index.ts';
import { type Html, html, joined } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';
import { deltaEText, sentence } from '../words.ts';
import { fold } from './fold.ts';
import { spreadPicture } from './spread-picture.ts';

/** What the predicted colour rests on, and how far a poured bait may be from it: in words, and as colours. */
export function howSure(context: PageContext, { known, spread, body, cups }: Recipe): Html {
  const { expected, bound } = spread;
  const isPlain = known.how !== 'seen' && cups.every(({ contents }) => contents.length === 0);
  return fold(
    'sure',
    'How certain',
    `${sentence(knownText(known))}: nine in ten within ΔE ${deltaEText(bound)}`,
    html`${spreadPicture(spread, body.overWhite.hex)}
<p>Expect a batch to come out ΔE ${deltaEText(expected)} from the colour shown; nine in ten come within ${deltaEText(bound)}. ${whereFrom(spread)}</p>
<p>${isPlain ? PLAIN_PLASTIC_SENTENCE : knownSentence(known)}</p>${leastKnown(context, cups)}
<p><a href="${link(context, paths.method)}#sure">How this is worked out</a></p>`,
  );
}

/** As many times the other is what makes up most of a spread. Convention of this book. */
const MOST_OF_IT = 2;

/** Whether the materials or the measuring make a colour uncertain. */
function whereFrom({ fromMaterials, fromMeasuring }: Recipe['spread']): string {
  const materials = `how well the colour is known (${deltaEText(fromMaterials)})`;
  const measuring = `measuring (${deltaEText(fromMeasuring)})`;
  if (fromMaterials >= MOST_OF_IT * fromMeasuring)
    return `Most of that comes from ${materials}, little from ${measuring}.`;
  if (fromMeasuring >= MOST_OF_IT * fromMaterials)
    return `Most of that comes from ${measuring}, little from ${materials}.`;
  return `Part of that comes from ${materials}, part from ${measuring}.`;
}

/** Which materials of some cups are known by one colour alone: flake by that of its face, the others by theirs and their kind. */
function leastKnown(context: PageContext, cups: Recipe['cups']): Html {
  const { materials } = bookIndex(context.book);
  const used = [...new Set(cups.flatMap(({ contents }) => contents.map(({ material }) => material)))];
  const estimated = used.flatMap((id) => {
    const material = required(materials, id);
    const colours = material.constants !== undefined || material.flake !== undefined;
    return colours && material.known.how === 'estimated' ? [material] : [];
  });
  const list = (words: string, some: readonly Material[]): Html =>
    some.length === 0
      ? html``
      : html`<li>${words}: ${joined(some.map(({ id, title }) => html`<a href="${link(context, paths.material(id))}">${title}</a>`))}.</li>`;
  const flakes = estimated.filter(({ flake }) => flake !== undefined);
  const others = estimated.filter(({ flake }) => flake === undefined);
  return estimated.length === 0
    ? html``
    : html`<ul class="least-known">${list('Known by one colour and their kind', others)}${list('Known by face colour, like all flake', flakes)}</ul>`;
}
