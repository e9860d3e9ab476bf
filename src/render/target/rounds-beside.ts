import type { MatchedRound } from '../../book/model/target.ts';
import { verdictText } from '../../words/verdict.ts';
import { type Html, html } from '../html.ts';
import { type ChipColours, chips, chipWords } from '../swatch/chip.ts';
import { deltaEText, listText, sentence } from '../words.ts';
import { matchChart } from './match-chart.ts';

const MOVED: Readonly<Record<NonNullable<MatchedRound['moved']>, string>> = {
  thickness: 'Seen at a different thickness from the target, and converted by the model.',
  laminate: 'Seen on its own; the model shows how it would look in the finished bait, with the other cup behind it.',
};

/** Rounds beside the colour that they are to have, and how they came nearer; `level` is that of their headings. */
export function roundsBeside(
  rounds: readonly MatchedRound[],
  wanted: ChipColours,
  name: string,
  tolerance: number,
  level: 4 | 5 = 4,
): Html {
  const hasSeen = rounds.some(({ basis }) => basis === 'seen');
  return html`<ol class="rounds">${rounds.map((round) => roundBeside(round, wanted, { name, hasSeen, level }))}</ol>${roundsChart(rounds, name, tolerance)}`;
}

/** How rounds came nearer, as a chart; nothing of fewer than two. */
export function roundsChart(rounds: readonly MatchedRound[], name: string, tolerance: number): Html {
  if (rounds.length < 2) return html``;
  return html`<figure class="match-figure">${matchChart(rounds, tolerance, name)}<figcaption>Distance to the target after each round, overall and part by part (ΔE). Dotted: the tolerance, ${deltaEText(tolerance)}.</figcaption></figure>`;
}

function roundBeside(
  { number, basis, moved, overWhite, overBlack, verdict }: MatchedRound,
  wanted: ChipColours,
  { name, hasSeen, level }: { readonly name: string; readonly hasSeen: boolean; readonly level: number },
): Html {
  const shown = { ...(overWhite && { overWhite: overWhite.hex }), ...(overBlack && { overBlack: overBlack.hex }) };
  const how = basis === 'seen' ? 'seen' : 'predicted';
  const differences = [
    ...(verdict.overWhite === undefined ? [] : [`${deltaEText(verdict.overWhite)} over white`]),
    ...(verdict.overBlack === undefined ? [] : [`${deltaEText(verdict.overBlack)} over black`]),
  ];
  return html`<li class="round"><div class="round-chips"><div class="pair">${chips([wanted, shown], `${name}, round ${number}`, ['target', how])}</div>${chipWords('target', how)}</div><div class="round-words"><h${level}>Round ${number} <span class="round-change">ΔE ${listText(differences)}, ${how}</span></h${level}><p>${sentence(verdictText(verdict))}.</p>${
    moved === undefined ? '' : html`<p class="fine">${MOVED[moved]}</p>`
  }${
    basis === 'predicted' && hasSeen
      ? html`<p class="fine">No look was logged for this round: this is the prediction, corrected by the rounds that have one.</p>`
      : ''
  }</div></li>`;
}
