import { concentrations, total } from '../../cup/ledger.ts';
import { limitOf } from '../../matching/proposal.ts';
import { type Html, html } from '../../render/html.ts';
import { perHundred, temperatureText, volumeText } from '../../render/words.ts';
import { type BenchShown, titleIn } from './shown.ts';
import type { CupNow, WorkStep } from './work.ts';

/** The log of a cup, and what is in it. */
export function logView(
  steps: readonly WorkStep[],
  { cup, volumeMl }: Pick<CupNow, 'cup' | 'volumeMl'>,
  shown: BenchShown,
): Html {
  const { settings } = shown.data;
  const limit = limitOf(cup, shown.materials);
  const inside = Object.entries(concentrations(cup)).map(
    ([id, gramsPerMl]) =>
      html`<li>${titleIn(shown, id)} <span class="fine">${perHundred({ gramsPerMl }, shown.materials.get(id))} in 100 ml</span></li>`,
  );
  return html`<div class="bench-log"><div><h3>The log</h3>${
    steps.length === 0
      ? html`<p>Plain plastic.</p>`
      : html`<ol>${steps.map((step) => html`<li>${stepWords(step, shown)}</li>`)}</ol><p class="bench-buttons"><button class="quiet" type="button" data-undo>Take back the last line</button></p>`
  }</div><div><h3>Really in the cup</h3><p>${volumeText(volumeMl, settings)}${total(cup.plastics) > 1e-6 ? '' : ': it is empty'}.${limit ? ` Not above ${temperatureText(limit.celsius, settings)}, for ${titleIn(shown, limit.material)}.` : ''}</p>${inside.length === 0 ? '' : html`<ul class="bench-inside">${inside}</ul>`}</div></div>`;
}

function stepWords(step: WorkStep, shown: BenchShown): Html {
  const { settings } = shown.data;
  switch (step.do) {
    case 'add':
      return html`Added ${step.amounts.map(({ material, dose }, index) => html`${index > 0 ? ', ' : ''}${titleIn(shown, material)} ${dose}`)}`;
    case 'plastic':
      return html`Added ${volumeText(step.ml, settings)} of plastic`;
    case 'pour':
      return html`Poured ${volumeText(step.ml, settings)}`;
    case 'see':
      return html`Saw ${step.overWhite ? `${step.overWhite} over white` : ''}${step.overWhite && step.overBlack ? ', ' : ''}${step.overBlack ? `${step.overBlack} over black` : ''}${step.note ? html` <span class="said">“${step.note}”</span>` : ''}`;
  }
}
