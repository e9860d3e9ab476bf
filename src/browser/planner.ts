/**
 * The batch planner of a recipe's page: another number of baits, another mold, and the amounts follow.
 *
 * @packageDocumentation
 */
import { batchCups, batchTakes, takesGist } from '../render/batch-view.ts';
import { html } from '../render/html.ts';
import { paths } from '../render/links.ts';
import {
  PLANNER_SHELF,
  type PlannedRecipe,
  type PlannerData,
  type PlannerShelf,
  plannedNames,
  plannedOnShelf,
} from '../render/planner-data.ts';
import { roundingApart } from '../render/recipe/rounding-apart.ts';
import { unitsKeptIn } from '../render/unbroken.ts';
import { afterPause, pageData } from './page-data.ts';
import { batchAsked, batchQuery, showInAddress } from './plan-address.ts';
import { baitsFrom, baitsWanted, type PlanLine, plannedBatch } from './planned-batch.ts';
import { TickRows } from './tick-rows.ts';

/** Where the page shows a batch. */
interface PlannerParts {
  readonly form: HTMLFormElement;
  readonly amounts: HTMLElement;
  readonly costs: HTMLElement;
  /** What of it stands on the lid of the costs. */
  readonly gist: HTMLElement;
  /** What its rounding does to the colour. */
  readonly rounding: HTMLElement;
}

function start({ form, amounts, costs, gist, rounding }: PlannerParts, data: PlannerData, recipe: PlannedRecipe): void {
  const names = { ...plannedNames(data, recipe), roundingSaidElsewhere: true } as const;
  const says = amounts.querySelector<HTMLElement>('.batch-says')!;
  const cups = amounts.querySelector<HTMLElement>('.cups')!;
  const ticks = new TickRows(cups);
  const usual: PlanLine = { baits: recipe.baits, mold: recipe.mold };
  const field = (name: string): HTMLInputElement | HTMLSelectElement => form.querySelector(`[name="${name}"]`)!;
  const shownAs = ({ baits, mold }: PlanLine): string => `${baits} ${mold}`;

  const replan = (): void => {
    const baits = baitsFrom(field('baits').value);
    if (baits === undefined) {
      // What stood there was for another number.
      says.textContent = baitsWanted();
      cups.replaceChildren();
      costs.innerHTML = html`<p class="batch-says">${baitsWanted()}</p>`.toString();
      gist.replaceChildren();
      rounding.replaceChildren();
      return;
    }
    const line = { mold: field('mold').value, baits };
    const batch = plannedBatch(data, recipe, [line]);
    const drawn = document.createElement('template');
    drawn.innerHTML = unitsKeptIn(batchCups(batch, names).toString());
    // What is said stays in its place, where alone a change of it is heard.
    says.replaceChildren(...drawn.content.querySelector('.batch-says')!.childNodes);
    cups.replaceChildren(...drawn.content.querySelector('.cups')!.children);
    costs.innerHTML = unitsKeptIn(batchTakes(batch, names).toString());
    gist.innerHTML = unitsKeptIn(takesGist(batch, names).toString());
    rounding.innerHTML = roundingApart(batch.cups, names).toString();
    ticks.show(shownAs(line));
    showInAddress(batchQuery(line, usual));
  };

  says.setAttribute('role', 'status');
  form.addEventListener('input', afterPause(replan));
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    replan();
  });
  const isAsked = location.search !== '';
  if (isAsked) {
    const asked = batchAsked(new URLSearchParams(location.search), usual, new Set(data.molds.map(({ id }) => id)));
    field('baits').value = String(asked.baits);
    field('mold').value = asked.mold;
  }
  // A reader who comes back finds the fields as they were left, so the amounts must follow them.
  if (isAsked || field('baits').value !== String(usual.baits) || field('mold').value !== usual.mold) replan();
  else ticks.show(shownAs(usual));
  form.hidden = false;
}

const form = document.querySelector<HTMLFormElement>('[data-planner] form');
const amounts = document.querySelector<HTMLElement>('[data-planned]');
const costs = document.querySelector<HTMLElement>('[data-planned-costs]');
const gist = document.querySelector<HTMLElement>('[data-planned-gist]');
const rounding = document.querySelector<HTMLElement>('[data-planned-rounding]');
const recipe = pageData<PlannedRecipe>('[data-planner-data]');
const shelf = (window as { [PLANNER_SHELF]?: PlannerShelf })[PLANNER_SHELF];
if (
  form !== null &&
  amounts !== null &&
  costs !== null &&
  gist !== null &&
  rounding !== null &&
  shelf !== undefined &&
  recipe !== undefined
) {
  const root = document.documentElement.dataset.root ?? './';
  const data = plannedOnShelf(recipe, shelf, (material) => `${root}${paths.material(material)}`);
  start({ form, amounts, costs, gist, rounding }, data, recipe);
}
