import type { Recipe } from '../../book/model/recipe.ts';
import type { Material } from '../../book/model/shelf.ts';
import { required } from '../../values/required.ts';
import { assumptionText } from '../../words/assumption.ts';
import { knownSentence, knownText, PLAIN_PLASTIC_SENTENCE } from '../../words/how-known.ts';
import { spreadAdviceText } from '../../words/repeatability.ts';
import type { BatchNames } from '../batch-view.ts';
import { bookIndex } from '../book-index.ts';
import { deltaEGloss } from '../delta-e-gloss.ts';
import { type Html, html, joined } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';
import { deltaEText, differenceText, differenceWords, sentence } from '../words.ts';
import { fold, inFold } from './fold.ts';
import { lastSeen } from './last-seen.ts';
import { pairApart } from './pair-apart.ts';
import { roundingApart } from './rounding-apart.ts';

/** How far off a bait may be from what the page shows, each way by itself: from the screen, from batch to batch, by the rounding of its amounts; and what that rests on. */
export function howFarOff(context: PageContext, recipe: Recipe, names: Pick<BatchNames, 'cup'>): Html {
  const { known, spread, body, cups, batch } = recipe;
  const isPlain = cups.every(({ contents }) => contents.length === 0);
  const { settings } = context.book;
  const screen = pairApart(
    'Screen to bait',
    body.overWhite.hex,
    spread.bound,
    `Nine baits in ten come out nearer to the colour shown here than these two are to each other; on average they are ${differenceText(spread.expected)}.`,
  );
  return fold(
    'sure',
    'How far off',
    `${sentence(knownText(known))}. Screen to bait: ${differenceWords(spread.bound)}`,
    html`<div class="apart-rows"><ol class="aparts">${screen}${isPlain ? '' : batchToBatch(recipe)}</ol>
<ol class="aparts" data-planned-rounding>${roundingApart(batch.cups, names)}</ol></div>
${isPlain ? html`<p>It is plastic and nothing else, so every batch is as clear as the plastic.</p>` : ''}${lastSeen(recipe, settings.tolerance)}
${deltaEGloss(context)}
${inFold(
  'again',
  'What that rests on',
  html`<p>${isPlain && known.how !== 'seen' ? PLAIN_PLASTIC_SENTENCE : knownSentence(known)} ${whereFrom(spread)}</p>
${(recipe.repeatability.advice ?? []).map((each) => html`<p>${spreadAdviceText(each, settings)}</p>`)}${leastKnown(context, cups)}${assumptions(cups)}
<p><a href="${link(context, paths.method)}#sure">How this is worked out</a></p>`,
)}`,
  );
}

/** How far a batch made again may be from the one before, by the tool that most go by. */
function batchToBatch({ repeatability: { bySpoonAndDrop, byScale }, body }: Recipe): Html {
  const said = bySpoonAndDrop ?? byScale;
  if (said === undefined) return html``;
  const by = bySpoonAndDrop === undefined ? 'weight' : 'drops and spoons';
  const weighed =
    bySpoonAndDrop === undefined || byScale === undefined ? '' : ` By weight: ${differenceText(byScale)}.`;
  return pairApart(
    'Batch to batch',
    body.overWhite.hex,
    said,
    `Measured again by ${by}, 19 batches in 20 stay nearer to the recipe than that.${weighed}`,
  );
}

/** As many times the other is what makes up most of a spread. Convention of this book. */
const MOST_OF_IT = 2;

/** Whether the materials or the measuring make a colour uncertain. */
function whereFrom({ fromMaterials, fromMeasuring }: Recipe['spread']): string {
  const materials = `how well the colour is known (ΔE ${deltaEText(fromMaterials)})`;
  const measuring = `measuring (ΔE ${deltaEText(fromMeasuring)})`;
  if (fromMaterials >= MOST_OF_IT * fromMeasuring)
    return `Most of what lies between screen and bait comes from ${materials}, little from ${measuring}.`;
  if (fromMeasuring >= MOST_OF_IT * fromMaterials)
    return `Most of what lies between screen and bait comes from ${measuring}, little from ${materials}.`;
  return `What lies between screen and bait comes partly from ${materials}, partly from ${measuring}.`;
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

function assumptions(cups: Recipe['cups']): Html {
  const assumed = new Set(
    cups.flatMap((cup) => cup.assumptions.map((each) => `${each.title}: ${assumptionText(each.assumed)}`)),
  );
  if (assumed.size === 0) return html``;
  return html`<p>The numbers assume:</p><ul class="fine">${[...assumed].map((each) => html`<li>${sentence(each)}</li>`)}</ul>`;
}
