import { costWords } from '../../book/cost-words.ts';
import type { CupMatch, Target } from '../../book/model.ts';
import { bookIndex } from '../book-index.ts';
import { type Html, html } from '../html.ts';
import type { PageContext } from '../page.ts';
import { deltaEText, moneyText, volumeText } from '../words.ts';
import { roundsBeside } from './rounds-beside.ts';
import { underLights } from './under-lights.ts';

/** The rounds of a cup beside its part of the target, how they came nearer, and what to add to what is left. */
export function matchedCup(context: PageContext, target: Target, title: string, match: CupMatch): Html {
  const part = target.parts.find(({ name }) => name === match.part)!;
  const wanted = { overWhite: part.overWhite.hex, ...(part.overBlack && { overBlack: part.overBlack.hex }) };
  const name = target.parts.length > 1 ? `${title}, ${match.cup}` : title;
  return html`<div class="matched">${roundsBeside(match.rounds, wanted, name, target.tolerance)}${underLights(match, target.tolerance)}${nextStep(context, match)}</div>`;
}

function nextStep({ book }: PageContext, { next }: CupMatch): Html {
  if (!next) return html``;
  const { settings } = book;
  const { materials } = bookIndex(book);
  const money = (amount: number): string => moneyText(amount, settings);
  const named = (ids: readonly string[]): readonly string[] => ids.map((id) => materials.get(id)?.title ?? id);
  return html`<div class="match-next"><h4>Next</h4><p>${next.sentence}</p>${
    next.proposals.length < 2
      ? ''
      : html`<ol class="proposals">${next.proposals.map(
          ({ sentence: what, left, cost, unpriced, volumeMl }) =>
            html`<li><p>${what}</p><p class="fine">${left.within ? `Leaves it ${left.sentence}` : `Leaves ΔE ${deltaEText(left.deltaE)}: ${left.sentence}`}. ${volumeText(volumeMl, settings)} in the cup, ${costWords(cost, named(unpriced), money)}.</p></li>`,
        )}</ol>`
  }</div>`;
}
