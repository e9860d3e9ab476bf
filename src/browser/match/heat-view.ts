/**
 * The heat of a cup on the Match page: what a round asks of it, and what was too much.
 *
 * @packageDocumentation
 */
import { heatWarnings } from '../../cup/heat-warnings.ts';
import { HELD } from '../../cup/heats-borne.ts';
import { type Html, html } from '../../render/html.ts';
import { temperatureText } from '../../render/words.ts';
import { ordinal } from '../../units/ordinal.ts';
import { heatWarningSentences } from '../../words/heat-warnings.ts';
import type { CupDraft } from './drafts.ts';
import { type MatchShown, titleIn } from './shown.ts';
import type { CupNow } from './work-log.ts';

const TIMES = ['no', 'once', 'twice', '3 times', '4 times', '5 times', '6 times', '7 times', '8 times', '9 times'];

/** How a cup was heated for a round: how often, how hot, how long. */
export function heatFields(
  id: string,
  { heat = '', again, held = '' }: CupDraft,
  { heats }: Pick<CupNow, 'heats'>,
  { data: { settings } }: MatchShown,
): Html {
  // A cup that was looked at cold cannot be poured without.
  const times = again ?? (heats.cooled === true ? '1' : '0');
  const { temperature } = settings;
  return html`<details class="match-heats"><summary>Heat: <span>${heat === '' && held === '' ? '' : 'noted, '}${times === '0' ? `${ordinal(heats.heats)} heat` : `heated again ${TIMES[Number(times)]}`}</span></summary><div class="match-fields match-heat">
<p class="field"><label for="${id}-again">Reheated for it</label><select id="${id}-again" name="again" aria-describedby="${id}-heats">${TIMES.map((each, count) => html`<option value="${count}"${String(count) === times ? html` selected` : ''}>${each}</option>`)}</select><span class="fine" id="${id}-heats">So far: ${ordinal(heats.heats)} heat</span></p>
<p class="field"><label for="${id}-heat">Hottest, ${temperature}</label><input id="${id}-heat" type="text" inputmode="decimal" autocomplete="off" name="heat" value="${heat}" placeholder="not noted"></p>
<p class="field"><label for="${id}-held">Minutes above ${temperatureText(HELD.above, settings)}</label><input id="${id}-held" type="text" inputmode="decimal" autocomplete="off" name="held" value="${held}" placeholder="not noted"></p></div></details>`;
}

/** What was too much of heat for a cup, as `check` tells it; nothing where nothing was. */
export function heatWarningsView(now: Pick<CupNow, 'rounds' | 'last' | 'heats'>, shown: MatchShown): Html {
  const warnings = heatWarnings(now, (id) => shown.materials.get(id));
  const said = heatWarningSentences(warnings, shown.data.settings, (id) => titleIn(shown, id));
  return said.length === 0
    ? html``
    : html`<p class="match-heat-warning" role="note"><strong>Too much heat.</strong> ${said.join(' ')}</p>`;
}
