/**
 * The questions of matching, asked of what the shelf says where nothing is in doubt, unless a test says otherwise.
 *
 * @packageDocumentation
 */
import type { Beliefs } from '../../src/matching/belief/beliefs.ts';
import { cutBack as askCutBack } from '../../src/matching/cut-back.ts';
import { firstRecipe as askFirstRecipe } from '../../src/matching/first-recipe.ts';
import type { FirstRecipeQuestion } from '../../src/matching/first-recipe-question.ts';
import { nextAddition as askNextAddition } from '../../src/matching/next-addition.ts';
import type { NextAdditionQuestion } from '../../src/matching/next-addition-question.ts';
import { substitutes as askSubstitutes } from '../../src/matching/substitutes/substitutes.ts';
import type { SubstituteQuestion } from '../../src/matching/substitutes/substitution.ts';
import { plainBelief } from './plain-belief.ts';

type Plain<Q extends { readonly belief: unknown }> = Omit<Q, 'belief'> & Partial<Pick<Q, 'belief'>>;

const beliefOf = ({
  shelf,
  optics,
  belief,
}: Plain<Pick<NextAdditionQuestion, 'shelf' | 'optics' | 'belief'>>): Beliefs =>
  belief ?? plainBelief(shelf, {}, optics);

export const firstRecipe = (question: Plain<FirstRecipeQuestion>): ReturnType<typeof askFirstRecipe> =>
  askFirstRecipe({ ...question, belief: beliefOf(question) });
export const nextAddition = (question: Plain<NextAdditionQuestion>): ReturnType<typeof askNextAddition> =>
  askNextAddition({ ...question, belief: beliefOf(question) });
export const cutBack = (question: Plain<NextAdditionQuestion>): ReturnType<typeof askCutBack> =>
  askCutBack({ ...question, belief: beliefOf(question) });
export const substitutes = (question: Plain<SubstituteQuestion>): ReturnType<typeof askSubstitutes> =>
  askSubstitutes({ ...question, belief: beliefOf(question) });
