import { type Html, html } from '../../render/html.ts';
import { howWords } from '../../render/look-words.ts';
import { lengthText } from '../../units/length-text.ts';
import type { VolumeUnit } from '../../units/volume-text.ts';
import { AFTERS, type HowSeen } from './how-seen.ts';
import { lengthUnit, thicknessInField } from './thickness-field.ts';
import type { Work } from './work.ts';

// A step of a chip that many pour; common practice, no source.
const CHIP_MM = 3;

const AFTER_WORDS: Readonly<Record<(typeof AFTERS)[number], string>> = {
  hot: 'While it was hot',
  '10 min': 'After 10 minutes',
  'next day': 'The next day',
};

/** Whether finished baits are looked at; undefined of a match of one cup, or of two that are compared by themselves. */
export function wholeIn({
  work,
  whole,
}: {
  readonly work: Pick<Work, 'arrangement'>;
  readonly whole?: boolean | undefined;
}): boolean | undefined {
  return work.arrangement === 'together' ? whole : undefined;
}

/**
 * How a test pour was looked at: asked once, then folded, with the last answer on the fold.
 *
 * @param how unset: never answered yet
 * @param whole whether finished baits are looked at; unset: of a bait of one cup, or not answered yet
 */
export function howSeenView(how: HowSeen | undefined, id: string, unit: VolumeUnit, whole?: boolean): Html {
  const { thicknessMm, after, wet } = how ?? {};
  const chip = thicknessMm !== undefined && !whole;
  return html`<details class="match-how${how === undefined ? ' match-how-asked' : ''}" data-how${how === undefined ? html` open` : ''}><summary>How you looked: <span>${answerText(how ?? {}, unit, whole)}</span></summary><div class="match-fields">
<p class="field wide"><label for="${id}-what">At</label><select id="${id}-what" name="howWhat">${whole === undefined ? '' : html`<option value="whole"${whole ? html` selected` : ''}>the finished bait</option>`}<option value="bait"${whole === false && !chip ? html` selected` : ''}>${whole === undefined ? 'a bait of this mold' : 'this cup alone, as a bait'}</option><option value="chip"${chip ? html` selected` : ''}>${whole === undefined ? 'a chip' : 'this cup alone, as a chip'}</option></select></p>
${chip ? html`<p class="field"><label for="${id}-chip">Thickness of the chip, ${lengthUnit(unit)}</label><input id="${id}-chip" type="text" inputmode="decimal" autocomplete="off" name="howChip" value="${thicknessInField(thicknessMm, unit)}"></p>` : ''}
<p class="field"><label for="${id}-after">When</label><select id="${id}-after" name="howAfter"><option value="">not said</option>${AFTERS.map((each) => html`<option value="${each}"${each === after ? html` selected` : ''}>${AFTER_WORDS[each]}</option>`)}</select></p>
<p class="check"><input id="${id}-wet" type="checkbox" name="howWet"${wet ? html` checked` : ''}><label for="${id}-wet">It was wet</label></p></div></details>`;
}

/** What a chip begins with, as its field shows it. */
export function usualChip(unit: VolumeUnit): string {
  return thicknessInField(unit.volume === 'ml' ? CHIP_MM : INCH_CHIP_MM, unit);
}

// 1/8 in
const INCH_CHIP_MM = 3.175;

function answerText(how: HowSeen, unit: VolumeUnit, whole: boolean | undefined): string {
  const { thicknessMm: _, ...others } = how;
  const bait = whole ? 'the finished bait' : whole === false ? 'this cup alone' : 'a bait';
  const what = how.thicknessMm === undefined || whole ? bait : `a chip of ${lengthText(how.thicknessMm, unit)}`;
  return [what, ...(how.wet ? [] : ['dry']), ...howWords(others, unit)].join(', ');
}
