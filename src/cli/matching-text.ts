/**
 * The answers of matching as they are printed.
 *
 * @packageDocumentation
 */
import type { Book } from '../book/model.ts';

import type { Expectation } from '../matching/belief/expectation.ts';
import type { CutBack } from '../matching/cut-back.ts';
import type { FirstRecipe } from '../matching/first-recipe.ts';
import type { NextAddition } from '../matching/next-addition.ts';
import type { Proposal } from '../matching/proposals/proposal.ts';
import type { RecipeProposal } from '../matching/proposals/recipe-proposal.ts';
import type { Substitute, Substitution } from '../matching/substitutes/substitution.ts';
import { moneyText } from '../units/money-text.ts';
import { volumeText } from '../units/volume-text.ts';
import { MEASURED_TOGETHER, weightsText } from '../words/amount.ts';
import { costWords } from '../words/cost.ts';
import { amountName } from '../words/cut.ts';
import { differenceText } from '../words/difference.ts';
import { expectationText, promiseText } from '../words/expectation.ts';
import { cupFlakeText, type FlakedBait, flakeChoiceText, flakeNowText, flakeText } from '../words/flake.ts';
import { cupHeatsText } from '../words/heats.ts';
import { leftOutLines } from '../words/left-out.ts';
import { maxText } from '../words/limit.ts';
import { proposalText, TRIES_NONE_SENTENCE, triesText } from '../words/proposal.ts';
import { tooLittleText } from '../words/scale.ts';
import { runsShortText } from '../words/stock.ts';
import { substituteText } from '../words/substitution.ts';
import { VERDICT_WORDS, verdictText } from '../words/verdict.ts';
import { ANSWER_IN_LOG } from '../words/what-went-in.ts';
import { CAUTION } from './caution.ts';

/** What of an answer needs a word at its end. */
export interface Legend {
  /** A colour is judged. */
  readonly judged: boolean;
  /** Amounts are told both as they are dropped and spooned, and as they are weighed. */
  readonly weighed: boolean;
  readonly inStock: boolean;
}

/** What the words of an answer mean, for the end of it. */
export function legendText({ judged, weighed, inStock }: Legend): string {
  return lines(
    judged
      ? [
          ...VERDICT_WORDS,
          ...(weighed ? [MEASURED_TOGETHER] : []),
          ...(inStock ? ['--in-stock leaves out what is used up; no `stock` in a file counts as in stock.'] : []),
        ]
      : [],
  );
}

/** The book, and the bait that the cup is for, where its mold is known. */
type Shown = Pick<Book, 'settings' | 'materials'> & { readonly bait?: FlakedBait };

/** First recipes, after what is said of them. */
export function printedRecipes(
  part: string,
  says: string,
  { proposals, flakes, leftOut }: FirstRecipe,
  book: Shown,
): string {
  return lines([
    `${part}: ${says}`,
    ...proposals.flatMap((proposal, index) => ['', ...recipeLines(proposal, index + 1, book)]),
    ...flakes.map((flake) => flakeChoiceText(flake, book.settings)),
    ...leftOutLines(leftOut, (id) => titleOf(id, book), book.settings),
    ...(proposals.length === 0 ? [] : ['', CAUTION]),
  ]);
}

/** What to add, after what is said of it. */
export function printedAddition(
  cup: string,
  says: string,
  { advice, now, heats, flakes = [], proposals, leftOut, startAgain }: NextAddition,
  book: Shown,
): string {
  const startsAgain = advice.kind === 'start-over';
  const mend = proposals.flatMap((proposal, index) => ['', ...proposalLines(proposal, index + 1, book)]);
  const anew = startAgain
    ? [
        '',
        startsAgain || proposals.length === 0 ? 'A new cup:' : 'Or a new cup:',
        ...recipeLines(startAgain, undefined, book),
      ]
    : [];
  return lines([
    ...(now ? [`${cup} now: ${verdictText(now)}`] : []),
    ...heatLines(cup, heats, book),
    ...flakes.map((flake) => `${flakeNowText(flake, book.bait)}.`),
    `${now ? '' : `${cup}: `}${says}`,
    ...(advice.kind === 'ask-what-went-in' ? [ANSWER_IN_LOG] : []),
    ...(startsAgain ? [...anew, '', 'Or fix this one:', ...mend.slice(1)] : [...mend, ...anew]),
    ...leftOutLines(leftOut, (id) => titleOf(id, book), book.settings),
    ...(proposals.length > 0 || startAgain ? ['', CAUTION] : []),
  ]);
}

/** Whether to let a cup down, after what is said of it. */
export function printedCutBack(
  cup: string,
  says: string,
  { advice, now, heats, plasticAlone, mended, fresh }: CutBack,
  book: Shown,
): string {
  return lines([
    ...(now ? [`${cup} now: ${verdictText(now)}`] : []),
    ...heatLines(cup, heats, book),
    `${now ? '' : `${cup}: `}${says}`,
    ...(advice.kind === 'ask-what-went-in' ? [ANSWER_IN_LOG] : []),
    ...(plasticAlone ? ['', 'With plastic alone:', ...proposalLines(plasticAlone, undefined, book)] : []),
    ...(mended && !plasticAlone ? ['', 'With plastic alone: no closer than it is now.'] : []),
    ...(mended ? ['', 'With plastic and something to correct it:', ...proposalLines(mended, undefined, book)] : []),
    ...(fresh ? ['', 'A new cup:', ...recipeLines(fresh, undefined, book)] : []),
    ...(plasticAlone || mended || fresh ? ['', CAUTION] : []),
  ]);
}

/** What can stand for a material, after what is said of it. */
export function printedSubstitution(
  cup: string,
  says: string,
  { lost, swaps, recipes, flakes, leftOut = [] }: Substitution,
  book: Shown,
): string {
  const list = (title: string, each: readonly Substitute[]): readonly string[] =>
    each.length === 0
      ? []
      : [
          '',
          title,
          ...each.flatMap((one) => [`  ${substituteText(one)}`, ...weighedLines('    ', [one.amounts], one)]),
        ];
  return lines([
    `${cup}: ${says}`,
    ...list(`One for one, against the cup with ${lost}:`, swaps),
    ...list('Remixed without it:', recipes),
    ...(flakes.length === 0
      ? []
      : [
          '',
          'Flakes:',
          ...flakes.map(
            (flake) =>
              `  ${flake.text.padEnd(20)} ${cupFlakeText(flake, book.bait)}; ${flakeText(flake, book.settings)}`,
          ),
        ]),
    ...leftOutLines(leftOut, (id) => titleOf(id, book), book.settings),
  ]);
}

function recipeLines(recipe: RecipeProposal, number: number | undefined, book: Shown): readonly string[] {
  const { cups, sides, weighed, tooLittle, runsShort, tries, triesNone, deltaEUnderA, cost, unpriced, limit } = recipe;
  const many = cups.length > 1;
  const all = cups.flatMap(({ amounts }) => amounts);
  const wide = Math.max(14, ...all.map(({ text }) => text.length)) + 2;
  return [
    ...cups.flatMap(({ name, plasticTitle, plasticMl, amounts, flakes, alone }, index) => {
      const head = [...(number === undefined || index > 0 ? [] : [`${number}.`]), ...(many ? [`${name}:`] : [])].join(
        ' ',
      );
      return [
        ...(head === '' ? [] : [head]),
        `  ${volumeText(plasticMl, book.settings).padEnd(wide)}${plasticTitle}`,
        ...amounts.map((amount) => `  ${amount.text.padEnd(wide)}${amountName(amount)}`),
        ...flakes.map((flake) => `  ${cupFlakeText(flake, book.bait)}`),
        ...(many ? [`  poured alone: ${viewsText(alone)}`] : []),
      ];
    }),
    ...sides.map(
      (side) =>
        `  ${many ? `${side.name}: ` : ''}${viewsText(side)}; ${verdictText(side.left, many ? undefined : recipe)}`,
    ),
    ...(many ? [`  both together: ${promiseText(recipe)}`] : []),
    ...weighedLines(
      '  ',
      cups.map(({ amounts }) => amounts),
      { weighed },
      many ? cups.map(({ name }) => name) : [],
    ),
    ...(tooLittle === undefined ? [] : [`  ${tooLittleText(tooLittle)}`]),
    ...(runsShort === undefined ? [] : [`  ${runsShortText(runsShort, book.settings)}`]),
    ...(tries === undefined ? [] : [`  ${triesText(tries)}`]),
    ...(triesNone ? [`  ${TRIES_NONE_SENTENCE}`] : []),
    `  ${[`under a lamp: ${differenceText(deltaEUnderA)}`, costText(cost, unpriced, book), ...limitTexts(limit, book)].join('; ')}`,
  ];
}

function proposalLines(proposal: Proposal, number: number | undefined, book: Shown): readonly string[] {
  const { additions, left, tooLittle, runsShort, volumeMl, cost, unpriced, limit } = proposal;
  const { settings } = book;
  return [
    `${number === undefined ? '' : `${number}. `}${proposalText(proposal, settings)}`,
    `   then: ${verdictText(left, proposal)}`,
    ...weighedLines('   ', [additions], proposal),
    ...(tooLittle === undefined ? [] : [`   ${tooLittleText(tooLittle)}`]),
    ...(runsShort === undefined ? [] : [`   ${runsShortText(runsShort, settings)}`]),
    `   ${[viewsText(proposal), `${volumeText(volumeMl, settings)} in the cup`, costText(cost, unpriced, book), ...(limit?.lowered ? limitTexts(limit, book) : [])].join('; ')}`,
  ];
}

/** What to weigh instead of drops and spoons, a list of amounts a cup; no line where there is nothing else to weigh. */
function weighedLines(
  indent: string,
  cups: readonly Parameters<typeof weightsText>[0][],
  { weighed }: { readonly weighed?: Expectation | undefined },
  names: readonly string[] = [],
): readonly string[] {
  if (weighed === undefined) return [];
  const each = cups.map((amounts, index) => `${names.length > 0 ? `${names[index]}: ` : ''}${weightsText(amounts)}`);
  return [`${indent}or weigh it all: ${each.join('; ')}: ${expectationText(weighed)}`];
}

function viewsText({ overWhite, overBlack }: Pick<Proposal, 'overWhite' | 'overBlack'>): string {
  return `${overWhite.hex}${overBlack ? ` over white, ${overBlack.hex} over black` : ''}`;
}

/** How often the cup was heated; no line before it was melted. */
function heatLines(cup: string, heats: NextAddition['heats'], { materials }: Shown): readonly string[] {
  return heats ? [`${cup}: ${cupHeatsText(heats, (id) => materials.find((each) => each.id === id))}`] : [];
}

function costText(cost: number, unpriced: readonly string[], { settings, materials }: Shown): string {
  const names = unpriced.map((id) => titleOf(id, { materials }));
  return costWords(cost, names, (amount) => moneyText(amount, settings));
}

function limitTexts(
  limit: { readonly celsius: number; readonly material: string } | undefined,
  book: Shown,
): readonly string[] {
  return limit === undefined ? [] : [maxText(limit.celsius, titleOf(limit.material, book), book.settings)];
}

function titleOf(id: string, { materials }: Pick<Shown, 'materials'>): string {
  return materials.find((material) => material.id === id)?.title ?? id;
}

function lines(text: readonly string[]): string {
  return text.join('\n');
}
