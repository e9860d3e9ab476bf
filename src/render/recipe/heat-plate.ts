import type { Settings } from '../../book/model.ts';
import type { Heat } from '../../book/recipes/heat-of.ts';
import { heatBesidesLimit, limitWords } from '../../words/heat.ts';
import { type Html, html } from '../html.ts';
import { unbroken, unitsKept } from '../unbroken.ts';
import { sentence } from '../words.ts';

/** The highest temperature of a recipe, large enough to be read from where the pot stands, and below it what else the suppliers say of the heat. */
export function heatPlate(
  heat: Heat,
  settings: Pick<Settings, 'temperature'>,
  title: (material: string) => string,
): Html {
  const highest = limitWords(heat, settings, title);
  const others = heatBesidesLimit(heat, settings, title).map(unitsKept).join(' ');
  const most =
    highest === undefined
      ? ''
      : html`<p class="heat-most"><strong><span>${highest.never}</span> <b class="heat-degrees">${unbroken(highest.degrees)}</b></strong> <span>${sentence(highest.because)}.</span></p>`;
  return html`<div class="heat-plate">${most}${others === '' ? '' : html`<p class="heat">${others}</p>`}</div>`;
}
