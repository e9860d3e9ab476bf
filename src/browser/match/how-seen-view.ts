import { type Html, html } from '../../render/html.ts';
import { howWords } from '../../render/look-words.ts';
import { lengthText } from '../../units/length-text.ts';
import type { VolumeUnit } from '../../units/volume-text.ts';
import { AFTERS, type HowSeen } from './how-seen.ts';
import { lengthUnit, thicknessInField, thicknessLimits } from './thickness-field.ts';

// A step of a chip that many pour; common practice, no source.
const CHIP_MM = 3;

const AFTER_WORDS: Readonly<Record<(typeof AFTERS)[number], string>> = {
  hot: 'While it was hot',
  '10 min': 'After 10 minutes',
  'next day': 'The next day',
};

/**
 * How a test pour was looked at: asked once, then folded, with the last answer on the fold.
 *
 * @param how unset: never answered yet
 */
export function howSeenView(how: HowSeen | undefined, id: string, unit: VolumeUnit): Html {
  const { thicknessMm, after, wet } = how ?? {};
  const { least, most } = thicknessLimits(unit);
  const chip = thicknessMm !== undefined;
  return html`<details class="match-how${how === undefined ? ' match-how-asked' : ''}" data-how${how === undefined ? html` open` : ''}><summary>How you looked: <span>${answerText(how ?? {}, unit)}</span></summary><div class="match-fields">
<p class="field wide"><label for="${id}-what">At</label><select id="${id}-what" name="howWhat"><option value="bait">a bait of this mold</option><option value="chip"${chip ? html` selected` : ''}>a chip</option></select></p>
${chip ? html`<p class="field"><label for="${id}-chip">Thickness of the chip, ${lengthUnit(unit)}</label><input id="${id}-chip" type="number" inputmode="decimal" name="howChip" min="${least}" max="${most}" step="any" value="${thicknessInField(thicknessMm, unit)}"></p>` : ''}
<p class="field"><label for="${id}-after">When</label><select id="${id}-after" name="howAfter"><option value="">not said</option>${AFTERS.map((each) => html`<option value="${each}"${each === after ? html` selected` : ''}>${AFTER_WORDS[each]}</option>`)}</select></p>
<p class="check"><input id="${id}-wet" type="checkbox" name="howWet"${wet ? html` checked` : ''}><label for="${id}-wet">It was wet</label></p></div></details>`;
}

/** What a chip begins with, as its field shows it. */
export function usualChip(unit: VolumeUnit): string {
  return thicknessInField(unit.volume === 'ml' ? CHIP_MM : INCH_CHIP_MM, unit);
}

// 1/8 in
const INCH_CHIP_MM = 3.175;

function answerText(how: HowSeen, unit: VolumeUnit): string {
  const { thicknessMm: _, ...others } = how;
  const what = how.thicknessMm === undefined ? 'a bait' : `a chip of ${lengthText(how.thicknessMm, unit)}`;
  return [what, ...(how.wet ? [] : ['dry']), ...howWords(others, unit)].join(', ');
}
