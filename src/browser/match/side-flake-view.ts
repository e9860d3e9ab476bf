import { type Html, html } from '../../render/html.ts';
import type { MatchPageData } from '../../render/pages/match.ts';
import { sentence } from '../../render/words.ts';
import { formatDecimal } from '../../units/format-quantity.ts';
import { MOST } from './limits.ts';
import { loadOf, sizeInField, type TypedLoad, type WorkFlake } from './side-flake.ts';
import type { WorkSide } from './work.ts';

const LOADS: readonly (readonly [TypedLoad, string])[] = [
  ['few', 'A few'],
  ['ordinary', 'An ordinary load'],
  ['heavy', 'Heavy'],
  ['share', 'In percent'],
];

/** The flake of a side, a row a kind, with a button for another kind. */
export function sideFlakeView(flakes: readonly WorkFlake[], id: string, whose: string): Html {
  const rows = flakes.map((flake, index) => flakeRow(flake, `${id}-flake-${index}`, index, whose));
  const add =
    flakes.length >= MOST.flakes
      ? ''
      : html`<p class="match-buttons"><button class="quiet" type="button" data-add-flake>${flakes.length === 0 ? 'Add flake' : 'Add another flake'}${whose === '' ? '' : html`<span class="unseen-words"> to the ${whose}</span>`}</button></p>`;
  return html`${rows}${add}`;
}

function flakeRow(flake: WorkFlake, id: string, index: number, whose: string): Html {
  const load = loadOf(flake);
  const name = `Flake ${index + 1}${whose === '' ? '' : ` of the ${whose}`}`;
  return html`<fieldset class="match-flake" data-flake="${index}"><legend>${name}</legend>
<p class="field"><label for="${id}-colour">Colour</label><input id="${id}-colour" type="color" name="flakeColour" value="${flake.hex}"></p>
<p class="field"><label for="${id}-size">Size, as the bag has it</label><input id="${id}-size" type="text" name="flakeSize" value="${sizeInField(flake.sizeMm)}" placeholder="0.040 in" maxlength="${MOST.dose}" autocomplete="off" spellcheck="false"></p>
<p class="field"><label for="${id}-load">How much</label><select id="${id}-load" name="flakeLoad">${LOADS.map(([value, words]) => html`<option value="${value}"${value === load ? html` selected` : ''}>${words}</option>`)}</select></p>
${load === 'share' ? html`<p class="field"><label for="${id}-share">Of what you see, %</label><input id="${id}-share" type="text" inputmode="decimal" autocomplete="off" name="flakeShare" value="${formatDecimal(100 * (flake.coverage ?? 0), 4)}"></p>` : ''}
<p class="field"><button class="quiet" type="button" data-remove-flake="${index}" aria-label="Remove ${name.toLowerCase()}">Remove</button></p></fieldset>`;
}

/** The plastic of a side where there are two: that of the cups, or its own. */
export function sidePlasticView({ name, plastic = '' }: WorkSide, id: string, { materials }: MatchPageData): Html {
  const plastics = materials.filter(({ kind }) => kind === 'plastic');
  if (plastics.length < 2) return html``;
  const option = (value: string, words: string): Html =>
    html`<option value="${value}"${value === plastic ? html` selected` : ''}>${words}</option>`;
  return html`<p class="field wide"><label for="${id}-plastic">${sentence(`plastic of the ${name}`)}</label><select id="${id}-plastic" name="sidePlastic">${option('', 'As chosen for the cups')}${plastics.map(({ id: value, title }) => option(value, title))}</select></p>`;
}
