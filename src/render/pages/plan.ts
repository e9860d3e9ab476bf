import type { Book } from '../../book/model.ts';
import { usualVolume } from '../../units/usual-volume.ts';
import { tileSources } from '../bait-picture.ts';
import { cautionsBlock } from '../cautions.ts';
import { document } from '../document.ts';
import { embeddedJson, type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext, PageKind } from '../page.ts';
import { plannedMold, type ShopMold } from '../planner-data.ts';
import { atTheBench, benchButton } from '../recipe/at-the-bench.ts';
import type { TileSources } from '../small-bait.ts';

/** What the plan page knows before it has fetched any recipe. */
export interface PlanPageData {
  readonly molds: readonly ShopMold[];
  /** Usual mold and batch of each recipe. */
  readonly recipes: readonly {
    readonly id: string;
    readonly mold: string;
    readonly baits: number;
    readonly picture: TileSources;
  }[];
}

function planData(context: PageContext): PlanPageData {
  const { molds, recipes } = context.book;
  return {
    molds: molds.map((mold) => ({ ...plannedMold(mold), bodyMm: mold.bodyMm })),
    recipes: recipes.map(({ id, mold, batch }) => ({
      id,
      mold,
      baits: batch.baits,
      picture: tileSources(context, id),
    })),
  };
}

/** The first line of the form; the script copies it for more. */
function planLine(book: Book): Html {
  const recipes = [...book.recipes].sort((one, other) => one.title.localeCompare(other.title));
  const first = recipes[0];
  return html`<li data-line><fieldset class="plan-line"><legend class="unseen-words">Line 1</legend>
<p class="field wide"><label for="plan-recipe-1">Colour</label><select id="plan-recipe-1" name="recipe">${recipes.map(({ id, title }) => html`<option value="${id}">${title}</option>`)}</select></p>
<p class="field wide"><label for="plan-mold-1">Mold</label><select id="plan-mold-1" name="mold">${book.molds.map(({ id, title }) => html`<option value="${id}"${id === first?.mold ? html` selected` : ''}>${title}</option>`)}</select></p>
<p class="field"><label for="plan-baits-1">Baits</label><input id="plan-baits-1" name="baits" type="text" inputmode="numeric" autocomplete="off" value="${first?.batch.baits ?? 20}"></p>
<p class="field"><button class="quiet" type="button" data-remove hidden>Remove</button></p>
</fieldset></li>`;
}

/** Several colours and molds in one plan: amounts, cost, shopping. */
export const planPage: PageKind = {
  kind: 'plan',
  items: () => [''],
  url: () => paths.plan,
  render: (context) => {
    const { book } = context;
    const empty = book.recipes.length === 0 || book.molds.length === 0;
    return document(context, {
      title: 'Plan a batch',
      description: `${book.edition === 'mine' ? 'Amounts, cost and shopping list' : 'Amounts'} for several colours and molds of ${book.title} at once.`,
      part: paths.plan,
      scripts: empty ? [] : ['plan', 'bench'],
      main: html`<h1>Plan a batch</h1>
<p class="lead">Pick colours, molds and how many baits. You get the amounts for each cup${book.edition === 'mine' ? ', the cost, and what to buy' : ' and the materials needed'}.</p>
${
  empty
    ? html`<p>There is nothing to plan yet: the book needs a recipe and a mold.</p>
${cautionsBlock(context)}`
    : html`<form class="plan" data-plan><fieldset class="plan-fields" disabled data-fields><legend class="unseen-words">What to pour</legend><ol class="plan-lines" data-lines>${planLine(book)}</ol><p class="plan-buttons"><button class="quiet" type="button" data-add>Add a line</button> <button type="submit">Update amounts</button></p></fieldset></form>
<p class="find-count" role="status" data-plan-status></p>
<div data-plan-short></div>
${benchButton()}
<div class="plan-cups" data-plan-result></div>
${cautionsBlock(context)}
<div data-plan-costs></div>
${atTheBench(context, [])}
<script type="application/json" data-plan-data>${embeddedJson(planData(context))}</script>
<p class="only-static">This page needs JavaScript. Without it, each <a href="${link(context, paths.home)}">colour’s page</a> gives the amounts for its own batch and per ${usualVolume(book.settings).text} of plastic.</p>`
}`,
    });
  },
};
