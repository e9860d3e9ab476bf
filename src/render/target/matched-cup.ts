import type { CupMatch, MatchedRound, Target } from '../../book/model.ts';
import { type Html, html } from '../html.ts';
import type { PageContext } from '../page.ts';
import { type ChipColours, chips } from '../swatch/chip.ts';
import { deltaEText, listText, moneyText, sentence, volumeText } from '../words.ts';
import { matchChart } from './match-chart.ts';

const MOVED: Readonly<Record<NonNullable<MatchedRound['moved']>, string>> = {
  thickness: 'Seen at another thickness than the target, and moved to that by the model.',
  laminate: 'Seen by itself, and shown as the finished bait would show it, with the other cup behind it, by the model.',
};

/** The rounds of a cup beside its part of the target, how they came nearer, and what to add to what is left. */
export function matchedCup(context: PageContext, target: Target, title: string, match: CupMatch): Html {
  const part = target.parts.find(({ name }) => name === match.part)!;
  const wanted = { overWhite: part.overWhite.hex, ...(part.overBlack && { overBlack: part.overBlack.hex }) };
  const name = target.parts.length > 1 ? `${title}, ${match.cup}` : title;
  return html`<div class="matched"><ol class="rounds">${match.rounds.map((round) => matchedRound(round, wanted, name))}</ol>${
    match.rounds.length < 2
      ? ''
      : html`<figure class="match-figure">${matchChart(match.rounds, target.tolerance, name)}<figcaption>How far each round was from the target, in all and part by part, ΔE. The thin rule is the tolerance, ${deltaEText(target.tolerance)}.</figcaption></figure>`
  }${nextStep(context, match)}</div>`;
}

function matchedRound(
  { number, basis, moved, overWhite, overBlack, verdict }: MatchedRound,
  wanted: ChipColours,
  name: string,
): Html {
  const shown = { ...(overWhite && { overWhite: overWhite.hex }), ...(overBlack && { overBlack: overBlack.hex }) };
  const how = basis === 'seen' ? 'seen' : 'predicted';
  const differences = [
    ...(verdict.overWhite === undefined ? [] : [`${deltaEText(verdict.overWhite)} over white`]),
    ...(verdict.overBlack === undefined ? [] : [`${deltaEText(verdict.overBlack)} over black`]),
  ];
  return html`<li class="round"><div class="round-chips"><div class="pair">${chips([wanted, shown], `${name}, round ${number}: the target on the left, as ${how} on the right; over white above, over black below`)}</div><p class="pair-words" aria-hidden="true"><span>target</span><span>${how}</span></p></div><div class="round-words"><h4>Round ${number} <span class="round-change">ΔE ${listText(differences)}</span></h4><p>${sentence(verdict.sentence)}.</p>${
    moved === undefined ? '' : html`<p class="fine">${MOVED[moved]}</p>`
  }</div></li>`;
}

function nextStep({ book }: PageContext, { next }: CupMatch): Html {
  if (!next) return html``;
  const { settings } = book;
  return html`<div class="match-next"><h4>Next</h4><p>${next.sentence}</p>${
    next.proposals.length < 2
      ? ''
      : html`<ol class="proposals">${next.proposals.map(
          ({ sentence: what, left, cost, volumeMl }) =>
            html`<li><p>${what}</p><p class="fine">${left.within ? `Leaves it ${left.sentence}` : `Leaves ΔE ${deltaEText(left.deltaE)}: ${left.sentence}`}. ${volumeText(volumeMl, settings)} in the cup, ${moneyText(cost, settings)}.</p></li>`,
        )}</ol>`
  }</div>`;
}
