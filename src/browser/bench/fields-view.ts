/**
 * The forms of the bench page that change with the match: the target's sides, and a test pour.
 *
 * @packageDocumentation
 */
import { type Html, html } from '../../render/html.ts';
import { chips } from '../../render/swatch/chip.ts';
import { sentence } from '../../render/words.ts';
import type { BenchShown } from './shown.ts';
import type { Work, WorkSide } from './work.ts';

/** What was typed for a round and is not noted yet. */
export interface RoundDraft {
  readonly pour?: string;
  readonly overWhite?: string;
  readonly overBlack?: string;
  readonly sawWhite?: boolean;
  readonly sawBlack?: boolean;
  readonly note?: string;
}

/** A colour to be chosen, by the eye or by its digits. */
function colourField(id: string, name: string, label: string, value: string): Html {
  return html`<p class="colour-field"><label for="${id}">${label}</label><input id="${id}" type="color" name="${name}" value="${value}"><input type="text" aria-label="${label}, as # and six digits" data-hex-of="${id}" value="${value}" maxlength="7" spellcheck="false" autocomplete="off"></p>`;
}

/** The colours of a target, to be described. */
export function sidesView({ sides, arrangement }: Work): Html {
  const many = sides.length > 1;
  return html`${sides.map(({ name, overWhite, overBlack, thicknessMm }, index) => {
    const id = `side-${index}`;
    return html`<fieldset class="bench-side" data-side="${index}"><legend>${many ? sentence(name) : 'Its colour'}</legend>
<div class="bench-swatch">${chips([{ overWhite, ...(overBlack === undefined ? {} : { overBlack }) }], '')}</div>
<div class="bench-side-fields">${many ? html`<p class="field wide"><label for="${id}-name">Name of the cup</label><input id="${id}-name" type="text" name="name" value="${name}" maxlength="40" autocomplete="off"></p>` : ''}
${colourField(`${id}-white`, 'overWhite', 'Over white', overWhite)}
<p class="check"><input id="${id}-saw" type="checkbox" name="sawBlack"${overBlack === undefined ? '' : html` checked`}><label for="${id}-saw">Seen over black too: without that, nothing can be said of its thickness</label></p>
${overBlack === undefined ? '' : colourField(`${id}-black`, 'overBlack', 'Over black', overBlack)}
<p class="field"><label for="${id}-mm">Seen at mm${arrangement === 'together' ? ', the whole bait' : ''}</label><input id="${id}-mm" type="number" inputmode="decimal" name="thicknessMm" min="0.1" max="200" step="any" value="${thicknessMm}"></p></div></fieldset>`;
  })}`;
}

/** The forms of a cup: a test pour with what was seen, and anything else that was added. */
export function roundForms(index: number, draft: RoundDraft, side: WorkSide, { data }: BenchShown): Html {
  const id = `cup-${index}`;
  const materials = data.materials.filter(({ kind }) => kind !== 'plastic');
  const {
    overWhite = side.overWhite,
    overBlack = side.overBlack ?? '#303030',
    sawWhite = true,
    sawBlack = side.overBlack !== undefined,
  } = draft;
  return html`<fieldset class="bench-round" data-round><legend>A test pour</legend>
<div class="bench-fields"><p class="field"><label for="${id}-pour">Poured, ml</label><input id="${id}-pour" type="number" inputmode="decimal" name="pour" min="0" step="any" value="${draft.pour ?? ''}"></p>
<div><p class="check"><input id="${id}-saw-white" type="checkbox" name="sawWhite"${sawWhite ? html` checked` : ''}><label for="${id}-saw-white">Looked at it over white</label></p>
${sawWhite ? colourField(`${id}-white`, 'overWhite', 'Seen over white', overWhite) : ''}</div>
<div><p class="check"><input id="${id}-saw-black" type="checkbox" name="sawBlack"${sawBlack ? html` checked` : ''}><label for="${id}-saw-black">Looked at it over black</label></p>
${sawBlack ? colourField(`${id}-black`, 'overBlack', 'Seen over black', overBlack) : ''}</div></div>
<p class="field wide"><label for="${id}-note">Note</label><input id="${id}-note" type="text" name="note" maxlength="300" autocomplete="off" value="${draft.note ?? ''}"></p>
<p class="bench-buttons"><button type="button" data-note-round>Note this round</button></p></fieldset>
<details class="bench-else"><summary>Something else went in</summary><div class="bench-fields">
<p class="field wide"><label for="${id}-material">Material</label><select id="${id}-material" name="material">${materials.map(({ id: material, title }) => html`<option value="${material}">${title}</option>`)}</select></p>
<p class="field"><label for="${id}-amount">Amount</label><input id="${id}-amount" type="text" name="amount" placeholder="3 drops" maxlength="40" autocomplete="off"></p>
<p class="field"><button class="quiet" type="button" data-add-else>Put it in the log</button></p></div><div class="bench-fields">
<p class="field"><label for="${id}-plastic">Plastic, ml</label><input id="${id}-plastic" type="number" inputmode="decimal" name="addedMl" min="0" step="any"></p>
<p class="field"><button class="quiet" type="button" data-add-plastic>Put it in the log</button></p></div></details>`;
}
