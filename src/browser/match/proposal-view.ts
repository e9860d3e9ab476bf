/**
 * What the Match page proposes: first recipes, and things to do to a cup.
 *
 * @packageDocumentation
 */

import { type Expectation, isLikelyRight } from '../../matching/belief/expectation.ts';
import type { FirstRecipe } from '../../matching/first-recipe.ts';
import { leadsByWeight, type PromisedByTools } from '../../matching/measure/best-tools.ts';
import type { PredictedColour, Proposal } from '../../matching/proposals/proposal.ts';
import type { RecipeProposal } from '../../matching/proposals/recipe-proposal.ts';
import type { ShortStock } from '../../matching/shelf/short-stock.ts';
import type { LeftOut } from '../../matching/shelf/usable-materials.ts';
import { type Html, html } from '../../render/html.ts';
import { type ChipColours, chips } from '../../render/swatch/chip.ts';
import { moneyText, sentence, volumeText } from '../../render/words.ts';
import { noMoreThan } from '../../units/volume-field.ts';
import { amountsText, toAddText, weightsText } from '../../words/amount.ts';
import { costWords } from '../../words/cost.ts';
import { amountName } from '../../words/cut.ts';
import { differenceText } from '../../words/difference.ts';
import { expectationText, promiseText } from '../../words/expectation.ts';
import { besidesRecipeText } from '../../words/first-recipe.ts';
import { cupFlakeText, type FlakedBait, flakeChoiceText, flakeNowText } from '../../words/flake.ts';
import { leftOutLines } from '../../words/left-out.ts';
import { proposalText, TRIES_NONE_SENTENCE, triesText } from '../../words/proposal.ts';
import { tooLittleText } from '../../words/scale.ts';
import { runsShortText } from '../../words/stock.ts';
import { verdictText } from '../../words/verdict.ts';
import type { CupAdvice } from './ask.ts';
import { limitWords, type MatchShown, titleIn } from './shown.ts';
import type { WorkSide } from './work.ts';
import { hexOfColour, type WorkColour } from './work-colour.ts';

/** First recipes, each with a button that begins with it. */
export function firstView(
  answers: readonly { readonly part: string; readonly recipe: FirstRecipe }[],
  sides: readonly WorkSide[],
  shown: MatchShown,
  bait: FlakedBait,
): Html {
  return html`${answers.map(({ part, recipe }, answer) => {
    const { proposals, flakes, leftOut } = recipe;
    const said = saysMore(recipe) ? besidesRecipeText(recipe, shown.data.settings) : '';
    const several = answers.length > 1;
    const named: NamedRecipe = { level: several ? 4 : 3, whose: several ? ` for ${part}` : '' };
    return html`<div class="match-answer">${several ? html`<h3>${sentence(part)}</h3>` : ''}${said === '' ? '' : html`<p>${said}</p>`}${
      proposals.length === 0
        ? ''
        : html`<ol class="match-proposals">${proposals.map((proposal, index) => recipeItem(proposal, sides, { ...shown, bait }, (choice) => useButton(answer, index, named, choice), { head: recipeHead(index, named), isSaid: index === 0 && saysMore(recipe) }))}</ol>`
    }${flakes.map((flake) => html`<p class="fine">${flakeChoiceText(flake, shown.data.settings)}</p>`)}${leftOutView(leftOut, shown)}</div>`;
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
  const [best] = proposals;
  return advice.kind !== 'make' || !best || !isLikelyRight(best);
}

/** What to add to a cup now, and a new cup where that comes nearer. */
export function nextView(
  { next: { advice, flakes = [], proposals, startAgain, leftOut } }: CupAdvice,
  side: WorkSide,
  shown: MatchShown,
  bait: FlakedBait,
): Html {
  const startsAgain = advice.kind === 'start-over';
  const saysBest = advice.kind === 'add' || advice.kind === 'cannot';
  const items = proposals.map((proposal, index) => proposalItem(proposal, index, side, shown, index === 0 && saysBest));
  const mend =
    proposals.length === 0
      ? html``
      : html`${startsAgain ? html`<h3>Or fix this one</h3>` : ''}<ol class="match-proposals">${items[0]!}</ol>${items.length < 2 ? '' : html`<details class="match-others"><summary>${items.length === 2 ? 'Another way' : `${items.length - 1} other ways`}</summary><ol class="match-proposals">${items.slice(1)}</ol></details>`}`;
  const anew = startAgain
    ? html`<h3>${startsAgain ? 'A new cup' : 'Or a new cup'}</h3><ol class="match-proposals">${recipeItem(startAgain, [side], { ...shown, bait }, (choice) => anewButton(choice, startsAgain))}</ol>`
    : html``;
  const inIt = flakes.map((flake) => html`<p class="fine">In the cup now: ${flakeNowText(flake, bait)}.</p>`);
  return html`${inIt}${startsAgain ? [anew, mend] : [mend, anew]}${leftOutView(leftOut, shown)}`;
}

/** A verdict; what is right stands out. */
export function judged(left: Proposal['left'], promised?: Expectation): Html {
  const words = sentence(verdictText(left, promised));
  const isRight = left.within && (promised === undefined || isLikelyRight(promised));
  return isRight ? html`<b>${words}</b>` : html`${words}`;
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
    'Start this cup over with it',
  );
}

/** The ways to measure something, the better one first. */
function choices(promised: PromisedByTools): readonly Choice[] {
  if (promised.weighed === undefined) return [{ weighing: false, leads: true, other: false }];
  const weigh = leadsByWeight(promised);
  return [weigh, !weigh].map((weighing, index) => ({ weighing, leads: index === 0, other: true }));
}

function recipeItem(
  recipe: RecipeProposal,
  sides: readonly WorkSide[],
  shown: MatchShown & { readonly bait: FlakedBait },
  button: (choice: Choice) => Html,
  { head = '', isSaid = false }: { readonly head?: Html | string; readonly isSaid?: boolean } = {},
): Html {
  const {
    cups,
    sides: predicted,
    weighed,
    deltaEUnderA,
    cost,
    unpriced,
    limit,
    tooLittle,
    runsShort,
    tries,
    triesNone,
  } = recipe;
  const { settings } = shown.data;
  const ways = choices(recipe);
  const [{ weighing } = { weighing: false }] = ways;
  const several = cups.length > 1;
  return html`<li>${head}<div class="match-pairs">${predicted.map(({ name, overWhite, overBlack, left }) => {
    const side = sides.find((each) => each.name === name) ?? sides[0]!;
    const label = predicted.length > 1 ? sentence(name) : 'Beside the target';
    return html`<div>${comparison(side, overWhite, overBlack, label)}<p>${weighing ? 'By drops and spoons: ' : ''}${judged(left, predicted.length === 1 ? recipe : undefined)}.</p></div>`;
  })}</div>${predicted.length === 1 ? '' : html`<p>Both together: ${promiseText(recipe)}.</p>`}${weighing ? html`<p>Weighed: <b>${expectationText(weighed!)}</b>.</p>` : ''}${cups.map(
    ({ name, plastic, plasticMl, amounts, flakes }) =>
      html`<div class="match-amounts">${several ? html`<h4>${sentence(name)}</h4>` : ''}<ul><li><b>${volumeText(plasticMl, settings)}</b> <span>${titleIn(shown, plastic)}</span></li>${amounts.map((amount) => amountItem(amount, weighing))}</ul>${flakes.map((flake) => html`<p>${cupFlakeText(flake, shown.bait)}.</p>`)}</div>`,
  )}<div class="match-choices">${ways.map(button)}</div>${cups.map(({ name, amounts }) => otherWay(several ? `${sentence(name)}: ` : '', amounts, weighing, weighed, several))}${several && weighed !== undefined && !weighing ? html`<p>With all of both weighed: ${expectationText(weighed)}.</p>` : ''}${tooLittleView(isSaid, tooLittle, weighed)}${shortView(runsShort, shown)}${tries === undefined ? '' : html`<p>${triesText(tries)}</p>`}${triesNone ? html`<p>${TRIES_NONE_SENTENCE}</p>` : ''}<p class="fine">Under a lamp: ${differenceText(deltaEUnderA)}${costIn(shown, cost, unpriced, ' · ')}${limitWords(limit, shown)}</p></li>`;
}

/** A cup of a recipe in the other way of measuring it. */
function otherWay(
  whose: string,
  amounts: RecipeProposal['cups'][number]['amounts'],
  weighing: boolean,
  weighed: Expectation | undefined,
  several: boolean,
): Html | string {
  if (weighed === undefined) return '';
  return weighing
    ? html`<p>${whose}${whose === '' ? 'Or' : 'or'} all by drops and spoons: ${amountsText(amounts)}.</p>`
    : html`<p>${whose}${whose === '' ? 'Or' : 'or'} weigh it all: <b>${weightsText(amounts)}</b>${several ? '' : `: ${expectationText(weighed)}`}.</p>`;
}

function amountItem(amount: RecipeProposal['cups'][number]['amounts'][number], weighing: boolean): Html {
  const { title, text, weighed } = amount;
  return weighing && weighed
    ? html`<li><b>${weighed.text}</b> <span>${amountName({ title, ...weighed })}</span></li>`
    : html`<li><b>${text}</b> <span>${amountName(amount)}</span></li>`;
}

function proposalItem(proposal: Proposal, index: number, side: WorkSide, shown: MatchShown, isSaid: boolean): Html {
  const { additions, thin, overWhite, overBlack, left, weighed } = proposal;
  const { volumeMl, cost, unpriced, limit, tooLittle, runsShort } = proposal;
  const { settings } = shown.data;
  const what = proposalText(proposal, settings);
  const ways = choices(proposal);
  const weighing = ways[0]!.weighing;

  const withPlastic = (amounts: string): string =>
    [amounts, ...(thin ? [`${volumeText(thin.ml, settings)} of ${thin.title}`] : [])]
      .filter((words) => words !== '')
      .join(', with ');
  const inWeights = weighed === undefined ? undefined : withPlastic(weightsText(additions));
  const then = html`<p>${weighing ? `Or by drops and spoons: ${what} ` : ''}Then: ${verdictText(left, proposal)}.</p>`;
  const byWeight =
    inWeights === undefined
      ? html``
      : weighing
        ? html`<p>Then: ${expectationText(weighed!)}.</p>`
        : html`<p>Or weigh it all: <b>${inWeights}</b>: ${expectationText(weighed!)}.</p>`;
  return html`<li><p class="match-do"><b>${weighing ? `Weigh ${inWeights}.` : what}</b></p><div class="match-choices">${ways.map((choice) => html`<button${choice.leads ? '' : html` class="quiet"`} type="button" data-take="${index}"${choice.weighing ? html` data-weighing` : ''}>${choice.weighing ? 'I weighed it' : 'I added this'}<span class="unseen-words">: ${choice.weighing ? inWeights : toAddText(proposal, settings)}</span></button>`)}</div>${comparison(side, overWhite, overBlack, 'Beside the target')}${weighing ? [byWeight, then] : [then, byWeight]}${tooLittleView(isSaid, tooLittle, weighed)}${shortView(runsShort, shown)}<p class="fine">${noMoreThan(volumeMl, settings)} in the cup${costIn(shown, cost, unpriced, ' · ')}${limit?.lowered ? limitWords(limit, shown) : ''}</p></li>`;
}

/** That something is too little to weigh: not where the answer above has said it (`hitches`). */
function tooLittleView(
  isSaid: boolean,
  tooLittle: Proposal['tooLittle'],
  weighed: Expectation | undefined,
): Html | string {
  return tooLittle === undefined || (isSaid && weighed === undefined) ? '' : html`<p>${tooLittleText(tooLittle)}</p>`;
}

function shortView(runsShort: readonly ShortStock[] | undefined, { data }: MatchShown): Html | string {
  return runsShort === undefined ? '' : html`<p><b>${runsShortText(runsShort, data.settings)}</b></p>`;
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
  return html`<div class="match-pair">${chips([viewsOf(side), other], label, ['target', 'predicted'])}</div>`;
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

function leftOutView(leftOut: readonly LeftOut[], shown: MatchShown): Html {
  return leftOut.length === 0
    ? html``
    : html`<p class="fine">${leftOutLines(leftOut, (id) => titleIn(shown, id), shown.data.settings).join(' ')}</p>`;
}
