/**
 * The answers of matching as text.
 *
 * @packageDocumentation
 */

import type { Book } from '../book/model.ts';
import { costWords } from '../book/words/cost-words.ts';
import { MEASURED_TOGETHER, VERDICT_WORDS } from '../book/words/verdict-words.ts';
import type { CutBack } from '../matching/cut-back.ts';
import type { FirstRecipe } from '../matching/first-recipe.ts';
import { weightsText } from '../matching/measure/weigh-doses.ts';
import type { NextAddition } from '../matching/next-addition.ts';
import type { Proposal } from '../matching/proposals/proposal.ts';
import type { RecipeProposal } from '../matching/proposals/recipe-proposal.ts';
import type { Substitute, Substitution } from '../matching/substitutes/substitution.ts';
import { formatTemperature } from '../units/format-quantity.ts';
import { moneyText } from '../units/money-text.ts';
import { volumeText } from '../units/volume-text.ts';
import { CAUTION } from './caution.ts';

/** What the words of an answer mean, for the end of it. */
export function legendText({ weighed, inStock }: { readonly weighed: boolean; readonly inStock: boolean }): string {
  return lines([
    ...VERDICT_WORDS,
    ...(weighed ? [MEASURED_TOGETHER] : []),
    ...(inStock ? ['--in-stock leaves out what is used up; what has no `stock` in its file counts as there.'] : []),
  ]);
}

type Money = Pick<Book, 'settings' | 'materials'>;

/** First recipes. */
export function firstRecipeText(
  part: string,
  { advice, sentence, proposals, flakes, leftOut }: FirstRecipe,
  book: Money,
): string {
  return lines([
    `${part}: ${sentence}`,
    ...proposals.flatMap((proposal, index) => ['', ...recipeLines(proposal, index + 1, book)]),
    ...flakes.map(({ title, words }) => `Flake: ${title}, ${words}.`),
    ...leftOut.map(({ material, why }) => `Left out: ${titleOf(material, book)}, since ${why}.`),
    ...(advice === 'fault' || proposals.length === 0 ? [] : ['', CAUTION]),
  ]);
}

/** What to add. */
export function nextAdditionText(
  cup: string,
  { sentence, now, proposals, leftOut, startAgain }: NextAddition,
  book: Money,
): string {
  return lines([
    ...(now ? [nowText(cup, now)] : []),
    `${now ? '' : `${cup}: `}${sentence}`,
    ...proposals.flatMap((proposal, index) => ['', ...proposalLines(proposal, index + 1, book)]),
    ...(startAgain
      ? ['', proposals.length > 0 ? 'Or a new cup:' : 'A new cup:', ...recipeLines(startAgain, undefined, book)]
      : []),
    ...leftOut.map(({ material, why }) => `Left out: ${titleOf(material, book)}, since ${why}.`),
    ...(proposals.length > 0 || startAgain ? ['', CAUTION] : []),
  ]);
}

/** Whether to thin. */
export function cutBackText(cup: string, { sentence, now, thinned, mended, fresh }: CutBack, book: Money): string {
  return lines([
    ...(now ? [nowText(cup, now)] : []),
    `${now ? '' : `${cup}: `}${sentence}`,
    ...(thinned ? ['', 'With plastic alone:', ...proposalLines(thinned, undefined, book)] : []),
    ...(mended ? ['', 'With plastic and something to mend it:', ...proposalLines(mended, undefined, book)] : []),
    ...(fresh ? ['', 'A new cup:', ...recipeLines(fresh, undefined, book)] : []),
    ...(thinned || mended || fresh ? ['', CAUTION] : []),
  ]);
}

/** What can stand for a material. */
export function substitutionText(cup: string, { sentence, swaps, recipes, flakes }: Substitution): string {
  const list = (title: string, each: readonly Substitute[]): readonly string[] =>
    each.length === 0
      ? []
      : [
          '',
          title,
          ...each.flatMap((one) => [
            `  ${one.sentence}`,
            ...(one.weighedDeltaE === undefined
              ? []
              : [`    or weigh all: ${weightsText(one.amounts)}; ΔE ${one.weighedDeltaE.toFixed(1)}`]),
          ]),
        ];
  return lines([
    `${cup}: ${sentence}`,
    ...list('One for one:', swaps),
    ...list('Made anew without it:', recipes),
    ...(flakes.length === 0
      ? []
      : ['', 'Flakes:', ...flakes.map(({ text, title, words }) => `  ${text.padEnd(20)} ${title}: ${words}`)]),
  ]);
}

function recipeLines(
  { cups, sides, weighedDeltaE, tooLittle, runsShort, deltaEUnderA, cost, unpriced, limit }: RecipeProposal,
  number: number | undefined,
  book: Money,
): readonly string[] {
  const many = cups.length > 1;
  const all = cups.flatMap(({ amounts }) => amounts);
  const wide = Math.max(14, ...all.map(({ text }) => text.length)) + 2;
  return [
    ...cups.flatMap(({ name, plastic, plasticMl, amounts, alone }, index) => {
      const head = [...(number === undefined || index > 0 ? [] : [`${number}.`]), ...(many ? [`${name}:`] : [])].join(
        ' ',
      );
      return [
        ...(head === '' ? [] : [head]),
        `  ${volumeText(plasticMl, book.settings).padEnd(wide)}${titleOf(plastic, book)}`,
        ...amounts.map(({ text, title }) => `  ${text.padEnd(wide)}${title}`),
        ...(many
          ? [`  poured alone it looks like ${alone.overWhite.hex} over white, ${alone.overBlack.hex} over black`]
          : []),
      ];
    }),
    ...sides.map(
      ({ name, overWhite, overBlack, left }) =>
        `  ${many ? `${name}: ` : ''}${overWhite.hex}${overBlack ? ` over white, ${overBlack.hex} over black` : ''}; ${leftText(left)}`,
    ),
    ...(weighedDeltaE === undefined
      ? []
      : [
          `  or weigh all: ${cups.map(({ name, amounts }) => `${many ? `${name}: ` : ''}${weightsText(amounts)}`).join('; ')}; that leaves ΔE ${weighedDeltaE.toFixed(1)}`,
        ]),
    ...(tooLittle === undefined ? [] : [`  ${tooLittle}`]),
    ...(runsShort === undefined ? [] : [`  ${runsShort}`]),
    `  under a lamp ΔE ${deltaEUnderA.toFixed(1)}; ${costText(cost, unpriced, book)}${limitText(limit, book)}`,
  ];
}

function proposalLines(
  {
    sentence,
    additions,
    overWhite,
    overBlack,
    left,
    weighedDeltaE,
    tooLittle,
    runsShort,
    volumeMl,
    cost,
    unpriced,
    limit,
  }: Proposal,
  number: number | undefined,
  book: Money,
): readonly string[] {
  return [
    `${number === undefined ? '' : `${number}. `}${sentence}`,
    `   leaves ${left.within ? 'it ' : ''}${leftText(left)}`,
    ...(weighedDeltaE === undefined
      ? []
      : [`   or weigh all: ${weightsText(additions)}; that leaves ΔE ${weighedDeltaE.toFixed(1)}`]),
    ...(tooLittle === undefined ? [] : [`   ${tooLittle}`]),
    ...(runsShort === undefined ? [] : [`   ${runsShort}`]),
    `   ${overWhite.hex}${overBlack ? ` over white, ${overBlack.hex} over black` : ''}; ${volumeText(volumeMl, book.settings)} in the cup; ${costText(cost, unpriced, book)}${limit?.lowered ? limitText(limit, book) : ''}`,
  ];
}

/** A verdict with its size, which one within tolerance tells itself. */
function leftText({ within, deltaE, sentence }: Proposal['left']): string {
  return within ? sentence : `ΔE ${deltaE.toFixed(1)}: ${sentence}`;
}

function nowText(cup: string, { sentence, deltaE, within }: NonNullable<NextAddition['now']>): string {
  return `${cup} now: ${sentence}${within ? '' : ` (ΔE ${deltaE.toFixed(1)})`}`;
}

function costText(cost: number, unpriced: readonly string[], { settings, materials }: Money): string {
  const names = unpriced.map((id) => titleOf(id, { materials }));
  return costWords(cost, names, (amount) => moneyText(amount, settings));
}

function limitText(limit: { readonly celsius: number; readonly material: string } | undefined, book: Money): string {
  return limit === undefined
    ? ''
    : `; not above ${formatTemperature(limit.celsius, book.settings.temperature, 'down')} (${titleOf(limit.material, book)})`;
}

function titleOf(id: string, { materials }: Pick<Money, 'materials'>): string {
  return materials.find((material) => material.id === id)?.title ?? id;
}

function lines(text: readonly string[]): string {
  return text.join('\n');
}
