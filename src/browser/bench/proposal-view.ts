/**
 * What the bench page proposes: first recipes, and things to do to a cup.
 *
 * @packageDocumentation
 */
import type { FirstRecipe } from '../../matching/first-recipe.ts';
import type { PredictedColour, Proposal } from '../../matching/proposal.ts';
import type { RecipeProposal } from '../../matching/recipe-proposal.ts';
import { weightsText } from '../../matching/weigh-doses.ts';
import { type Html, html } from '../../render/html.ts';
import { type ChipColours, chips } from '../../render/swatch/chip.ts';
import { deltaEText, moneyText, sentence, volumeText } from '../../render/words.ts';
import type { CupAdvice } from './ask.ts';
import { type BenchShown, limitWords, titleIn } from './shown.ts';
import type { WorkSide } from './work.ts';

/** First recipes, each with a button that begins with it. */
export function firstView(
  answers: readonly { readonly part: string; readonly recipe: FirstRecipe }[],
  sides: readonly WorkSide[],
  shown: BenchShown,
): Html {
  return html`${answers.map(({ part, recipe }, answer) => {
    const { proposals, sentence: says, flakes, leftOut } = recipe;
    return html`<div class="bench-answer">${answers.length > 1 ? html`<h3>${sentence(part)}</h3>` : ''}${saysMore(recipe) ? html`<p>${says}</p>` : ''}${
      proposals.length === 0
        ? ''
        : html`<ol class="bench-proposals">${proposals.map((proposal, index) => recipeItem(proposal, sides, shown, (weighing) => useButton(answer, index, answers.length > 1 ? ` for ${part}` : '', weighing)))}</ol>`
    }${flakes.map(({ title, words }) => html`<p class="fine">Flake: ${title}, ${words}.</p>`)}${leftOutView(leftOut, shown)}</div>`;
  })}`;
}

/** Whether an answer says more than its first proposal does. */
function saysMore({ advice, proposals }: FirstRecipe): boolean {
  return advice !== 'make' || proposals[0]?.sides.some(({ left }) => !left.within) !== false;
}

/** What to add to a cup now, and a new cup where that comes nearer. */
export function nextView(
  { next: { proposals, startAgain, leftOut } }: CupAdvice,
  side: WorkSide,
  shown: BenchShown,
): Html {
  return html`${
    proposals.length === 0
      ? ''
      : html`<ol class="bench-proposals">${proposals.map((proposal, index) => proposalItem(proposal, index, side, shown))}</ol>`
  }${
    startAgain
      ? html`<h3>Or a new cup</h3><ol class="bench-proposals">${recipeItem(startAgain, [side], shown, (weighing) => html`<button class="quiet" type="button" data-afresh${weighing ? html` data-weighing` : ''}>Begin this cup anew with it${weighing ? ', weighed' : ''}</button>`)}</ol>`
      : ''
  }${leftOutView(leftOut, shown)}`;
}

/** A verdict with its size, which one within tolerance tells itself. */
export function judged({ within, deltaE, sentence: words }: Proposal['left']): Html {
  return within ? html`<b>${sentence(words)}</b>` : html`<b>ΔE ${deltaEText(deltaE)}</b> ${sentence(words)}`;
}

function useButton(answer: number, proposal: number, whose: string, weighing: boolean): Html {
  return weighing
    ? html`<button class="quiet" type="button" data-use="${answer}" data-proposal="${proposal}" data-weighing>Use this, weighed${whose}</button>`
    : html`<button type="button" data-use="${answer}" data-proposal="${proposal}">Use this${whose}</button>`;
}

function recipeItem(
  { cups, sides: predicted, weighedDeltaE, deltaEUnderA, cost, limit }: RecipeProposal,
  sides: readonly WorkSide[],
  shown: BenchShown,
  button: (weighing: boolean) => Html,
): Html {
  const { settings } = shown.data;
  return html`<li>${predicted.map(({ name, overWhite, overBlack, left }) => {
    const side = sides.find((each) => each.name === name) ?? sides[0]!;
    const label = `${predicted.length > 1 ? `${name}: ` : ''}target on the left, predicted on the right`;
    return html`${comparison(side, overWhite, overBlack, label)}<p>${judged(left)}.</p>`;
  })}${cups.map(
    ({ name, plastic, plasticMl, amounts, alone }) =>
      html`<div class="bench-amounts">${cups.length > 1 ? html`<h3>${sentence(name)}</h3>` : ''}<ul><li><b>${volumeText(plasticMl, settings)}</b> <span>${titleIn(shown, plastic)}</span></li>${amounts.map(({ text, weighed, title }) => html`<li><span><b>${text}</b>${weighed ? html` <span class="or">or ${weighed.text}</span>` : ''}</span> <span>${title}</span></li>`)}</ul>${cups.length > 1 ? html`<p class="fine">Poured by itself it should be ${alone.overWhite.hex} over white and ${alone.overBlack.hex} over black.</p>` : ''}</div>`,
  )}${weighedDeltaE === undefined ? '' : html`<p>Weighed, all of it: <b>ΔE ${deltaEText(weighedDeltaE)}</b>.</p>`}<p class="fine">Under a lamp ΔE ${deltaEText(deltaEUnderA)}; ${moneyText(cost, settings)}${limitWords(limit, shown)}.</p><div class="bench-choices">${button(false)}${weighedDeltaE === undefined ? '' : button(true)}</div></li>`;
}

function proposalItem(
  { sentence: what, additions, overWhite, overBlack, left, weighedDeltaE, volumeMl, cost, limit }: Proposal,
  index: number,
  side: WorkSide,
  shown: BenchShown,
): Html {
  const { settings } = shown.data;
  return html`<li>${comparison(side, overWhite, overBlack, 'target on the left, predicted on the right')}<p><b>${what}</b></p><p>${left.within ? `Leaves it ${left.sentence}` : `Leaves ΔE ${deltaEText(left.deltaE)}: ${left.sentence}`}.</p>${weighedDeltaE === undefined ? '' : html`<p>Or weighed: <b>${weightsText(additions)}</b>. That leaves ΔE ${deltaEText(weighedDeltaE)}.</p>`}<p class="fine">${volumeText(volumeMl, settings)} in the cup, ${moneyText(cost, settings)}${limit?.lowered ? limitWords(limit, shown) : ''}.</p><div class="bench-choices"><button type="button" data-take="${index}">I added this</button>${weighedDeltaE === undefined ? '' : html`<button class="quiet" type="button" data-take="${index}" data-weighing>I weighed it</button>`}</div></li>`;
}

/** The target beside another colour. */
function comparison(
  side: ChipColours,
  overWhite: PredictedColour,
  overBlack: PredictedColour | undefined,
  label: string,
): Html {
  const other = { overWhite: overWhite.hex, ...(overBlack && { overBlack: overBlack.hex }) };
  return html`<div class="bench-pair">${chips([viewsOf(side), other], `${sentence(label)}; over white above, over black below`)}</div>`;
}

/** The colours of a side or a look alone. */
export function viewsOf({ overWhite, overBlack }: ChipColours): ChipColours {
  return { ...(overWhite && { overWhite }), ...(overBlack && { overBlack }) };
}

function leftOutView(leftOut: readonly { readonly material: string; readonly why: string }[], shown: BenchShown): Html {
  return leftOut.length === 0
    ? html``
    : html`<p class="fine">${leftOut.map(({ material, why }) => `${titleIn(shown, material)} is left out: ${why}. `)}</p>`;
}
