import { type Html, html } from '../../render/html.ts';
import { dot } from '../../render/swatch/chip.ts';
import { sentence } from '../../render/words.ts';
import { isSaid, sideOf, type Work } from './work.ts';
import { hexOfColour } from './work-colour.ts';

/** Tabs of two cups, of which one is shown; nothing of one. */
export function tabsView(work: Work, shown: number): Html {
  if (work.cups.length < 2) return html``;
  return html`<div class="match-tabs" role="tablist" aria-label="Cups">${work.cups.map(({ name }, index) => {
    const side = sideOf(work, index);
    const isShown = index === shown;
    return html`<button type="button" role="tab" id="cup-${index}-tab" data-tab="${index}" aria-controls="cup-${index}" aria-selected="${isShown ? 'true' : 'false'}" tabindex="${isShown ? 0 : -1}">${isSaid(side) ? dot(hexOfColour(side.overWhite)) : ''}${sentence(name)}</button>`;
  })}</div>`;
}

/** In the place of a cup whose colour nobody has said yet. */
export function unsaidView({ sides }: Work, index: number): Html {
  return html`<div class="match-now"><p class="match-next">What should the ${sides[index]!.name} look like?</p><p class="match-buttons"><button type="button" data-go="target">Say its colour</button></p></div>`;
}
