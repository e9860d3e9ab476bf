import { seenWhole } from '../../book/match/asked-cup.ts';
import type { Target } from '../../book/model/target.ts';
import { lengthText } from '../../units/length-text.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import { ANSWER_IN_TARGET, unlikeSidesText } from '../../words/unlike-sides.ts';
import { bookIndex } from '../book-index.ts';
import { cautionsBlock } from '../cautions.ts';
import { type ColourEntry, colourEntry } from '../colour-entry.ts';
import { deltaEGloss } from '../delta-e-gloss.ts';
import { document } from '../document.ts';
import { targetNote } from '../edition-mark.ts';
import { type Html, html } from '../html.ts';
import { inCode } from '../in-code.ts';
import { link, paths } from '../links.ts';
import { notesHtml, notesText } from '../notes.ts';
import type { PageContext, PageKind } from '../page.ts';
import { photoFigures } from '../photo.ts';
import { targetPicture } from '../shared-head.ts';
import { shortDescription } from '../short-description.ts';
import { chipColours, chips, chipWords, dot } from '../swatch/chip.ts';
import { matchedCup } from '../target/matched-cup.ts';
import { tile } from '../tile.ts';
import { deltaEText, inches, sentence } from '../words.ts';

/** A target's page: what was seen of it, and the colours made for it. */
export const targetPage: PageKind = {
  kind: 'target',
  items: (book) => book.targets.map(({ id }) => id),
  url: paths.target,
  render: (context, id) => {
    const target = required(bookIndex(context.book).targets, id);
    const { title, notes, photo, tolerance } = target;
    return document(context, {
      title: `Target: ${title}`,
      description: shortDescription(notesText(notes)) || `${title}: a colour to match, over white and over black.`,
      part: paths.home,
      picture: targetPicture(context, id),
      main: html`<article class="target">
<header class="label"><h1>${title}</h1><p class="label-line">Target, matched within ΔE ${deltaEText(tolerance)}${target.parts.length < 2 ? '' : seenWhole(target) ? '; two sides of a finished bait, each seen with the other behind it' : '; each part seen on its own'}</p>${deltaEGloss(context)}${targetNote(target)}</header>
${sidesQuestion(target)}
<div class="target-parts">${target.parts.map((part) => partFigure(context, part))}</div>
<div class="columns"><div class="column-main">
${notes.trim() === '' ? '' : html`<div class="notes">${notesHtml(context, notes)}</div>`}
${photo === undefined ? '' : photoFigures(context, [photo], `Photo of ${title}`)}
${recipes(context, target)}
</div>${flakeAside(target)}</div>
${advises(context, target) ? cautionsBlock(context) : ''}
</article>`,
    });
  },
};

/** What its maker is asked of two sides that no bait has. */
function sidesQuestion({ unlikeSides }: Target): Html {
  if (unlikeSides === undefined) return html``;
  return html`<aside class="question" aria-label="A question"><p>${unlikeSidesText(unlikeSides)} ${inCode(ANSWER_IN_TARGET)}</p></aside>`;
}

/** The flake that is to be seen in it, part by part. */
function flakeAside({ parts }: Target): Html {
  const several = parts.length > 1;
  const items = parts.flatMap(({ name, flakes }) =>
    flakes.map(
      ({ hex, sizeMm, coverage }) =>
        html`<li>${dot(hex)}${several ? `${sentence(name)}: ` : ''}${inches(sizeMm)}${coverage === undefined ? '' : html`<span class="fine">, on ${Math.round(coverage * 100)} % of its face</span>`}</li>`,
    ),
  );
  if (items.length === 0) return html``;
  return html`<aside class="column-side" aria-label="Particulars"><section aria-labelledby="flake"><h2 id="flake">Its flake</h2><ul class="uses">${items}</ul></section></aside>`;
}

/** Whether the page tells somebody to heat a cup again. */
function advises({ book }: PageContext, { recipes }: Target): boolean {
  return book.recipes.some(
    ({ id, match }) => recipes.includes(id) && match?.cups.some(({ next }) => next !== undefined),
  );
}

function partFigure(
  { book }: PageContext,
  { name, overWhite, overBlack, thicknessMm, plastic }: Target['parts'][number],
): Html {
  const { title } = (plastic !== undefined && bookIndex(book).materials.get(plastic)) || { title: undefined };
  const colours = { overWhite: overWhite.hex, ...defined({ overBlack: overBlack?.hex }) };
  const seen = overBlack === undefined ? 'over white only' : 'over white above, over black below';
  return html`<figure class="target-part"><div class="target-chip">${chips([colours], `${name}, ${seen}`)}</div><figcaption>${sentence(name)}, ${lengthText(thicknessMm, book.settings)}, ${seen}${title === undefined ? '' : html`. To be made of ${title}`}</figcaption></figure>`;
}

function recipes(context: PageContext, target: Target): Html {
  if (target.recipes.length === 0) return html`<p>No colour has been made to match it yet.</p>`;
  const { book } = context;
  const entries = target.recipes.flatMap((id) => colourEntry(book, id) ?? []);
  return html`<section class="part" aria-labelledby="made-for"><h2 id="made-for">Made to match it</h2>${entries.map((entry) => madeFor(context, target, entry))}<ul class="wall">${entries.map((entry) => tile(context, entry))}</ul></section>`;
}

/** A colour beside the target: its rounds where it has any that can be compared, else as it is. */
function madeFor(context: PageContext, target: Target, entry: ColourEntry): Html {
  const { id, title, recipe } = entry;
  if (!recipe?.match) {
    return html`<ol class="rounds">${target.parts.map((part) => besideTarget(context, target, part, entry))}</ol>`;
  }
  return html`<h3><a href="${link(context, paths.recipe(id))}">${title}</a></h3>${recipe.match.cups.map((cup) => matchedCup(context, target, title, cup))}`;
}

/** A part of the target and what the recipe shows of it: the cup of the same name, or the whole bait. */
function besideTarget(context: PageContext, target: Target, part: Target['parts'][number], entry: ColourEntry): Html {
  const { id, title, body, recipe } = entry;
  const cup = recipe?.cups.find(({ name }) => name === part.name);
  const look = cup?.body ?? body;
  const seen = {
    overWhite: part.overWhite.hex,
    ...defined({ overBlack: part.overBlack?.hex }),
  };
  const name = target.parts.length > 1 ? `, ${part.name}` : '';
  return html`<li class="round"><div class="round-chips"><div class="pair">${chips([seen, chipColours(look)], `${target.title}${name}`, ['target', title])}</div>${chipWords('target', 'recipe')}</div><div class="round-words"><h3><a href="${link(context, paths.recipe(id))}">${title}</a>${name}</h3></div></li>`;
}
