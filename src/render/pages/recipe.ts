import type { Edition } from '../../book/model/publish.ts';
import type { Recipe } from '../../book/model/recipe.ts';
import type { Mold } from '../../book/model/shelf.ts';
import { heatOf } from '../../book/recipes/heat-of.ts';
import { usualVolume } from '../../units/usual-volume.ts';
import { required } from '../../values/required.ts';
import { heatWords } from '../../words/heat.ts';
import { pictureAddress } from '../bait-picture.ts';
import { batchCups, batchTakes, takesTitle } from '../batch-view.ts';
import { bookIndex, titleOnShelf } from '../book-index.ts';
import { cautionsBlock } from '../cautions.ts';
import { deltaEGloss } from '../delta-e-gloss.ts';
import { document } from '../document.ts';
import { publishNote } from '../edition-mark.ts';
import { heatParagraph } from '../heat-paragraph.ts';
import { embeddedJson, type Html, html } from '../html.ts';
import { hueLinks } from '../hue-links.ts';
import { labelLine } from '../label-line.ts';
import { link, paths } from '../links.ts';
import { notesHtml, notesText } from '../notes.ts';
import { orderView } from '../order-view.ts';
import type { PageContext, PageKind } from '../page.ts';
import { photoFigures } from '../photo.ts';
import { type PlannerData, plannedNames, plannerData } from '../planner-data.ts';
import { doses } from '../recipe/doses.ts';
import { finishedBait } from '../recipe/finished-bait.ts';
import { howItLooks } from '../recipe/how-it-looks.ts';
import { howSure } from '../recipe/how-sure.ts';
import { inWater } from '../recipe/in-water.ts';
import { lastSeen } from '../recipe/last-seen.ts';
import { madeAgain } from '../recipe/made-again.ts';
import { otherLights } from '../recipe/other-lights.ts';
import { plate } from '../recipe/plate.ts';
import { hasLineage, relativesSection } from '../recipe/relatives.ts';
import { roundsSection } from '../recipe/rounds.ts';
import { shortDescription } from '../short-description.ts';
import { besideTarget } from '../target/beside-target.ts';
import { counted, dayText } from '../words.ts';
import { workOf } from '../work-of.ts';
import { lookPage } from './look.ts';

/** A colour's page: the whole recipe, or its look where no more is published. */
export const recipePage: PageKind = {
  kind: 'recipe',
  items: (book) => [...book.recipes, ...book.looks].map(({ id }) => id),
  url: paths.recipe,
  render: (context, id) => {
    const { recipes, looks } = bookIndex(context.book);
    const recipe = recipes.get(id);
    return recipe === undefined ? lookPage(context, required(looks, id)) : fullPage(context, recipe);
  },
};

function fullPage(context: PageContext, recipe: Recipe): string {
  const mold = required(bookIndex(context.book).molds, recipe.mold);
  const { title, notes } = recipe;
  const plan = recipePlan(context, recipe);
  const far = lastSeen(recipe, context.book.settings.tolerance);
  return document(context, {
    title,
    description:
      shortDescription(notesText(notes)) ||
      `${title}: what goes in the cup, and how it looks over white and over black.`,
    part: paths.home,
    picture: pictureAddress(context, recipe.id, 'shared'),
    scripts: ['planner', 'unfold', 'share'],
    main: html`<article class="recipe">
<header class="label">
<h1>${title}</h1>
${inShort(context, recipe, mold)}
${publishNote(context.book, recipe.publish)}</header>
${plate(recipe, mold, context.book.settings)}
${far.length === 0 ? '' : html`<section class="part" aria-label="As it was last seen">${far}${deltaEGloss(context)}</section>`}
${jumps(recipe, context.book.edition)}
<div class="columns">
<div class="column-main">
${plannerSection(context, recipe, plan, far.length > 0)}
${workSection(context, recipe)}
${notesSection(context, recipe)}
${roundsSection(context, recipe, (id) => titleOnShelf(context.book, id))}
${finishedBait(context, recipe)}
${besideTarget(context, recipe)}
${relativesSection(context, recipe)}
${costSection(recipe, plan)}
</div>
<aside class="column-side" aria-label="Particulars">
${howItLooks(context, recipe)}
${otherLights(recipe)}
${inWater(context, recipe)}
${howSure(context, recipe)}
${madeAgain(recipe, context.book.settings)}
${takeSection(context, recipe, mold)}
</aside>
</div>
</article>`,
  });
}

function inShort(context: PageContext, recipe: Recipe, mold: Mold): Html {
  const { pattern, made, facets, tags } = recipe;
  return labelLine([
    hueLinks(context, facets.hueFamilies),
    html`${pattern} in <a href="${link(context, paths.mold(mold.id))}">${mold.title}</a>`,
    ...(made === undefined ? [] : [html`<time datetime="${made}">${dayText(made)}</time>`]),
    ...tags.map((tag) => html`<span class="tag">${tag}</span>`),
  ]);
}

/** Ways to the parts of the page, for one long column. */
function jumps(recipe: Recipe, edition: Edition): Html {
  const logged = recipe.cups.some(({ rounds }) => rounds.length > 0);
  const parts: readonly (readonly [string, string])[] = [
    ['cups', 'What goes in'],
    ['work', 'Order of work'],
    ...(logged ? [['rounds', 'How it was found'] as const] : []),
    ...(recipe.seen?.length ? [['bait', 'The finished bait'] as const] : []),
    ...(recipe.match ? [['target', 'Its target'] as const] : []),
    ...(hasLineage(recipe) ? [['lineage', 'Where it comes from'] as const] : []),
    ['costs', edition === 'mine' ? 'Cost' : 'Materials'],
    ['looks', 'How it looks'],
    ['sure', 'How certain'],
    ['take', 'Cards'],
  ];
  return html`<nav class="jump" aria-label="On this page"><ul>${parts.map(([id, name]) => html`<li><a href="#${id}">${name}</a></li>`)}</ul></nav>`;
}

function recipePlan(context: PageContext, recipe: Recipe): PlannerData {
  const { materials, molds } = bookIndex(context.book);
  const { settings, optics, edition } = context.book;
  const shop = { materials, molds, settings, optics, edition };
  return plannerData(shop, [recipe], (id) => link(context, paths.material(id)));
}

/** @param explained whether the page has said already what ΔE is */
function plannerSection(context: PageContext, recipe: Recipe, data: PlannerData, explained: boolean): Html {
  const { book } = context;
  const names = plannedNames(data, data.recipes[0]!);
  const options = book.molds.map(
    ({ id, title }) => html`<option value="${id}"${id === recipe.mold ? html` selected` : ''}>${title}</option>`,
  );
  return html`<section class="part" aria-labelledby="cups" data-planner>
<h2 id="cups">What goes in</h2>
<form class="planner" hidden><p class="field"><label for="plan-baits">Baits</label><input id="plan-baits" name="baits" type="number" inputmode="numeric" min="1" max="100000" step="1" value="${recipe.batch.baits}"></p><p class="field wide"><label for="plan-mold">Mold</label><select id="plan-mold" name="mold">${options}</select></p><p class="field"><button type="submit">Update amounts</button></p></form>
<div data-planned>${batchCups(recipe.batch, names)}</div>
${explained ? '' : deltaEGloss(context)}
<p class="only-static fine">For another number of baits or another mold, scale the amounts per ${usualVolume(book.settings).text}, or <a href="${link(context, paths.plan)}">plan a batch</a>.</p>
${doses(recipe, bookIndex(book).materials, book.settings)}
<script type="application/json" data-planner-data>${embeddedJson(data)}</script>
</section>`;
}

function workSection(context: PageContext, recipe: Recipe): Html {
  const { materials } = bookIndex(context.book);
  const noted = recipe.notes.trim() !== '';
  const heat = heatWords(
    heatOf(recipe.cups, (material) => materials.get(material)),
    context.book.settings,
    (id) => materials.get(id)?.title ?? id,
  );
  return html`<section class="part" aria-labelledby="work"><h2 id="work">Order of work</h2>
${heatParagraph(heat)}
<p class="fine">This order is common practice, and so are its times and temperatures. Your suppliers’ instructions${noted ? html` and <a href="#notes">the maker’s notes</a>` : ''} come first.</p>
${orderView(workOf(context.book, recipe), { title: (id) => materials.get(id)?.title ?? id, settings: context.book.settings })}
${cautionsBlock(context)}
</section>`;
}

function notesSection(context: PageContext, { title, notes, photos }: Recipe): Html {
  const figures = photoFigures(context, photos, `Photo of ${title}`);
  if (notes.trim() === '' && figures.toString() === '') return html``;
  return html`<section class="part" aria-labelledby="notes"><h2 id="notes">Notes</h2>${notes.trim() === '' ? '' : html`<div class="notes">${notesHtml(context, notes)}</div>`}${figures}</section>`;
}

function costSection(recipe: Recipe, data: PlannerData): Html {
  return html`<section class="part" aria-labelledby="costs"><h2 id="costs">${takesTitle(data.edition)}</h2><div data-planned-costs>${batchTakes(recipe.batch, plannedNames(data, data.recipes[0]!))}</div></section>`;
}

function takeSection(context: PageContext, { id, batch }: Recipe, mold: Mold): Html {
  return html`<section aria-labelledby="take"><h2 id="take">Print and share</h2>
<p class="fine">The cards are for ${counted(batch.baits, 'bait')} of ${mold.title}. For another batch, update the amounts above and print this page.</p>
<ul class="take">
<li><a href="${link(context, paths.card(id))}">Bench card, 105 × 148 mm</a></li>
<li><a href="${link(context, paths.smallCard(id))}">Bench card, 4 × 6 in</a></li>
<li><a href="${link(context, paths.recipeSource(id))}">The recipe’s file</a></li>
<li><a href="${link(context, paths.recipeData(id))}">The recipe as data (JSON)</a></li>
</ul><p data-share hidden><button class="quiet" type="button">Copy link</button> <span role="status"></span></p></section>`;
}
