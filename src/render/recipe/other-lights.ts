import type { Recipe } from '../../book/model/recipe.ts';
import type { RecipeMatch } from '../../book/model/target.ts';
import { type Html, html } from '../html.ts';
import { chipColours, chips } from '../swatch/chip.ts';
import { apartUnderLights, LIGHTS_BASIS } from '../target/under-lights.ts';
import { deltaEText, differenceWords, listText, sentence } from '../words.ts';
import { inFold } from './fold.ts';

type LightView = Recipe['lights'][number];

/** Below this ΔE00 hardly anyone sees a difference, even side by side. */
const SEEN = 1;

/** How a recipe's body holds its colour under other lights, in a few words; empty where none is shown. */
export function lightsGist({ lights }: Pick<Recipe, 'lights'>): string {
  const [first, ...others] = lights;
  if (first === undefined) return '';
  const most = others.reduce((one, other) => (other.deltaE > one.deltaE ? other : one), first);
  return most.deltaE < SEEN ? 'holds its colour under lamps' : `${differenceWords(most.deltaE)} under a ${most.name}`;
}

/** The body in daylight beside the same under a lamp, an LED or a tube; which one is chosen with a radio button, without a script. */
export function otherLights({ lights, body, match }: Recipe): Html {
  const [first] = lights;
  if (first === undefined) return html``;
  const plates = lights.map(
    (view) =>
      html`<div class="light-plate"><div class="light-chips">${chips([chipColours(body), chipColours(view.body)], 'Two lights', ['daylight', view.name])}</div><p class="pair-words" aria-hidden="true"><span>daylight</span><span>${view.name}</span></p></div>`,
  );
  const choices = lights.map(
    (view) =>
      html`<li><label><input type="radio" name="light" value="${view.light}"${view === first ? html` checked` : ''}><span class="light-swatch">${chips([chipColours(view.body)], '')}</span><span class="light-name">${view.name} <span class="fine">${lightChange(view)}</span></span></label></li>`,
  );
  return inFold(
    'lights',
    'Under other lights',
    html`<fieldset class="lights"><legend>Compare the body in daylight with</legend>
<ul class="light-choices">${choices}</ul>
${plates}</fieldset>
${match === undefined ? '' : besideTarget(match)}`,
  );
}

/** How far the cups and their target are apart under these lights. */
function besideTarget({ cups }: RecipeMatch): Html {
  const known = cups.flatMap(({ cup, lights }) => (lights ? [{ cup, lights }] : []));
  const bases = [...new Set(known.map(({ lights }) => lights.basis))];
  return html`${bases.map((basis) => {
    const those = known.filter(({ lights }) => lights.basis === basis);
    const words = those.map(
      ({ cup, lights }) =>
        html`${known.length > 1 ? sentence(cup) : 'It'} differs from its target: ${apartUnderLights(lights)}. `,
    );
    return html`<p>${words}<span class="fine">${LIGHTS_BASIS[basis]}</span></p>`;
  })}`;
}

/** How a light changes the colour, in words with the size. */
function lightChange({ words, deltaE }: LightView): string {
  const size = `ΔE ${deltaEText(deltaE)}`;
  if (deltaE < SEEN) return `no visible change (${size})`;
  return words.length === 0 ? size : `${listText(words)} (${size})`;
}
