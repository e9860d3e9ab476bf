import type { CupMatch, Target } from '../../book/model/target.ts';
import { costWords } from '../../words/cost.ts';
import { flakeNowText } from '../../words/flake.ts';
import { nextAdditionText } from '../../words/next-addition.ts';
import { proposalText } from '../../words/proposal.ts';
import { verdictText } from '../../words/verdict.ts';
import { bookIndex } from '../book-index.ts';
import { type Html, html } from '../html.ts';
import type { PageContext } from '../page.ts';
import { moneyText, sentence, volumeText } from '../words.ts';
import { roundsBeside } from './rounds-beside.ts';
import { underLights } from './under-lights.ts';

/** The rounds of a cup beside its part of the target, how they came nearer, and what to add to what is left. */
export function matchedCup(context: PageContext, target: Target, title: string, match: CupMatch): Html {
  const part = target.parts.find(({ name }) => name === match.part)!;
  const wanted = { overWhite: part.overWhite.hex, ...(part.overBlack && { overBlack: part.overBlack.hex }) };
  const several = target.parts.length > 1;
  const [name, level] = several ? ([`${title}, ${match.cup}`, 5] as const) : ([title, 4] as const);
  return html`<div class="matched">${several ? html`<h4>${sentence(match.cup)}</h4>` : ''}${roundsBeside(match.rounds, wanted, name, target.tolerance, level)}${underLights(match, target.tolerance)}${nextStep(context, match, level)}</div>`;
}

function nextStep({ book }: PageContext, { next }: CupMatch, level: number): Html {
  if (!next) return html``;
  const { settings } = book;
  const { materials } = bookIndex(book);
  const money = (amount: number): string => moneyText(amount, settings);
  const named = (ids: readonly string[]): readonly string[] => ids.map((id) => materials.get(id)?.title ?? id);
  return html`<div class="match-next"><h${level}>Next</h${level}><p>${nextAdditionText(next, settings)}</p>${(next.flakes ?? []).map((flake) => html`<p class="fine">${flakeNowText(flake)}.</p>`)}${
    next.proposals.length < 2
      ? ''
      : html`<ol class="proposals">${next.proposals.map(
          (proposal) =>
            html`<li><p>${proposalText(proposal, settings)}</p><p class="fine">Then: ${verdictText(proposal.left, proposal)}. ${volumeText(proposal.volumeMl, settings)} in the cup, ${costWords(proposal.cost, named(proposal.unpriced), money)}.</p></li>`,
        )}</ol>`
  }</div>`;
}
