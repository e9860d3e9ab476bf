import { colourApart } from '../../book/recipes/colour-apart.ts';
import { hexWords } from '../../words/colour.ts';
import { differenceView } from '../difference-view.ts';
import { type Html, html } from '../html.ts';

/**
 * How far off a colour may be, as a row: two real colours that are so far apart in its hue, how that looks, and what it means.
 *
 * @param hex `#rrggbb`, the colour that is off
 * @param deltaE by how much, ΔE00
 */
export function pairApart(title: string, hex: string, deltaE: number, meaning: Html | string): Html {
  const other = colourApart(hex, deltaE);
  const [one, two] = [hexWords(hex), hexWords(other)];
  const said = one === two ? `Two colours, both ${one}` : `A ${one} and a ${two}`;
  return html`<li class="apart"><svg class="apart-pair" role="img" aria-label="${said}" width="100%" height="100%"><rect width="50.5%" height="100%" fill="${hex}"/><rect x="50%" width="50%" height="100%" fill="${other}"/></svg><div><h3>${title}</h3><p class="apart-size">${differenceView(deltaE)}</p><p class="fine">${meaning}</p></div></li>`;
}
