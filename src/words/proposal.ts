/**
 * What could be done to a cup, and recipes.
 *
 * @packageDocumentation
 */
import type { Expectation } from '../matching/belief/expectation.ts';
import type { PromisedByTools } from '../matching/measure/best-tools.ts';
import type { TooLittle } from '../matching/measure/too-little.ts';
import { WORTH_A_WORD } from '../matching/measure/weigh-doses.ts';
import type { Proposal } from '../matching/proposals/proposal.ts';
import type { RecipeProposal } from '../matching/proposals/recipe-proposal.ts';
import type { ShortStock } from '../matching/shelf/short-stock.ts';
import { type VolumeUnit, volumeText } from '../units/volume-text.ts';
import { amountsText, toAddText } from './amount.ts';
import { expectationText } from './expectation.ts';
import { tooLittleText } from './scale.ts';
import { sentence } from './sentence-text.ts';
import { runsShortText } from './stock.ts';

/** "Add 3 drops of Lamp Black and 1/8 tsp of Ivory Pearl." */
export function proposalText(proposal: Proposal, units: VolumeUnit): string {
  return `Add ${toAddText(proposal, units)}.`;
}

/**
 * "12 drops of Peat and 1/8 tsp of Ivory Pearl in 120 ml of Supple: you won’t see it (expect ΔE 0.8, nine in ten within 1.9)."
 *
 * @param also what the sentence ends with, as `weighedWords` gives it
 */
export function recipeText(recipe: RecipeProposal, units: VolumeUnit, also = ''): string {
  const { cups } = recipe;
  const each = cups.map(({ name, amounts, plasticMl, plasticTitle }) => {
    const what = amounts.length === 0 ? 'nothing' : amountsText(amounts);
    return `${cups.length > 1 ? `${name}: ` : ''}${what} in ${volumeText(plasticMl, units)} of ${plasticTitle}`;
  });
  return `${each.join('; ')}: ${expectationText(recipe)}${also}.`;
}

/** "; weighed, just visible (expect ΔE 1.6, nine in ten within 3.1)", where that is less; else nothing. */
export function weighedWords({ expected, weighed }: PromisedByTools): string {
  return weighed && weighed.expected < expected - WORTH_A_WORD ? `; weighed, ${expectationText(weighed)}` : '';
}

/** What must be told of a proposal beside what it is: that some of it is too little to weigh, or more than there is; sentences. */
export function hitches(
  best:
    | { readonly tooLittle?: TooLittle; readonly weighed?: Expectation; readonly runsShort?: readonly ShortStock[] }
    | undefined,
  byHand: Expectation | undefined,
  units: VolumeUnit,
): readonly string[] {
  const { tooLittle, weighed, runsShort } = best ?? {};
  return [
    ...(byHand === undefined ? [] : [`By drops and spoons the best is further off: ${expectationText(byHand)}.`]),
    ...(tooLittle === undefined || weighed !== undefined ? [] : [sentence(tooLittleText(tooLittle))]),
    ...(runsShort === undefined ? [] : [runsShortText(runsShort, units)]),
  ];
}

/** "You haven’t looked at Loam yet: a look at this pour tells the book how strong it is." */
export function triesText(title: string): string {
  return `You haven’t looked at ${title} yet: a look at this pour tells the book how strong it is.`;
}

/** Of the one recipe in a list that tries no bottle. */
export const TRIES_NONE_SENTENCE = 'You’ve looked at every bottle in this one.';
