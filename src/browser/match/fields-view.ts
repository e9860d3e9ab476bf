/**
 * The forms of the Match page that change with the match: the target's sides, and a test pour.
 *
 * @packageDocumentation
 */

import { type Html, html } from '../../render/html.ts';
import { matchSide, THREE_PHOTOS } from '../../render/match-side.ts';
import type { MatchPageData } from '../../render/pages/match.ts';
import { chips } from '../../render/swatch/chip.ts';
import { sentence, volumeText } from '../../render/words.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import type { CupShown } from './cup-shown.ts';
import type { CupDraft } from './drafts.ts';
import { heatFields } from './heat-view.ts';
import { howSeenView, wholeIn } from './how-seen-view.ts';
import { MOST } from './limits.ts';
import { type MeasuredBy, measuredText } from './measured-by.ts';
import { dosedIn } from './page-shelf.ts';
import { viewsOf } from './proposal-view.ts';
import type { MatchShown } from './shown.ts';
import { sideFlakeView, sidePlasticView } from './side-flake-view.ts';
import { lengthUnit, thicknessInField } from './thickness-field.ts';
import { isSaid, type Work } from './work.ts';
import { colourText, hexOfColour, typedColour } from './work-colour.ts';

/** What the chooser opens with before anything was said: no colour that could pass for what was seen. */
export const UNSAID = '#808080';

/** A colour to be chosen, by the eye or by its digits; no digits as long as nothing was said. */
function colourField(id: string, name: string, label: string, digits: string): Html {
  const colour = typedColour(digits);
  const value = colour === undefined ? UNSAID : hexOfColour(colour);
  return html`<p class="colour-field"><label for="${id}">${label}</label><input id="${id}" type="color" name="${name}" value="${value}"><input id="${id}-digits" type="text" aria-label="${label}, as # and six digits, or L, a, b" data-hex-of="${id}" value="${digits}" placeholder="not entered" maxlength="40" spellcheck="false" autocomplete="off"><button class="quiet" type="button" data-photo-for="${id}" aria-label="${label}, from a photo">Photo</button></p>`;
}

/** What is said beside the button that measures a colour on photos, before it is typed. */
export function measuredSays(of: 'side' | 'round', measured: MeasuredBy | undefined): string {
  if (measured === undefined) return of === 'side' ? THREE_PHOTOS : 'A photo on the measuring card says both colours.';
  const more = of === 'side' && measured.photos < 3 ? ' Three photos make it surer.' : '';
  return `${sentence(measuredText(measured))}.${more}`;
}

/** The colours of a target, to be photographed, picked or typed. */
export function sidesView({ sides, arrangement }: Work, data: MatchPageData): Html {
  const unit = data.settings;
  const many = sides.length > 1;
  return html`${sides.map((side, index) => {
    const { name, overWhite, overBlack, measured, thicknessMm, flakes = [] } = side;
    const id = `side-${index}`;
    // Until a colour is said, both are asked for.
    const black = overBlack !== undefined || overWhite === undefined;
    const typed = html`<div class="match-side-fields">${many ? html`<p class="field wide"><label for="${id}-name">Name of the cup</label><input id="${id}-name" type="text" name="name" value="${name}" maxlength="40" autocomplete="off"></p>` : ''}
${colourField(`${id}-white`, 'overWhite', 'Over white', overWhite === undefined ? '' : colourText(overWhite))}
<p class="check"><input id="${id}-saw" type="checkbox" name="sawBlack"${black ? html` checked` : ''}><label for="${id}-saw">Seen over black too (needed to match how see-through it is)</label></p>
<div data-black${black ? '' : html` hidden`}>${colourField(`${id}-black`, 'overBlack', 'Over black', overBlack === undefined ? '' : colourText(overBlack))}</div>
<p class="field"><label for="${id}-thickness">Thickness${arrangement === 'together' ? ' of the whole bait' : ''}, ${lengthUnit(unit)}</label><input id="${id}-thickness" type="text" inputmode="decimal" autocomplete="off" name="thicknessMm" value="${thicknessInField(thicknessMm, unit)}"></p>
${many ? sidePlasticView(side, id, data) : ''}</div><div class="match-flakes">${sideFlakeView(flakes, id, many ? name : '')}</div>`;
    return matchSide({
      index,
      says: measuredSays('side', measured),
      typed,
      ...(many ? { name } : {}),
      ...(isSaid(side) ? { swatch: chips([viewsOf(side)], '') } : {}),
    });
  })}`;
}

/** The forms of a cup: what was seen of a test pour and how, and anything else that was added. */
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
  const { overWhite = '', overBlack = '', sawWhite = true, sawBlack = side.overBlack !== undefined } = draft;
  const { material: chosen, amount = '', addedMl = '', beforeRound = false } = draft;
  const isOpen = amount !== '' || addedMl !== '' || (beforeRound && lastRound !== undefined);
  const whole = wholeIn({ work, whole: shown.whole });
  return html`<h3>${whole ? `The ${side.name} of the bait` : 'A test pour'}</h3>${alone ? html`<div class="match-alone"><div class="match-chip">${chips([alone], '')}</div><p>Poured by itself, this cup should look about like this: ${alone.overWhite} over white, ${alone.overBlack} over black. It is a help, not the target.</p></div>` : ''}
<div class="match-fields match-seen"><div><p class="check"><input id="${id}-saw-white" type="checkbox" name="sawWhite"${sawWhite ? html` checked` : ''}><label for="${id}-saw-white">I looked at it over white</label></p>
${sawWhite ? colourField(`${id}-white`, 'overWhite', 'Seen over white', overWhite) : ''}</div>
<div><p class="check"><input id="${id}-saw-black" type="checkbox" name="sawBlack"${sawBlack ? html` checked` : ''}><label for="${id}-saw-black">I looked at it over black</label></p>
${sawBlack ? colourField(`${id}-black`, 'overBlack', 'Seen over black', overBlack) : ''}</div></div>
<div data-how-shown>${howSeenView(looked, `${id}-how`, data.settings, whole)}</div>
${heatFields(id, draft, now, shown)}
<p class="field wide"><label for="${id}-note">Note</label><input id="${id}-note" type="text" name="note" maxlength="${MOST.note}" autocomplete="off" value="${draft.note ?? ''}"></p>
<details class="match-else"${isOpen ? html` open` : ''}><summary>I added something else</summary>${
    lastRound === undefined
      ? ''
      : html`<p class="check"><input id="${id}-before" type="checkbox" name="beforeRound"${beforeRound ? html` checked` : ''}><label for="${id}-before">It went in before round ${lastRound}</label></p>`
  }<div class="match-fields">
<p class="field wide"><label for="${id}-material">Material</label><select id="${id}-material" name="material">${materials.map(({ id: material, title: name }) => html`<option value="${material}"${material === chosen ? html` selected` : ''}>${name}</option>`)}</select></p>
<p class="field"><label for="${id}-amount">Amount</label><input id="${id}-amount" type="text" name="amount" placeholder="3 drops" maxlength="${MOST.dose}" autocomplete="off" value="${amount}"></p>
<p class="field"><button class="quiet" type="button" data-add-else>Log the material</button></p></div><div class="match-fields">
<p class="field"><label for="${id}-plastic">Plastic, ${volume}</label><input id="${id}-plastic" type="text" inputmode="decimal" autocomplete="off" name="addedMl" value="${addedMl}"></p>
<p class="field"><button class="quiet" type="button" data-add-plastic>Log the plastic</button></p></div></details>`;
}

/**
 * What a round cannot do without, within thumb's reach: how much was poured, the photos, and the button that logs it.
 *
 * @param later something else is to be done first, so that it waits at the end of the cup
 */
export function roundBar(
  index: number,
  draft: CupDraft,
  { work, later = false }: Pick<CupShown, 'work'> & { readonly later?: boolean },
  shown: MatchShown,
): Html {
  const { data, whole } = shown;
  if (work.arrangement === 'together' && whole === undefined) return whatPouredView(index, work);
  const id = `cup-${index}`;
  const { title, shotMl } = required(data.molds, work.mold);
  const isWhole = wholeIn({ work, whole }) === true;
  const drafts = isWhole ? work.cups.map((_, at) => (at === index ? draft : (shown.drafts?.[at] ?? {}))) : [draft];
  const said = drafts.map((each) => {
    const { overWhite = '', overBlack = '' } = each;
    return defined({ overWhite: typedColour(overWhite), overBlack: typedColour(overBlack) });
  });
  const isAsked = said.some((each) => Object.keys(each).length === 0);
  const poured = isWhole ? `Of each, ${data.settings.volume}` : `Poured, ${data.settings.volume}`;
  const photos = drafts.map(({ measured }, at) => {
    const of = isWhole ? at : index;
    const has = Object.keys(said[at]!).length > 0;
    return html`<p class="match-snap"><button${has ? html` class="quiet"` : ''} type="button" id="${id}-measure-${of}" data-of="${of}" data-photo-for="cup-${of}-white">${isWhole ? html`<span class="unseen-words">Photograph the </span>${sentence(work.cups[at]!.name)}` : html`Photograph<span class="unseen-words"> the test pour</span>`}</button> <span class="match-bar-swatch">${has ? chips([viewsOf(said[at]!)], '') : ''}</span><span class="unseen-words" data-measured-says>${measuredSays('round', measured)}</span></p>`;
  });
  return html`<div class="match-bar match-round${isWhole ? ' match-whole' : ''}${later ? ' match-later' : ''}"><p class="field"><label for="${id}-pour">${poured}</label><input id="${id}-pour" type="text" inputmode="decimal" autocomplete="off" name="pour" value="${draft.pour ?? ''}"></p>
<p class="match-shot-of"><button class="quiet" type="button" data-one-shot>One shot<span class="unseen-words"> of ${title}</span>: ${volumeText(isWhole ? shotMl / 2 : shotMl, data.settings)}</button></p>
${photos}
<p class="match-log-it"><button${isAsked ? html` class="quiet"` : ''} type="button" data-note-round>Log this round</button></p></div>`;
}

/** Which is meant, of a bait with two sides, before anything is taken for seen. */
function whatPouredView(index: number, work: Pick<CupShown['work'], 'cups'>): Html {
  const id = `cup-${index}-poured`;
  return html`<div class="match-bar match-round" role="group" aria-labelledby="${id}"><p class="match-what" id="${id}">What are you pouring to look at?</p><p><button type="button" data-poured="whole">The finished bait</button></p><p><button type="button" data-poured="alone">The ${work.cups[index]!.name} alone</button></p></div>`;
}
