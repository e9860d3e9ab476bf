import type { Recipe } from '../../book/model/recipe.ts';
import type { Mold } from '../../book/model/shelf.ts';
import { heatOf } from '../../book/recipes/heat-of.ts';
import { usualVolume } from '../../units/usual-volume.ts';
import { required } from '../../values/required.ts';
import { colourLine } from '../../words/colour-line.ts';
import { pictureAddress } from '../bait-picture.ts';
import { type BatchNames, batchCups, batchTakes, takesGist, takesTitle } from '../batch-view.ts';
import { bookIndex } from '../book-index.ts';
import { cautionsBlock } from '../cautions.ts';
import { document } from '../document.ts';
import { publishNote } from '../edition-mark.ts';
import { embeddedJson, type Html, html } from '../html.ts';
import { hueLinks } from '../hue-links.ts';
import { labelLine } from '../label-line.ts';
import { link, paths } from '../links.ts';
import { notesText } from '../notes.ts';
import { orderView } from '../order-view.ts';
import type { PageContext, PageKind } from '../page.ts';
import { type PlannerData, plannedNames, plannerData } from '../planner-data.ts';
import { plannerShelfPath } from '../planner-shelf.ts';
import { atTheBench, benchButton } from '../recipe/at-the-bench.ts';
import { doses } from '../recipe/doses.ts';
import { fold } from '../recipe/fold.ts';
import { heatPlate } from '../recipe/heat-plate.ts';
import { howFarOff } from '../recipe/how-far-off.ts';
import { lightAndWater } from '../recipe/light-and-water.ts';
import { plate } from '../recipe/plate.ts';
import { relativesSection } from '../recipe/relatives.ts';
import { story } from '../recipe/story.ts';
import { shortDescription } from '../short-description.ts';
import { counted } from '../words.ts';
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

/** Three depths: the bait and its amounts, the order of work, and folded below them all else that is known. */
function fullPage(context: PageContext, recipe: Recipe): string {
  const mold = required(bookIndex(context.book).molds, recipe.mold);
  const { title, notes } = recipe;
  const plan = recipePlan(context, recipe);
  const names = { ...plannedNames(plan, plan.recipes[0]!), roundingSaidElsewhere: true } as const;
  return document(context, {
    title,
    description:
      shortDescription(notesText(notes)) ||
      `${title}: what goes in the cup, and how it looks over white and over black.`,
    part: paths.home,
    picture: pictureAddress(context, recipe.id, 'shared'),
    scripts: ['planner', 'unfold', 'share', 'bench'],
    data: [plannerShelfPath(context.book)],
    main: html`<article class="recipe">
<header class="label">
<h1>${title}</h1>
${oneLine(context, recipe, mold)}
${publishNote(context.book, recipe.publish)}</header>
<div class="spread-out">
<div>
${plate(context, recipe)}
${amountsSection(context, recipe, plan, names)}
</div>
<div>
${workSection(context, recipe)}
${cautionsBlock(context)}
</div>
</div>
<div class="folds">
${howFarOff(context, recipe, names)}
${story(context, recipe)}
${relativesSection(context, recipe)}
${lightAndWater(context, recipe, mold)}
${fold('costs', takesTitle(plan.edition), html`<span data-planned-gist>${takesGist(recipe.batch, names)}</span>`, html`<div data-planned-costs>${batchTakes(recipe.batch, names)}</div>${doses(recipe, bookIndex(context.book).materials, context.book.settings)}`)}
${takeSection(context, recipe, mold)}
</div>
${atTheBench(context, recipe.cups)}
</article>`,
  });
}

function oneLine(context: PageContext, recipe: Recipe, mold: Mold): Html {
  const { facets, tags } = recipe;
  const line = colourLine(recipe, titleOr(context));
  return html`<p class="one-line">${line}; <a href="${link(context, paths.mold(mold.id))}">${mold.title}</a>.</p>
${labelLine([hueLinks(context, facets.hueFamilies), ...tags.map((tag) => html`<span class="tag">${tag}</span>`)])}`;
}

/** What a material is called, by its id where the shelf hasn't it. */
function titleOr({ book }: PageContext): (material: string) => string {
  const { materials } = bookIndex(book);
  return (id) => materials.get(id)?.title ?? id;
}

function recipePlan(context: PageContext, recipe: Recipe): PlannerData {
  const { materials, molds } = bookIndex(context.book);
  const { settings, optics, edition } = context.book;
  const shop = { materials, molds, settings, optics, edition };
  return plannerData(shop, [recipe], (id) => link(context, paths.material(id)));
}

function amountsSection(context: PageContext, recipe: Recipe, data: PlannerData, names: BatchNames): Html {
  const { book } = context;
  const options = book.molds.map(
    ({ id, title }) => html`<option value="${id}"${id === recipe.mold ? html` selected` : ''}>${title}</option>`,
  );
  return html`<section class="part" aria-labelledby="cups" data-planner>
<div class="beside-bench"><h2 id="cups">What goes in</h2>${benchButton()}</div>
<form class="planner awaited" hidden><p class="field"><label for="plan-baits">Baits</label><input id="plan-baits" name="baits" type="text" inputmode="numeric" maxlength="6" value="${recipe.batch.baits}"></p><p class="field wide"><label for="plan-mold">Mold</label><select id="plan-mold" name="mold">${options}</select></p><p class="planner-update"><button type="submit">Update amounts</button></p></form>
<div data-planned>${batchCups(recipe.batch, names)}</div>
<p class="only-static fine">For another number of baits or another mold, scale the amounts per ${usualVolume(book.settings).text}, or <a href="${link(context, paths.plan)}">plan a batch</a>.</p>
<script type="application/json" data-planner-data>${embeddedJson(data.recipes[0]!)}</script>
</section>`;
}

function workSection(context: PageContext, recipe: Recipe): Html {
  const { settings } = context.book;
  const { materials } = bookIndex(context.book);
  const isNoted = recipe.notes.trim() !== '';
  const heat = heatOf(recipe.cups, (material) => materials.get(material));
  const title = titleOr(context);
  return html`<section class="part work" aria-labelledby="work"><h2 id="work">Order of work</h2>
${heatPlate(heat, settings, title)}
<p class="fine">This order is common practice, and so are its times and temperatures. Your suppliers’ instructions${isNoted ? html` and <a href="#notes">the maker’s notes</a>` : ''} come first.</p>
${orderView(workOf(context.book, recipe), { title, settings })}
</section>`;
}

function takeSection(context: PageContext, { id, batch }: Recipe, mold: Mold): Html {
  return fold(
    'take',
    'Print and share',
    'Cards for the bench, the file, the link',
    html`<ul class="take">
<li><a href="${link(context, paths.card(id))}">Bench card, 105 × 148 mm</a></li>
<li><a href="${link(context, paths.smallCard(id))}">Bench card, 4 × 6 in</a></li>
<li><a href="${link(context, paths.recipeSource(id))}">The recipe’s file</a></li>
<li><a href="${link(context, paths.recipeData(id))}">The recipe as data (JSON)</a></li>
<li data-share hidden><button class="quiet" type="button">Copy link</button> <span role="status"></span></li>
</ul>
<p class="fine">The cards are for ${counted(batch.baits, 'bait')} of ${mold.title}. For another batch, change the amounts above and print this page.</p>`,
  );
}
