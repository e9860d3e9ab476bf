import type { Recipe } from '../../book/model/recipe.ts';
import type { CupMatch, MatchedRound, Target } from '../../book/model/target.ts';
import { verdictText } from '../../words/verdict.ts';
import { bookIndex } from '../book-index.ts';
import { type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';
import { inFold } from '../recipe/fold.ts';
import { type ChipColours, chips } from '../swatch/chip.ts';
import { deltaEText, sentence } from '../words.ts';
import { roundsChart } from './rounds-beside.ts';

/**
 * A recipe's rounds beside the target that it is for, in short, and how they came nearer; nothing where it is for none. What was wrong
 * with each round, and what to do next, stands on the target's page.
 */
export function besideTarget(context: PageContext, { title, match }: Recipe): Html {
  const target = match && bookIndex(context.book).targets.get(match.target);
  if (!match || !target) return html``;
  return inFold(
    'target',
    'Against its target',
    html`<p>Made to match <a href="${link(context, paths.target(target.id))}">${target.title}</a>, whose page has a verdict on every round.</p>${match.cups.map((cup) => cupBeside(cup, target, target.parts.length > 1 ? `${title}, ${cup.cup}` : title))}`,
  );
}

function cupBeside({ cup, part: name, rounds }: CupMatch, target: Target, title: string): Html {
  const part = target.parts.find((each) => each.name === name)!;
  const wanted = { overWhite: part.overWhite.hex, ...(part.overBlack && { overBlack: part.overBlack.hex }) };
  const last = rounds.at(-1);
  return html`<div class="matched">${target.parts.length > 1 ? html`<h4>${sentence(cup)}</h4>` : ''}<ol class="match-rounds">${rounds.map((round) => pairOf(round, wanted))}</ol>${last === undefined ? '' : html`<p>${sentence(verdictText(last.verdict))}.</p>`}${roundsChart(rounds, title, target.tolerance)}</div>`;
}

function pairOf({ number, basis, overWhite, overBlack, verdict }: MatchedRound, wanted: ChipColours): Html {
  const shown = { ...(overWhite && { overWhite: overWhite.hex }), ...(overBlack && { overBlack: overBlack.hex }) };
  return html`<li><div class="pair">${chips([wanted, shown], `Round ${number}`, ['target', basis])}</div>Round ${number} <span class="fine">ΔE ${deltaEText(verdict.deltaE)}${basis === 'seen' ? '' : ', predicted'}</span></li>`;
}
