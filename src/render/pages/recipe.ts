import type { Mold, Recipe } from '../../book/model.ts';
import { batchCosts, batchCups } from '../batch-view.ts';
import { bookIndex, required } from '../book-index.ts';
import { cautionsBlock } from '../cautions.ts';
import { document } from '../document.ts';
import { embeddedJson, type Html, html, joined } from '../html.ts';
import { relativesLayout } from '../lineage-picture.ts';
import { hueAnchor, link, paths } from '../links.ts';
import { notesHtml, notesText } from '../notes.ts';
import { heatOf, heatWords, orderOfWork } from '../order-of-work.ts';
import type { PageContext, PageKind } from '../page.ts';
import { photoFigures } from '../photo.ts';
import { type PlannerData, plannedNames, plannerData } from '../planner-data.ts';
import { plate } from '../recipe/plate.ts';
import { relativesSection } from '../recipe/relatives.ts';
import { roundsSection } from '../recipe/rounds.ts';
import { contrastText, dayText, deltaEText, opacityWords, sentence, TIER_WORDS } from '../words.ts';
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
  return document(context, {
    title,
    description:
      notesText(notes).slice(0, 150) || `${title}: what is in the cup, and how it looks over white and over black.`,
    part: paths.home,
    scripts: ['planner'],
    main: html`<article class="recipe">
<header class="label">
<h1>${title}</h1>
<p class="label-line">${labelLine(context, recipe, mold)}</p>
</header>
${plate(recipe, mold)}
${jumps(recipe)}
<div class="columns">
<div class="column-main">
${notes.trim() === '' ? '' : html`<div class="notes">${notesHtml(context, notes)}</div>`}
${photoFigures(context, recipe.photos, `Photo of ${title}`)}
${plannerSection(context, recipe, plan)}
${workSection(context, recipe)}
${roundsSection(context, recipe.cups, (id) => required(bookIndex(context.book).materials, id).title)}
${relativesSection(context, recipe)}
${costSection(recipe, plan)}
</div>
<aside class="column-side" aria-label="Particulars">
${looksSection(context, recipe)}
${againSection(recipe)}
${takeSection(context, recipe)}
</aside>
</div>
</article>`,
  });
}

function labelLine(context: PageContext, recipe: Recipe, mold: Mold): Html {
  const { pattern, made, facets, tags } = recipe;
  return joined(
    [
      html`<a href="${link(context, paths.home)}#${hueAnchor(facets.hueFamily)}">${sentence(facets.hueFamily)}</a>`,
      html`${pattern} in <a href="${link(context, paths.mold(mold.id))}">${mold.title}</a>`,
      ...(made === undefined ? [] : [html`<time datetime="${made}">${dayText(made)}</time>`]),
      ...tags.map((tag) => html`<span class="tag">${tag}</span>`),
    ],
    html` <span aria-hidden="true">/</span> `,
  );
}

/** Ways to the parts of the page, for one long column. */
function jumps(recipe: Recipe): Html {
  const logged = recipe.cups.some(({ rounds }) => rounds.length > 0);
  const related = relativesLayout(recipe).nodes.length > 1;
  const parts: readonly (readonly [string, string])[] = [
    ['cups', 'What goes in'],
    ['work', 'Order of work'],
    ...(logged ? [['rounds', 'How it was found'] as const] : []),
    ...(related ? [['lineage', 'Where it comes from'] as const] : []),
    ['costs', 'Cost'],
    ['take', 'Cards'],
  ];
  return html`<nav class="jump" aria-label="On this page"><ul>${parts.map(([id, name]) => html`<li><a href="#${id}">${name}</a></li>`)}</ul></nav>`;
}

function recipePlan(context: PageContext, recipe: Recipe): PlannerData {
  const { materials, molds } = bookIndex(context.book);
  const shop = { materials, molds, settings: context.book.settings };
  return plannerData(shop, [recipe], (id) => link(context, paths.material(id)));
}

function plannerSection(context: PageContext, recipe: Recipe, data: PlannerData): Html {
  const { book } = context;
  const names = plannedNames(data, data.recipes[0]!);
  const options = book.molds.map(
    ({ id, title }) => html`<option value="${id}"${id === recipe.mold ? html` selected` : ''}>${title}</option>`,
  );
  return html`<section class="part" aria-labelledby="cups" data-planner>
<h2 id="cups">What goes in</h2>
<form class="planner" hidden><p class="field"><label for="plan-baits">Baits</label><input id="plan-baits" name="baits" type="number" inputmode="numeric" min="1" max="100000" step="1" value="${recipe.batch.baits}"></p><p class="field wide"><label for="plan-mold">Mold</label><select id="plan-mold" name="mold">${options}</select></p><p class="field"><button type="submit">Work it out</button></p></form>
<div data-planned aria-live="polite">${batchCups(recipe.batch, names)}</div>
<p class="only-static fine">Amounts for another number of baits or another mold: multiply what is in 100 ml, or <a href="${link(context, paths.plan)}">plan a batch</a>.</p>
<script type="application/json" data-planner-data>${embeddedJson(data)}</script>
</section>`;
}

function workSection(context: PageContext, recipe: Recipe): Html {
  const { materials } = bookIndex(context.book);
  const heat = heatWords(heatOf(recipe.cups), context.book.settings, (id) => materials.get(id)?.title ?? id);
  return html`<section class="part" aria-labelledby="work"><h2 id="work">Order of work</h2>
<p class="heat">${joined(
    heat.map((line, index) => (index === 0 ? html`<strong>${line}</strong>` : line)),
    ' ',
  )}</p>
<ol class="steps">${orderOfWork(recipe, (id) => materials.get(id)?.kind).map((step) => html`<li>${step}</li>`)}</ol>
<p class="fine">The order is common practice; what the suppliers say comes first.</p>
${cautionsBlock(context)}
</section>`;
}

function looksSection(context: PageContext, recipe: Recipe): Html {
  const { body, thin, contrast, cups, tier, expectedDeltaE, target } = recipe;
  const mold = required(bookIndex(context.book).molds, recipe.mold);
  const hidden = cups.filter((cup) => cup.hidingMm !== undefined);
  const mapped = [body, thin, ...(recipe.other === undefined ? [] : [recipe.other])].some(
    ({ overWhite, overBlack }) => overWhite.mapped || overBlack.mapped,
  );
  const flakes = cups.flatMap(({ flakes: all }) => all);
  const targets = bookIndex(context.book).targets;
  const { materials } = bookIndex(context.book);
  return html`<section aria-labelledby="looks"><h2 id="looks">How it looks</h2>
<dl class="facts stacked">
<div><dt>Body, ${mold.bodyMm} mm</dt><dd>${sentence(opacityWords(body))}. <span class="fine">Contrast ${contrastText(body.contrastRatio)}</span></dd></div>
<div><dt>${sentence(mold.thinPart)}, ${mold.thinMm} mm</dt><dd>${sentence(opacityWords(thin))}. <span class="fine">Contrast ${contrastText(thin.contrastRatio)}</span></dd></div>
${hidden.map((cup) => html`<div><dt>${cups.length > 1 ? `${sentence(cup.name)} hides from` : 'Hides from'}</dt><dd>${cup.hidingMm! >= 100 ? 'more than 100 mm' : `${cup.hidingMm!.toFixed(cup.hidingMm! < 10 ? 1 : 0)} mm`}</dd></div>`)}
${contrast === undefined ? '' : html`<div><dt>Between the cups</dt><dd>ΔE ${deltaEText(contrast.deltaE)} seen through a streak. ${sentence(contrast.suits)}</dd></div>`}
${flakes.map((flake) => html`<div><dt>${materials.get(flake.material)?.title ?? flake.material}</dt><dd>${Math.round(flake.perBait)} flakes a bait, ${flake.spacingMm.toFixed(1)} mm apart, in ${Math.round(flake.coverage * 100)} % of the lines of sight</dd></div>`)}
${target === undefined || !targets.has(target) ? '' : html`<div><dt>Made for</dt><dd><a href="${link(context, paths.target(target))}">${required(targets, target).title}</a></dd></div>`}
<div><dt>Rests on</dt><dd>${sentence(TIER_WORDS[tier])}. <span class="fine">Expect ΔE ${deltaEText(expectedDeltaE)} between this and the bait.</span></dd></div>
</dl>
${mapped ? html`<p class="fine">A screen can’t show this colour fully; the nearest that it can stands here.</p>` : ''}</section>`;
}

function againSection(recipe: Recipe): Html {
  const { bySpoonAndDrop, byScale, advice } = recipe.repeatability;
  const assumptions = [...new Set(recipe.cups.flatMap((cup) => cup.assumptions))];
  const known = bySpoonAndDrop !== undefined || byScale !== undefined;
  if (!known && assumptions.length === 0) return html``;
  return html`<section aria-labelledby="again"><h2 id="again">Made again</h2>
${
  known
    ? html`<dl class="facts stacked">${bySpoonAndDrop === undefined ? '' : html`<div><dt>By drop and spoon</dt><dd>ΔE at most ${deltaEText(bySpoonAndDrop)} in 19 of 20 batches</dd></div>`}${byScale === undefined ? '' : html`<div><dt>By weight</dt><dd>ΔE at most ${deltaEText(byScale)}</dd></div>`}</dl>`
    : ''
}${advice === undefined ? '' : html`<p>${advice}</p>`}
${
  assumptions.length === 0
    ? ''
    : html`<details><summary>What the numbers assume</summary><ul class="fine">${assumptions.map((assumed) => html`<li>${sentence(assumed)}</li>`)}</ul></details>`
}</section>`;
}

function costSection(recipe: Recipe, data: PlannerData): Html {
  return html`<section class="part" aria-labelledby="costs"><h2 id="costs">Cost and shopping</h2><div data-planned-costs>${batchCosts(recipe.batch, plannedNames(data, data.recipes[0]!))}</div></section>`;
}

function takeSection(context: PageContext, { id }: Recipe): Html {
  return html`<section aria-labelledby="take"><h2 id="take">Take it with you</h2>
<ul class="take">
<li><a href="${link(context, paths.card(id))}">Bench card, 105 × 148 mm</a></li>
<li><a href="${link(context, paths.smallCard(id))}">Bench card, 4 × 6 in</a></li>
<li><a href="${link(context, paths.recipeSource(id))}">The recipe’s file</a></li>
<li><a href="${link(context, paths.recipeData(id))}">The recipe as data (JSON)</a></li>
</ul></section>`;
}
