import { orderOfWork } from '../../book/recipes/order-of-work.ts';
import type { CupState } from '../../cup/ledger.ts';
import { usualPattern } from '../../patterns/patterns.ts';
import { heatParagraph } from '../../render/heat-paragraph.ts';
import { type Html, html } from '../../render/html.ts';
import { orderView } from '../../render/order-view.ts';
import { volumeText } from '../../render/words.ts';
import { defined } from '../../values/defined.ts';
import { SHORT_CAUTIONS } from '../../words/cautions.ts';
import { cupHeat } from './cup-heat.ts';
import type { CupDraft } from './drafts.ts';
import { cutsIn } from './page-shelf.ts';
import { type MatchShown, titleIn } from './shown.ts';
import { spoonWords } from './spoon-words.ts';
import { thisCup, type Work, type WorkCup, type WorkStep } from './work.ts';

/** Whether a cup was begun with a recipe, and nothing was poured of it yet. */
export function isToBeMixed(cup: Pick<WorkCup, 'steps'>): boolean {
  const steps = thisCup(cup.steps);
  return isRecipe(steps[0]) && steps.every((step) => step.do === 'add' || step.do === 'plastic');
}

function isRecipe(step: WorkStep | undefined): boolean {
  return step?.do === 'add' && step.recipe === true;
}

/**
 * What is to be mixed now, in rows to tick off, and how hot it may get; nothing once that is done.
 *
 * @param mix what the cup will be
 */
export function mixView(
  cup: Pick<WorkCup, 'name' | 'steps'>,
  mix: CupState,
  index: number,
  { mixed = [] }: CupDraft,
  { mold, plastic, plasticMl }: Pick<Work, 'mold' | 'plastic' | 'plasticMl'>,
  shown: MatchShown,
): Html {
  const [recipe] = thisCup(cup.steps);
  if (!isToBeMixed(cup) || recipe?.do !== 'add') return html``;
  const rows = [
    { material: plastic, dose: volumeText(plasticMl, shown.data.settings) },
    ...recipe.amounts.map(({ material, dose }) => ({ material, dose: spoonWords(dose, shown.data.settings) })),
  ];
  return html`<h3>Mix this</h3>${heatParagraph(cupHeat(mix, shown))}<ul class="match-mix">${rows.map(
    ({ material, dose }) => {
      const id = `cup-${index}-mixed-${material}`;
      return html`<li class="check"><input id="${id}" type="checkbox" name="mixed" value="${material}"${mixed.includes(material) ? html` checked` : ''}><label for="${id}"><b>${dose}</b> <span>${titleIn(shown, material)}</span></label></li>`;
    },
  )}</ul>${orderFold(cup, mix, mold, shown)}<p class="match-next">Mix this, pour a bait, look at it, and log the round.</p>`;
}

/** The order of work for a cup that is poured by itself, with the cautions. */
function orderFold(
  { name, steps }: Pick<WorkCup, 'name' | 'steps'>,
  mix: CupState,
  mold: string,
  shown: MatchShown,
): Html {
  const named = (names: readonly string[]): readonly { material: string }[] => names.map((material) => ({ material }));
  const cuts = cutsIn(shown.data);
  const amounts = thisCup(steps).flatMap((step) => (step.do === 'add' ? step.amounts : []));
  // A cut goes in as its bottle does, and what it is cut with goes in with it.
  const contents = [...new Set(amounts.map(({ material }) => cuts.get(material)?.of ?? material))];
  const made = { name, contents: named(contents), plastics: named(Object.keys(mix.plastics)) };
  const method = shown.data.molds.find(({ id }) => id === mold)?.method;
  const how = { pattern: usualPattern(1), ...defined({ method }) };
  const work = orderOfWork({ ...how, cups: [made] }, (id) => shown.materials.get(id));
  const names = { title: (id: string): string => titleIn(shown, id), settings: shown.data.settings };
  return html`<details class="match-order"><summary>Order of work</summary>${orderView(work, names)}<p class="fine">This order is common practice, and so are its times and temperatures. Your suppliers’ instructions come first.</p><ul>${SHORT_CAUTIONS.map((caution) => html`<li>${caution}</li>`)}</ul></details>`;
}
