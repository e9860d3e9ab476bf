/**
 * The plan page: several colours and molds at once. A colour's recipe is fetched when it is first chosen.
 *
 * @packageDocumentation
 */

import type { Edition } from '../book/model/publish.ts';
import type { Recipe } from '../book/model/recipe.ts';
import type { Material } from '../book/model/shelf.ts';
import type { BatchAmounts, Book, Settings } from '../book/model.ts';
import { heatOf } from '../book/recipes/heat-of.ts';
import { type BatchNames, batchCups, batchShort, batchTakes, takesTitle } from '../render/batch-view.ts';
import { type Html, html } from '../render/html.ts';
import type { PlanPageData } from '../render/pages/plan.ts';
import { type PlannerShop, plannedNames, plannerData, type ShopMold } from '../render/planner-data.ts';
import { smallBait } from '../render/small-bait.ts';
import { unitsKeptIn } from '../render/unbroken.ts';
import { counted } from '../render/words.ts';
import { required } from '../values/required.ts';
import { heatWords } from '../words/heat.ts';
import { mergeBatches } from './merge-batches.ts';
import { afterPause, pageData } from './page-data.ts';
import { batchQuery, type ColourLine, linesAsked, planQuery, showInAddress } from './plan-address.ts';
import { PlanForm } from './plan-form.ts';
import { baitsWanted, type PlanLine, plannedBatch } from './planned-batch.ts';
import { TickRows } from './tick-rows.ts';

/** What is read of a recipe's data file. */
interface RecipeFile {
  readonly recipe: Recipe;
  readonly materials: readonly Omit<Material, 'usedIn'>[];
  readonly settings: Settings;
  readonly optics: Book['optics'];
  readonly edition: Edition;
}

const root = document.documentElement.dataset.root ?? './';
const files = new Map<string, Promise<RecipeFile>>();

function recipeFile(id: string): Promise<RecipeFile> {
  const known = files.get(id);
  if (known !== undefined) return known;
  const fetched = fetch(`${root}colours/${id}/recipe.json`).then(async (answer) => {
    if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
    return (await answer.json()) as RecipeFile;
  });
  files.set(id, fetched);
  // A failure is not kept, so that the next try asks again.
  fetched.catch(() => files.delete(id));
  return fetched;
}

interface Planned {
  readonly id: string;
  readonly title: string;
  readonly lines: readonly PlanLine[];
  readonly batch: BatchAmounts;
  readonly edition: Edition;
  readonly names: BatchNames;
}

async function planRecipe(id: string, lines: readonly PlanLine[], molds: readonly ShopMold[]): Promise<Planned> {
  const { recipe, materials, settings, optics, edition } = await recipeFile(id);
  const shop = {
    materials: new Map(materials.map((material) => [material.id, material])),
    molds: new Map(molds.map((mold) => [mold.id, mold])),
    settings,
    optics,
    edition,
  };
  const data = plannerData(shop, [recipe], (material) => `${root}shelf/${material}/`);
  const planned = data.recipes[0]!;
  const names: BatchNames = { ...plannedNames(data, planned), heat: (cup) => cupHeat(cup, recipe, shop) };
  return { id, title: recipe.title, lines, batch: plannedBatch(data, planned, lines), edition, names };
}

/** How hot a cup may get and what sets it, in the words of the recipe's page. */
function cupHeat(name: string, { cups }: Recipe, { materials, settings }: PlannerShop): readonly string[] {
  const heat = heatOf(
    cups.filter((cup) => cup.name === name),
    (material) => materials.get(material),
  );
  return heatWords(heat, settings, (id) => materials.get(id)?.title ?? id);
}

/** Lines of a colour with one more: two of the same mold are poured as one. */
function withLine(lines: readonly PlanLine[], { mold, baits }: PlanLine): PlanLine[] {
  const known = lines.find((line) => line.mold === mold);
  if (known === undefined) return [...lines, { mold, baits }];
  return lines.map((line) => (line === known ? { mold, baits: line.baits + baits } : line));
}

/** Cups of all colours of a plan. */
function planCups(planned: readonly Planned[], usual: ReadonlyMap<string, PlanPageData['recipes'][number]>): Html {
  return html`${planned.map(({ id, title, lines, batch, names }) => {
    // A colour's own page shows the same batch, where it is one of one mold.
    const known = required(usual, id);
    const query = lines.length === 1 ? batchQuery(lines[0]!, known) : '';
    const href = `${root}colours/${id}/${query === '' ? '' : `?${query}`}`;
    return html`<section class="part" data-colour="${id}">${smallBait(known.picture)}<h2><a href="${href}">${title}</a></h2><p class="plan-order"><a href="${href}#work">Order of work<span class="unseen-words"> for ${title}</span></a></p>${batchCups(batch, names)}</section>`;
  })}`;
}

/** What must be bought before a plan can be poured: the first thing that is asked of it. Nothing for who has not the shelf. */
function planShort(all: BatchAmounts, edition: Edition, names: BatchNames): Html {
  if (edition !== 'mine') return html``;
  return html`<section class="part" aria-label="To buy"><h2>To buy</h2>${batchShort(all, names)}</section>`;
}

/** What all colours of a plan take together. */
function planTakes(all: BatchAmounts, edition: Edition, names: BatchNames): Html {
  return html`<section class="part"><h2>${takesTitle(edition)}</h2>${batchTakes(all, names)}</section>`;
}

/** Where the page shows a plan. */
interface PlanParts {
  readonly form: HTMLFormElement;
  /** Before all amounts: what is missing. */
  readonly short: HTMLElement;
  readonly result: HTMLElement;
  readonly costs: HTMLElement;
  readonly status: HTMLElement;
}

/** Lines of a plan by their colours. */
function byColour(lines: readonly ColourLine[]): ReadonlyMap<string, readonly PlanLine[]> {
  const wanted = new Map<string, readonly PlanLine[]>();
  for (const line of lines) wanted.set(line.recipe, withLine(wanted.get(line.recipe) ?? [], line));
  return wanted;
}

function start({ form, short, result, costs, status }: PlanParts, page: PlanPageData): void {
  const usual = new Map(page.recipes.map((recipe) => [recipe.id, recipe]));
  const known = { recipes: new Set(usual.keys()), molds: new Set(page.molds.map(({ id }) => id)) };
  const lines = new PlanForm(form, usual);
  const ticks = new TickRows(result);
  let isChanged = location.search !== '';
  // An answer that comes after a later question is dropped.
  let question = 0;

  const replan = async (): Promise<void> => {
    const asked = ++question;
    // What stands there is the answer to another question.
    short.replaceChildren();
    result.replaceChildren();
    costs.replaceChildren();
    status.textContent = 'Working it out…';
    const read = lines.read();
    if (read === undefined) {
      status.textContent = baitsWanted(' on every line');
      return;
    }
    const query = planQuery(read);
    if (isChanged) showInAddress(query);
    const wanted = byColour(read);
    try {
      const planned = await Promise.all(
        [...wanted].map(([id, recipeLines]) => planRecipe(id, recipeLines, page.molds)),
      );
      const sources = await Promise.all([...wanted.keys()].map(recipeFile));
      if (asked !== question) return;
      const packs = new Map(
        sources.flatMap(({ materials }) => materials.map((material) => [material.id, material] as const)),
      );
      const all = mergeBatches(
        planned.map(({ batch }) => batch),
        (id) => packs.get(id) ?? {},
      );
      const { edition, names: first } = planned[0]!;
      const names: BatchNames = {
        ...first,
        material: (id) => packs.get(id) ?? first.material(id),
        href: (id) => `${root}shelf/${id}/`,
      };
      short.innerHTML = unitsKeptIn(planShort(all, edition, names).toString());
      result.innerHTML = unitsKeptIn(planCups(planned, usual).toString());
      ticks.show(query);
      costs.innerHTML = unitsKeptIn(planTakes(all, edition, names).toString());
      status.textContent = `${counted(all.baits, 'bait')} in ${counted(planned.length, 'colour')}: ${counted(
        all.cups.reduce((sum, cup) => sum + cup.split, 0),
        'cup',
      )}.`;
    } catch (error) {
      if (asked !== question) return;
      status.textContent = `The amounts couldn’t be worked out: ${error instanceof Error ? error.message : String(error)}. Reload the page to try again.`;
    }
  };

  const later = afterPause(() => void replan());
  lines.onChange = () => {
    isChanged = true;
    later();
  };
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    void replan();
  });
  const asked = linesAsked(new URLSearchParams(location.search), known);
  if (asked.length > 0) lines.write(asked);
  form.querySelector<HTMLFieldSetElement>('[data-fields]')!.disabled = false;
  void replan();
}

const form = document.querySelector<HTMLFormElement>('[data-plan]');
const short = document.querySelector<HTMLElement>('[data-plan-short]');
const result = document.querySelector<HTMLElement>('[data-plan-result]');
const costs = document.querySelector<HTMLElement>('[data-plan-costs]');
const status = document.querySelector<HTMLElement>('[data-plan-status]');
const page = pageData<PlanPageData>('[data-plan-data]');
if (form !== null && short !== null && result !== null && costs !== null && status !== null && page !== undefined)
  start({ form, short, result, costs, status }, page);
