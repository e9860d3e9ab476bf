/**
 * The batch planner of a recipe's page: another number of baits, another mold, and the amounts follow.
 *
 * @packageDocumentation
 */
import { batchCosts, batchCups } from '../render/batch-view.ts';
import { html } from '../render/html.ts';
import { type PlannerData, plannedNames } from '../render/planner-data.ts';
import { afterPause, pageData } from './page-data.ts';
import { baitsFrom, baitsWanted, plannedBatch } from './planned-batch.ts';

const form = document.querySelector<HTMLFormElement>('[data-planner] form');
const amounts = document.querySelector<HTMLElement>('[data-planned]');
const costs = document.querySelector<HTMLElement>('[data-planned-costs]');
const data = pageData<PlannerData>('[data-planner-data]');
const recipe = data?.recipes[0];

if (form !== null && amounts !== null && data !== undefined && recipe !== undefined) {
  const names = plannedNames(data, recipe);
  const replan = (): void => {
    const fields = new FormData(form);
    const baits = baitsFrom(String(fields.get('baits') ?? ''));
    if (baits === undefined) {
      // What stood there was for another number.
      for (const part of [amounts, costs]) {
        if (part !== null) part.innerHTML = html`<p class="batch-says">${baitsWanted()}</p>`.toString();
      }
      return;
    }
    const batch = plannedBatch(data, recipe, [{ mold: String(fields.get('mold') ?? recipe.mold), baits }]);
    amounts.innerHTML = batchCups(batch, names).toString();
    if (costs !== null) costs.innerHTML = batchCosts(batch, names).toString();
  };
  form.addEventListener('input', afterPause(replan));
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    replan();
  });
  form.hidden = false;
  // A reader who comes back finds the fields as they were left, so the amounts must follow them.
  const { baits, mold } = { baits: recipe.baits, mold: recipe.mold };
  const fields = new FormData(form);
  if (fields.get('baits') !== String(baits) || fields.get('mold') !== mold) replan();
}
