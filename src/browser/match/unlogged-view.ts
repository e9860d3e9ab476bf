import { type Html, html } from '../../render/html.ts';
import type { CupAdvice } from './ask.ts';

/**
 * What is asked of a round whose colour moved with nothing logged, in the place of the advice: nothing is to be made of it until then.
 *
 * @param index of the cup
 */
export function unloggedView({ next: { sentence }, unlogged }: CupAdvice, index: number): Html {
  const id = `cup-${index}-asks`;
  return html`<div class="match-asks" role="group" aria-labelledby="${id}"><p class="match-next" id="${id}" tabindex="-1" data-asks>${sentence}</p><p class="match-buttons">${
    unlogged?.proposed ? html`<button type="button" data-went-in="proposed">Yes</button> ` : ''
  }<button class="quiet" type="button" data-went-in="else">Something else</button> <button class="quiet" type="button" data-went-in="nothing">Nothing</button></p></div>`;
}
