import type { FirstRecipe } from '../matching/first-recipe.ts';
import type { RecipeProposal } from '../matching/proposals/recipe-proposal.ts';
import type { VolumeUnit } from '../units/volume-text.ts';
import { weightsText } from './amount.ts';
import { expectationText, leftWords } from './expectation.ts';
import { matchFaultText } from './match-fault.ts';
import { hinderedSentences, missingSentences } from './missing.ts';
import { hitches, recipeText, weighedWords } from './proposal.ts';
import { ONE_IN_TEN } from './scale.ts';
import { listText } from './sentence-text.ts';
import { shortPlasticText } from './stock.ts';

/** What there is to say of a first recipe besides what it is: all of an answer that has none. */
export function besidesRecipeText(answer: FirstRecipe, units: VolumeUnit): string {
  const { advice, proposals, missing, hindered, byHand } = answer;
  const [best] = proposals;
  if (!best || (advice.kind !== 'make' && advice.kind !== 'cannot')) return firstRecipeText(answer, units);
  return advice.kind === 'make'
    ? [
        ...(advice.nearerBy === undefined ? [] : [nearerText(best, advice.nearerBy)]),
        ...hitches(best, byHand, units),
      ].join(' ')
    : [
        'Nothing on the shelf gets within tolerance. This comes closest.',
        ...hinderedSentences(hindered),
        ...missingSentences(missing),
        ...hitches(best, byHand, units),
      ].join(' ');
}

/** What to make of a target. */
export function firstRecipeText(answer: FirstRecipe, units: VolumeUnit): string {
  const { advice, proposals, missing, hindered, byHand } = answer;
  const [best] = proposals;
  switch (advice.kind) {
    case 'fault':
      return matchFaultText(advice.fault, units);
    case 'leave-plain':
      return `Plain ${listText(advice.plasticTitles)} as it is: ${expectationText(advice)}. Add nothing${leftWords(advice)}.`;
    case 'make':
      return [
        recipeText(best!, units),
        ...(advice.nearerBy === undefined ? [] : [nearerText(best!, advice.nearerBy)]),
        ...hitches(best, byHand, units),
      ].join(' ');
    case 'cannot':
      if (advice.because === 'short-of-plastic')
        return `That takes ${shortPlasticText(advice, units)}: make less, or buy some.`;
      return [
        ...(advice.because === 'nothing-usable'
          ? ['There is no colorant or powder on the shelf that can be used here.']
          : best
            ? [
                `Nothing on the shelf gets within tolerance. The best recipe: ${recipeText(best, units, weighedWords(best))}`,
              ]
            : ['Nothing on the shelf gets closer to this colour than plain plastic.']),
        ...hinderedSentences(hindered),
        ...missingSentences(missing),
        ...hitches(best, byHand, units),
      ].join(' ');
  }
}

function nearerText(
  { cups, exact, weighed }: RecipeProposal,
  nearerBy: 'a-scale' | 'weighing' | 'making-more',
): string {
  switch (nearerBy) {
    case 'a-scale':
      return `Drops and spoons get no closer. With a scale: ${expectationText(exact)}; or make a cut of the strongest colour, ${ONE_IN_TEN}.`;
    case 'making-more':
      return `Your measures get no closer: make a cut of the strongest colour, ${ONE_IN_TEN}, or make more at once.`;
    case 'weighing': {
      const each = cups.map(({ name, amounts }) => `${cups.length > 1 ? `${name}: ` : ''}${weightsText(amounts)}`);
      return `Weighed, it gets closer, ${expectationText(weighed!)}: ${each.join('; ')}.`;
    }
  }
}
