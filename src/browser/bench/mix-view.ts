import { type Html, html } from '../../render/html.ts';
import { volumeText } from '../../render/words.ts';
import type { CupDraft } from './drafts.ts';
import { type BenchShown, titleIn } from './shown.ts';
import type { Work, WorkCup } from './work.ts';

/** Whether a cup was begun with a recipe that nothing says is mixed yet. */
export function isToBeMixed({ steps }: Pick<WorkCup, 'steps'>): boolean {
  const last = steps.at(-1);
  return last?.do === 'add' && last.recipe === true;
}

/** What is to be mixed now, in rows to tick off; nothing once that is done. */
export function mixView(
  cup: Pick<WorkCup, 'steps'>,
  index: number,
  { mixed = [] }: CupDraft,
  { plastic, plasticMl }: Pick<Work, 'plastic' | 'plasticMl'>,
  shown: BenchShown,
): Html {
  const last = cup.steps.at(-1);
  if (!isToBeMixed(cup) || last?.do !== 'add') return html``;
  const rows = [
    { material: plastic, dose: volumeText(plasticMl, shown.data.settings) },
    ...last.amounts.map(({ material, dose }) => ({ material, dose })),
  ];
  return html`<h3>Mix this</h3><ul class="bench-mix">${rows.map(({ material, dose }) => {
    const id = `cup-${index}-mixed-${material}`;
    return html`<li class="check"><input id="${id}" type="checkbox" name="mixed" value="${material}"${mixed.includes(material) ? html` checked` : ''}><label for="${id}"><b>${dose}</b> <span>${titleIn(shown, material)}</span></label></li>`;
  })}</ul><p class="bench-next">Mix it, pour a bait, look, and note the round.</p>`;
}
