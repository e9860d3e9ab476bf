import type { CupMatch, Target } from '../../book/model.ts';
import { type Html, html } from '../html.ts';
import type { PageContext } from '../page.ts';
import { deltaEText, moneyText, volumeText } from '../words.ts';
import { roundsBeside } from './rounds-beside.ts';

/** The rounds of a cup beside its part of the target, how they came nearer, and what to add to what is left. */
export function matchedCup(context: PageContext, target: Target, title: string, match: CupMatch): Html {
  const part = target.parts.find(({ name }) => name === match.part)!;
  const wanted = { overWhite: part.overWhite.hex, ...(part.overBlack && { overBlack: part.overBlack.hex }) };
  const name = target.parts.length > 1 ? `${title}, ${match.cup}` : title;
  return html`<div class="matched">${roundsBeside(match.rounds, wanted, name, target.tolerance)}${nextStep(context, match)}</div>`;
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
