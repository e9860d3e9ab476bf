/**
 * The forms of the Match page that change with the match: the target's sides, and a test pour.
 *
 * @packageDocumentation
 */

import { type Html, html } from '../../render/html.ts';
import type { MatchPageData } from '../../render/pages/match.ts';
import { chips } from '../../render/swatch/chip.ts';
import { sentence, volumeText } from '../../render/words.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import type { CupShown } from './cup-shown.ts';
import type { CupDraft } from './drafts.ts';
import { heatFields } from './heat-view.ts';
import { howSeenView } from './how-seen-view.ts';
import { MOST } from './limits.ts';
import { type MeasuredBy, measuredText } from './measured-by.ts';
import { dosedIn } from './page-shelf.ts';
import { viewsOf } from './proposal-view.ts';
import type { MatchShown } from './shown.ts';
import { sideFlakeView, sidePlasticView } from './side-flake-view.ts';
import { lengthUnit, thicknessInField, thicknessLimits } from './thickness-field.ts';
import type { Work } from './work.ts';
import { colourText, hexOfColour, typedColour } from './work-colour.ts';

// What the chooser opens with before anything was said: no colour that could pass for what was seen.
const UNSAID = '#808080';

/** A colour to be chosen, by the eye or by its digits; no digits as long as nothing was said. */
function colourField(id: string, name: string, label: string, digits: string): Html {
  const colour = typedColour(digits);
  const value = colour === undefined ? UNSAID : hexOfColour(colour);
  return html`<p class="colour-field"><label for="${id}">${label}</label><input id="${id}" type="color" name="${name}" value="${value}"><input id="${id}-digits" type="text" aria-label="${label}, as # and six digits, or L, a, b" data-hex-of="${id}" value="${digits}" placeholder="not entered" maxlength="40" spellcheck="false" autocomplete="off"><button class="quiet" type="button" data-photo-for="${id}" aria-label="${label}, from a photo">Photo</button></p>`;
}

/** What is said beside the button that measures a colour on photos, before it is typed. */
export function measuredSays(of: 'side' | 'round', measured: MeasuredBy | undefined): string {
  if (measured === undefined)
    return of === 'side'
      ? 'Three photos on the measuring card say it best.'
      : 'A photo on the measuring card says both colours.';
  const more = of === 'side' && measured.photos < 3 ? ' Three photos make it surer.' : '';
  return `${sentence(measuredText(measured))}.${more}`;
}

/** Where it is measured; `what` ends the name of the button. */
function measureField(
  id: string,
  field: string,
  { of, what }: { readonly of: 'side' | 'round'; readonly what: string },
  measured: MeasuredBy | undefined,
): Html {
  return html`<p class="match-measure"><button class="quiet" type="button" id="${id}-measure" data-photo-for="${field}">Measure${what} by photo</button> <span class="fine" data-measured-says>${measuredSays(of, measured)}</span></p>`;
}

/** The colours of a target, to be described. */
export function sidesView({ sides, arrangement }: Work, data: MatchPageData): Html {
  const unit = data.settings;
  const many = sides.length > 1;
  const { least, most } = thicknessLimits(unit);
  return html`${sides.map((side, index) => {
    const { name, overWhite, overBlack, measured, thicknessMm, flakes = [] } = side;
    const id = `side-${index}`;
    return html`<fieldset class="match-side" data-side="${index}"><legend>${many ? sentence(name) : 'Its colour'}</legend>
<div class="match-swatch">${chips([viewsOf({ overWhite, ...defined({ overBlack }) })], '')}</div>
<div class="match-side-fields">${measureField(`${id}`, `${id}-white`, { of: 'side', what: many ? ` the ${name}` : '' }, measured)}${many ? html`<p class="field wide"><label for="${id}-name">Name of the cup</label><input id="${id}-name" type="text" name="name" value="${name}" maxlength="40" autocomplete="off"></p>` : ''}
${colourField(`${id}-white`, 'overWhite', 'Over white', colourText(overWhite))}
<p class="check"><input id="${id}-saw" type="checkbox" name="sawBlack"${overBlack === undefined ? '' : html` checked`}><label for="${id}-saw">Seen over black too (needed to match how see-through it is)</label></p>
${overBlack === undefined ? '' : colourField(`${id}-black`, 'overBlack', 'Over black', colourText(overBlack))}
<p class="field"><label for="${id}-thickness">Thickness${arrangement === 'together' ? ' of the whole bait' : ''}, ${lengthUnit(unit)}</label><input id="${id}-thickness" type="number" inputmode="decimal" name="thicknessMm" min="${least}" max="${most}" step="any" value="${thicknessInField(thicknessMm, unit)}"></p>
${many ? sidePlasticView(side, id, data) : ''}</div><div class="match-flakes">${sideFlakeView(flakes, id, many ? name : '')}</div></fieldset>`;
  })}`;
}

/** The forms of a cup: a test pour with what was seen, and anything else that was added. */
export function roundForms(
  index: number,
  draft: CupDraft,
  { side, alone, work, advice: { now } }: Pick<CupShown, 'side' | 'alone' | 'work' | 'advice'>,
  shown: MatchShown,
): Html {
  const { data, looked } = shown;
  const id = `cup-${index}`;
  // What is noted now may be what was forgotten before the last look.
  const lastRound = now.seen && now.rounds.at(-1)?.number;
  const { volume } = data.settings;
  const plastics = new Set(data.materials.flatMap(({ id: each, kind }) => (kind === 'plastic' ? [each] : [])));
  const materials = [...dosedIn(data).values()].filter((each) => !plastics.has(each.id));
  const { title, shotMl } = required(data.molds, work.mold);
  const { overWhite = '', overBlack = '', sawWhite = true, sawBlack = side.overBlack !== undefined } = draft;
  const { measured } = draft;
  const { material: chosen, amount = '', addedMl = '', beforeRound = false } = draft;
  const isOpen = amount !== '' || addedMl !== '' || (beforeRound && lastRound !== undefined);
  return html`<fieldset class="match-looked" data-round><legend>A test pour</legend>${alone ? html`<div class="match-alone"><div class="match-chip">${chips([alone], '')}</div><p>Poured by itself, this cup should look about like this: ${alone.overWhite} over white, ${alone.overBlack} over black. It is a help, not the target.</p></div>` : ''}
<div class="match-fields"><p class="field"><label for="${id}-pour">Poured, ${volume}</label><input id="${id}-pour" type="number" inputmode="decimal" name="pour" min="0" step="any" value="${draft.pour ?? ''}" aria-describedby="${id}-shot"><span class="fine" id="${id}-shot">One shot of ${title}: ${volumeText(shotMl, data.settings)}</span></p>
${measureField(id, `${id}-white`, { of: 'round', what: ' the test pour' }, measured)}
<div><p class="check"><input id="${id}-saw-white" type="checkbox" name="sawWhite"${sawWhite ? html` checked` : ''}><label for="${id}-saw-white">I looked at it over white</label></p>
${sawWhite ? colourField(`${id}-white`, 'overWhite', 'Seen over white', overWhite) : ''}</div>
<div><p class="check"><input id="${id}-saw-black" type="checkbox" name="sawBlack"${sawBlack ? html` checked` : ''}><label for="${id}-saw-black">I looked at it over black</label></p>
${sawBlack ? colourField(`${id}-black`, 'overBlack', 'Seen over black', overBlack) : ''}</div></div>
${heatFields(id, draft, now, shown)}
<div data-how-shown>${howSeenView(looked, `${id}-how`, data.settings)}</div>
<p class="field wide"><label for="${id}-note">Note</label><input id="${id}-note" type="text" name="note" maxlength="${MOST.note}" autocomplete="off" value="${draft.note ?? ''}"></p>
<p class="match-buttons"><button type="button" data-note-round>Log this round</button></p></fieldset>
<details class="match-else"${isOpen ? html` open` : ''}><summary>I added something else</summary>${
    lastRound === undefined
      ? ''
      : html`<p class="check"><input id="${id}-before" type="checkbox" name="beforeRound"${beforeRound ? html` checked` : ''}><label for="${id}-before">It went in before round ${lastRound}</label></p>`
  }<div class="match-fields">
<p class="field wide"><label for="${id}-material">Material</label><select id="${id}-material" name="material">${materials.map(({ id: material, title: name }) => html`<option value="${material}"${material === chosen ? html` selected` : ''}>${name}</option>`)}</select></p>
<p class="field"><label for="${id}-amount">Amount</label><input id="${id}-amount" type="text" name="amount" placeholder="3 drops" maxlength="${MOST.dose}" autocomplete="off" value="${amount}"></p>
<p class="field"><button class="quiet" type="button" data-add-else>Log the material</button></p></div><div class="match-fields">
<p class="field"><label for="${id}-plastic">Plastic, ${volume}</label><input id="${id}-plastic" type="number" inputmode="decimal" name="addedMl" min="0" step="any" value="${addedMl}"></p>
<p class="field"><button class="quiet" type="button" data-add-plastic>Log the plastic</button></p></div></details>`;
}
