/**
 * What the Match page proposes: first recipes, and things to do to a cup.
 *
 * @packageDocumentation
 */

import { costWords } from '../../book/words/cost-words.ts';
import type { FirstRecipe } from '../../matching/first-recipe.ts';
import { leadsByWeight } from '../../matching/measure/best-tools.ts';
import { weightsText } from '../../matching/measure/weigh-doses.ts';
import { addedText, type PredictedColour, type Proposal } from '../../matching/proposals/proposal.ts';
import type { RecipeProposal } from '../../matching/proposals/recipe-proposal.ts';
import { type Html, html } from '../../render/html.ts';
import { type ChipColours, chips } from '../../render/swatch/chip.ts';
import { deltaEText, moneyText, sentence, volumeText } from '../../render/words.ts';
import { noMoreThan } from '../../units/volume-field.ts';
import type { CupAdvice } from './ask.ts';
import { limitWords, type MatchShown, titleIn } from './shown.ts';
import type { WorkSide } from './work.ts';
import { hexOfColour, type WorkColour } from './work-colour.ts';

/** First recipes, each with a button that begins with it. */
export function firstView(
  answers: readonly { readonly part: string; readonly recipe: FirstRecipe }[],
  sides: readonly WorkSide[],
  shown: MatchShown,
): Html {
  return html`${answers.map(({ part, recipe }, answer) => {
    const { proposals, sentence: says, flakes, leftOut } = recipe;
    const several = answers.length > 1;
    const named: NamedRecipe = { level: several ? 4 : 3, whose: several ? ` for ${part}` : '' };
    return html`<div class="match-answer">${several ? html`<h3>${sentence(part)}</h3>` : ''}${saysMore(recipe) ? html`<p>${says}</p>` : ''}${
      proposals.length === 0
        ? ''
        : html`<ol class="match-proposals">${proposals.map((proposal, index) => recipeItem(proposal, sides, shown, (choice) => useButton(answer, index, named, choice), recipeHead(index, named)))}</ol>`
    }${flakes.map(({ title, words }) => html`<p class="fine">Flake: ${title}, ${words}.</p>`)}${leftOutView(leftOut, shown)}</div>`;
  })}`;
}

/** How the recipes of an answer are named. */
interface NamedRecipe {
  readonly level: 3 | 4;
  /** Of which side they are, as the end of a name; empty where there is one answer alone. */
  readonly whose: string;
}

/** The heading of a recipe, with its side for who hears the headings alone. */
function recipeHead(index: number, { level, whose }: NamedRecipe): Html {
  const words = html`Recipe ${index + 1}${whose === '' ? '' : html`<span class="unseen-words">${whose}</span>`}`;
  return level === 3 ? html`<h3>${words}</h3>` : html`<h4>${words}</h4>`;
}

/** Whether an answer says more than its first proposal does. */
function saysMore({ advice, proposals }: FirstRecipe): boolean {
  return advice !== 'make' || proposals[0]?.sides.some(({ left }) => !left.within) !== false;
}

/** What to add to a cup now, and a new cup where that comes nearer. */
export function nextView(
  { next: { advice, proposals, startAgain, leftOut } }: CupAdvice,
  side: WorkSide,
  shown: MatchShown,
): Html {
  const startsAgain = advice === 'start-again';
  const mend =
    proposals.length === 0
      ? html``
      : html`${startsAgain ? html`<h3>Or mend this one</h3>` : ''}<ol class="match-proposals">${proposals.map((proposal, index) => proposalItem(proposal, index, side, shown))}</ol>`;
  const anew = startAgain
    ? html`<h3>${startsAgain ? 'A new cup' : 'Or a new cup'}</h3><ol class="match-proposals">${recipeItem(startAgain, [side], shown, (choice) => anewButton(choice, startsAgain))}</ol>`
    : html``;
  return html`${startsAgain ? [anew, mend] : [mend, anew]}${leftOutView(leftOut, shown)}`;
}

/** A verdict with its size, which one within tolerance tells itself. */
export function judged({ within, deltaE, sentence: words }: Proposal['left']): Html {
  return within ? html`<b>${sentence(words)}</b>` : html`<b>ΔE ${deltaEText(deltaE)}</b> ${sentence(words)}`;
}

/** One way to measure a proposal. */
interface Choice {
  readonly weighing: boolean;
  /** The better way, or the only one. */
  readonly leads: boolean;
  /** There is the other way as well. */
  readonly other: boolean;
}

function choiceButton({ weighing, leads, other }: Choice, data: Html, does: string): Html {
  const how = !other || (leads && !weighing) ? '' : weighing ? ', weighed' : ', by drops and spoons';
  return html`<button${leads ? '' : html` class="quiet"`} type="button"${data}${weighing ? html` data-weighing` : ''}>${does}${how}</button>`;
}

function useButton(answer: number, proposal: number, { whose }: NamedRecipe, choice: Choice): Html {
  const does = `Use recipe ${proposal + 1}${whose}`;
  return choiceButton(choice, html` data-use="${answer}" data-proposal="${proposal}"`, does);
}

function anewButton(choice: Choice, startsAgain: boolean): Html {
  return choiceButton(
    { ...choice, leads: choice.leads && startsAgain },
    html` data-afresh`,
    'Begin this cup anew with it',
  );
}

/** The ways to measure something, the better one first. */
function choices(deltaE: number, within: boolean, weighedDeltaE: number | undefined): readonly Choice[] {
  if (weighedDeltaE === undefined) return [{ weighing: false, leads: true, other: false }];
  const weigh = leadsByWeight(deltaE, within, weighedDeltaE);
  return [weigh, !weigh].map((weighing, index) => ({ weighing, leads: index === 0, other: true }));
}

function recipeItem(
  {
    cups,
    sides: predicted,
    deltaE,
    weighedDeltaE,
    deltaEUnderA,
    cost,
    unpriced,
    limit,
    tooLittle,
    runsShort,
  }: RecipeProposal,
  sides: readonly WorkSide[],
  shown: MatchShown,
  button: (choice: Choice) => Html,
  head: Html | string = '',
): Html {
  const { settings } = shown.data;
  const ways = choices(
    deltaE,
    predicted.every(({ left }) => left.within),
    weighedDeltaE,
  );
  const [{ weighing } = { weighing: false }] = ways;
  const several = cups.length > 1;
  return html`<li>${head}${predicted.map(({ name, overWhite, overBlack, left }) => {
    const side = sides.find((each) => each.name === name) ?? sides[0]!;
    const label = `${predicted.length > 1 ? `${name}: ` : ''}target on the left, predicted on the right`;
    return html`${comparison(side, overWhite, overBlack, label)}<p>${weighing ? 'By drops and spoons: ' : ''}${judged(left)}.</p>`;
  })}${weighing ? html`<p>Weighed, it leaves <b>ΔE ${deltaEText(weighedDeltaE!)}</b>.</p>` : ''}${cups.map(
    ({ name, plastic, plasticMl, amounts }) =>
      html`<div class="match-amounts">${several ? html`<h4>${sentence(name)}</h4>` : ''}<ul><li><b>${volumeText(plasticMl, settings)}</b> <span>${titleIn(shown, plastic)}</span></li>${amounts.map(({ text, weighed, title }) => html`<li><b>${weighing ? (weighed?.text ?? text) : text}</b> <span>${title}</span></li>`)}</ul>${weighedDeltaE === undefined ? '' : weighing ? html`<p>Or all by drops and spoons: ${addedText(amounts, undefined, settings)}.</p>` : html`<p>Or weigh all: <b>${weightsText(amounts)}</b>${several ? '' : html`. That leaves ΔE ${deltaEText(weighedDeltaE)}`}.</p>`}</div>`,
  )}${several && weighedDeltaE !== undefined && !weighing ? html`<p>Weighed, all of both, it leaves ΔE ${deltaEText(weighedDeltaE)}.</p>` : ''}${tooLittle === undefined ? '' : html`<p>${sentence(tooLittle)}</p>`}${shortView(runsShort)}<p class="fine">Under a lamp ΔE ${deltaEText(deltaEUnderA)}${costIn(shown, cost, unpriced, '; ')}${limitWords(limit, shown)}.</p><div class="match-choices">${ways.map(button)}</div></li>`;
}

function proposalItem(
  {
    sentence: what,
    additions,
    thin,
    overWhite,
    overBlack,
    left,
    weighedDeltaE,
    volumeMl,
    cost,
    unpriced,
    limit,
    tooLittle,
    runsShort,
  }: Proposal,
  index: number,
  side: WorkSide,
  shown: MatchShown,
): Html {
  const { settings } = shown.data;
  const ways = choices(left.deltaE, left.within, weighedDeltaE);
  const weighing = ways[0]!.weighing;
  const byHand = html`<p>${weighing ? html`Or by drops and spoons: ${what} That leaves` : html`<b>${what}</b></p><p>Leaves`} ${left.within ? `it ${left.sentence}` : `ΔE ${deltaEText(left.deltaE)}: ${left.sentence}`}.</p>`;
  const withPlastic = (amounts: string): string =>
    [amounts, ...(thin ? [`${volumeText(thin.ml, settings)} of ${thin.title}`] : [])]
      .filter((words) => words !== '')
      .join(', with ');
  const inWeights = weighedDeltaE === undefined ? undefined : withPlastic(weightsText(additions));
  const byWeight =
    inWeights === undefined
      ? html``
      : weighing
        ? html`<p><b>Weigh ${inWeights}.</b></p><p>That leaves ΔE ${deltaEText(weighedDeltaE!)}.</p>`
        : html`<p>Or weigh all: <b>${inWeights}</b>. That leaves ΔE ${deltaEText(weighedDeltaE!)}.</p>`;
  return html`<li>${comparison(side, overWhite, overBlack, 'target on the left, predicted on the right')}${weighing ? [byWeight, byHand] : [byHand, byWeight]}${tooLittle === undefined ? '' : html`<p>${sentence(tooLittle)}</p>`}${shortView(runsShort)}<p class="fine">${noMoreThan(volumeMl, settings)} in the cup${costIn(shown, cost, unpriced, ', ')}${limit?.lowered ? limitWords(limit, shown) : ''}.</p><div class="match-choices">${ways.map((choice) => html`<button${choice.leads ? '' : html` class="quiet"`} type="button" data-take="${index}"${choice.weighing ? html` data-weighing` : ''}>${choice.weighing ? 'I weighed it' : 'I added this'}<span class="unseen-words">: ${choice.weighing ? inWeights : addedText(additions, thin, settings)}</span></button>`)}</div></li>`;
}

function shortView(runsShort: string | undefined): Html | string {
  return runsShort === undefined ? '' : html`<p><b>${runsShort}</b></p>`;
}

/** What something costs, and what of it has no price, as the next part of a sentence; nothing for readers, who are told no price. */
function costIn(shown: MatchShown, cost: number, unpriced: readonly string[], joint: string): string {
  if (shown.data.edition === 'shared') return '';
  const names = unpriced.map((id) => titleIn(shown, id));
  return `${joint}${costWords(cost, names, (amount) => moneyText(amount, shown.data.settings))}`;
}

/** The target beside another colour. */
function comparison(
  side: ViewColours,
  overWhite: PredictedColour,
  overBlack: PredictedColour | undefined,
  label: string,
): Html {
  const other = { overWhite: overWhite.hex, ...(overBlack && { overBlack: overBlack.hex }) };
  return html`<div class="match-pair">${chips([viewsOf(side), other], `${sentence(label)}; over white above, over black below`)}</div>`;
}

/** The colours of a side or a look alone, as they are drawn. */
export function viewsOf({ overWhite, overBlack }: ViewColours): ChipColours {
  return {
    ...(overWhite && { overWhite: hexOfColour(overWhite) }),
    ...(overBlack && { overBlack: hexOfColour(overBlack) }),
  };
}

interface ViewColours {
  readonly overWhite?: WorkColour;
  readonly overBlack?: WorkColour;
}

function leftOutView(leftOut: readonly { readonly material: string; readonly why: string }[], shown: MatchShown): Html {
  return leftOut.length === 0
    ? html``
    : html`<p class="fine">${leftOut.map(({ material, why }) => `${titleIn(shown, material)} is left out: ${why}. `)}</p>`;
}
