import type { FirstRecipe } from '../../../../src/matching/first-recipe.ts';
import type { NextAddition } from '../../../../src/matching/next-addition.ts';
import type { RecipeProposal } from '../../../../src/matching/proposals/recipe-proposal.ts';
import { defined } from '../../../../src/values/defined.ts';
import type { LoggedAmount } from '../book/log-text.ts';
import { numberIn } from './number-in.ts';

/** What a maker does next, by what the book says. */
export interface ToDo {
  /** Begun afresh, with so much plastic. */
  readonly newCupMl?: number;
  readonly thinMl?: number;
  readonly add: readonly LoggedAmount[];
}

/** What a book promises of a pour, ΔE00; each is missing where it says no such thing. */
export interface Promised {
  /** Of the colour that it works out, without any doubt. */
  readonly worked: number;
  readonly expected?: number;
  readonly bound?: number;
  readonly likely?: number;
}

/** The first pour: the best proposal, or plain plastic where that is right; nothing where nothing is proposed. */
export function firstPour({ advice, proposals }: FirstRecipe): ToDo | undefined {
  const [best] = proposals;
  if (best) return { add: amountsOf(best) };
  return advice.kind === 'leave-plain' ? { add: [] } : undefined;
}

/** The next step by the best proposal; undefined where the book says to stop, or has nothing to propose. */
export function nextStep({ advice, proposals, startAgain }: NextAddition): ToDo | undefined {
  const [best] = proposals;
  switch (advice.kind) {
    case 'start-over':
      return startAgain && afresh(startAgain);
    case 'add':
    case 'cannot':
      if (best) return { add: best.additions, ...(best.thin ? { thinMl: best.thin.ml } : {}) };
      return startAgain && afresh(startAgain);
    default:
      return undefined;
  }
}

/** How a course ends, by what the book says: its advice, and its reason where it has one. */
export function ending({ advice }: Pick<NextAddition | FirstRecipe, 'advice'>): string {
  const because = 'because' in advice ? `: ${advice.because}` : '';
  return `${advice.kind}${because}`;
}

/** What is promised of the best proposal. */
export function promisedOf(proposal: RecipeProposal): Promised {
  return {
    worked: proposal.deltaE,
    ...defined({
      expected: numberIn(proposal, 'expected'),
      bound: numberIn(proposal, 'bound90'),
      likely: numberIn(proposal, 'likely'),
    }),
  };
}

function amountsOf({ cups }: RecipeProposal): readonly LoggedAmount[] {
  return cups.flatMap(({ amounts }) => amounts);
}

function afresh(proposal: RecipeProposal): ToDo {
  const [cup] = proposal.cups;
  return { newCupMl: cup?.plasticMl ?? 0, add: amountsOf(proposal) };
}
