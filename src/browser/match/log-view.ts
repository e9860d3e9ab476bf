import { concentrations, isEmpty } from '../../cup/ledger.ts';
import { limitOf } from '../../matching/proposals/proposal.ts';
import { doseIn } from '../../render/dose-text.ts';
import { type Html, html } from '../../render/html.ts';
import { howWords } from '../../render/look-words.ts';
import { sentence, temperatureText, volumeText } from '../../render/words.ts';
import { formatDecimal } from '../../units/format-quantity.ts';
import { usualVolume } from '../../units/usual-volume.ts';
import { noMoreThan } from '../../units/volume-field.ts';
import { cupHeatsText, type HeatUnit, heldText } from '../../words/heats.ts';
import { maxText } from '../../words/limit.ts';
import { measuredText } from './measured-by.ts';
import { isToBeMixed } from './mix-view.ts';
import { type MatchShown, titleIn } from './shown.ts';
import { spoonWords } from './spoon-words.ts';
import { doings, thisCup, type WorkHeat, type WorkStep } from './work.ts';
import { colourText } from './work-colour.ts';
import { type CupNow, roundOfStep } from './work-log.ts';

/** The log of a cup, and what is in it. */
export function logView(
  steps: readonly WorkStep[],
  { cup, volumeMl, rounds, heats }: Pick<CupNow, 'cup' | 'volumeMl' | 'rounds' | 'heats'>,
  shown: MatchShown,
): Html {
  const { settings } = shown.data;
  const heated = heats.heats > 1 || heats.heldMinutes !== undefined;
  const toMix = isToBeMixed({ steps });
  // Of what is to be mixed it stands where it is told to be.
  const limit = toMix ? undefined : limitOf(cup, shown.materials);
  const inside = Object.entries(concentrations(cup)).map(
    ([id, gramsPerMl]) =>
      html`<li><b>${formatDecimal(cup.materials[id]!, 3)} g</b> ${titleIn(shown, id)} <span class="fine">${doseIn({ gramsPerMl }, settings, shown.materials.get(id))} in ${usualVolume(settings).text}</span></li>`,
  );
  return html`<div class="match-log"><div><h3>The log</h3>${
    steps.length === 0
      ? html`<p>Plain plastic.</p>`
      : html`<ol>${linesOf(steps, rounds, shown)}</ol><p class="match-buttons"><button class="quiet" type="button" data-undo>Undo ${lastDone(steps, rounds)}</button></p>`
  }</div><div><h3>${toMix ? 'In the cup once mixed' : 'Really in the cup'}</h3><p>${noMoreThan(Math.max(0, volumeMl), settings)}${isEmpty(cup) ? ': it is empty' : ''}.${limit ? ` ${sentence(maxText(limit.celsius, titleIn(shown, limit.material), settings))}.` : ''}${heated ? ` ${sentence(cupHeatsText(heats, (id) => shown.materials.get(id)))}${heats.heldMinutes === undefined ? '' : `; ${heldText(heats.heldMinutes, settings)}`}.` : ''}</p>${inside.length === 0 ? '' : html`<ul class="match-inside">${inside}</ul>`}</div></div>`;
}

/** What was done last, as the end of "Undo …". */
export function lastDone(steps: readonly WorkStep[], rounds: CupNow['rounds']): string {
  const last = doings(steps).at(-1)?.[0]?.do;
  const { length } = thisCup(steps);
  if (steps.at(-1)?.do === 'see') return `round ${rounds.at(-1)?.number}`;
  if (length === 0) return 'the new cup';
  return length === 1 && isToBeMixed({ steps })
    ? 'the recipe'
    : last === 'pour' || last === 'heat'
      ? 'the last pour'
      : 'the last addition';
}

/** A line for everything that was done in one go. */
function linesOf(steps: readonly WorkStep[], rounds: CupNow['rounds'], shown: MatchShown): Html {
  let first = 0;
  const toMix = isToBeMixed({ steps });
  const [begun] = thisCup(steps);
  const lines = doings(steps).map((together) => {
    const looked = together.some((step) => step.do === 'see');
    const round = roundOfStep(rounds, first);
    first += together.length;
    const words = together.map(
      (step, index) =>
        html`${index > 0 ? '; ' : ''}${stepWords(step, shown, looked || index > 0, toMix && step === begun)}`,
    );
    return html`<li>${looked ? html`Round ${round}: ` : ''}${words}</li>`;
  });
  return html`${lines}`;
}

/** "heated again, to 171 °C, 6 min above 160 °C" */
function heatWords({ celsius, again = 0, heldMinutes }: WorkHeat, settings: HeatUnit): string {
  const times = again > 1 ? ` ${again} times` : '';
  return [
    `heated${again > 0 ? ` again${times}` : ''}${celsius === undefined ? '' : `${again > 0 ? ',' : ''} to ${temperatureText(celsius, settings)}`}`,
    ...(heldMinutes === undefined ? [] : [heldText(heldMinutes, settings)]),
  ].join(', ');
}

function stepWords(step: WorkStep, shown: MatchShown, goesOn: boolean, toMix: boolean): Html {
  const { settings } = shown.data;
  const verb = (word: string): string => (goesOn ? word : sentence(word));
  switch (step.do) {
    case 'add':
      if (step.amounts.length === 0) return html`${verb('nothing went in')}`;
      return html`${verb(toMix ? 'to be mixed:' : 'added')} ${step.amounts.map(({ material, dose }, index) => html`${index > 0 ? ', ' : ''}${titleIn(shown, material)} ${spoonWords(dose, settings)}`)}`;
    case 'new-cup':
      return html`${verb('began a new cup')}`;
    case 'plastic':
      return html`${verb('added')} ${volumeText(step.ml, settings)} of plastic`;
    case 'heat':
      return html`${verb(heatWords(step, settings))}`;
    case 'pour':
      return html`${verb('poured')} ${volumeText(step.ml, settings)}`;
    case 'see':
      return html`${verb('saw')} ${step.behind === undefined ? '' : 'of the finished bait '}${step.overWhite ? `${colourText(step.overWhite)} over white` : ''}${step.overWhite && step.overBlack ? ', ' : ''}${step.overBlack ? `${colourText(step.overBlack)} over black` : ''}${howWords(step, settings).map((words) => `, ${words}`)}${step.measured ? `, ${measuredText(step.measured)}` : ''}${step.checked ? ', looked at twice' : ''}${step.note ? html` <span class="said">“${step.note}”</span>` : ''}`;
  }
}
