import type { Cup, Round } from '../../book/model/cup.ts';
import { type Html, html } from '../html.ts';
import { chipColours, chips } from '../swatch/chip.ts';
import { deltaEText, sentence } from '../words.ts';

/** A round as a swatch, and before it how far it is from the round before. */
function link({ number, look, change }: Round): Html {
  const step = change === undefined ? '' : html`<span class="chain-step">ΔE ${deltaEText(change.deltaE)}</span>`;
  return html`<li>${step}<span class="chain-round"><span class="chain-chip">${chips([chipColours(look)], '')}</span>Round ${number}</span></li>`;
}

/** The rounds of each cup that has a log, one after the other, with the ΔE from one to the next; nothing where no cup has one. */
export function roundChains(cups: readonly Cup[]): Html {
  const logged = cups.filter(({ rounds }) => rounds.length > 0);
  if (logged.length === 0) return html``;
  return html`<div class="chains">${logged.map(({ name, rounds }) => {
    const title = cups.length > 1 ? `${sentence(name)}, round by round` : 'Round by round';
    return html`<div class="chain"><h3>${title}</h3><ol class="chain-rounds">${rounds.map(link)}</ol></div>`;
  })}<p class="fine">Predicted colours, over white above and over black below. ΔE is the change from the round before.</p></div>`;
}
