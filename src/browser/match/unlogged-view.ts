import { type Html, html } from '../../render/html.ts';
import { whatWentInText } from '../../words/what-went-in.ts';
import type { CupAdvice } from './ask.ts';
import type { MatchShown } from './shown.ts';

/**
 * What is asked of a round whose colour moved with nothing logged, in the place of the advice: nothing is to be made of it until then.
 *
 * @param index of the cup
 */
export function unloggedView({ next: { advice }, unlogged }: CupAdvice, index: number, { data }: MatchShown): Html {
  if (advice.kind !== 'ask-what-went-in') return html``;
  const id = `cup-${index}-asks`;
  return html`<div class="match-asks" role="group" aria-labelledby="${id}"><p class="match-next" id="${id}" tabindex="-1" data-asks>${whatWentInText(advice.asks, data.settings)}</p><p class="match-buttons">${
    unlogged?.proposed ? html`<button type="button" data-went-in="proposed">Yes</button> ` : ''
  }<button class="quiet" type="button" data-went-in="else">Something else</button> <button class="quiet" type="button" data-went-in="nothing">Nothing</button></p></div>`;
}
