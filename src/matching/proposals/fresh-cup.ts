import { withoutCuts } from '../../cup/cut.ts';
import { type CupState, concentrations, total } from '../../cup/ledger.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import { type FirstRecipe, firstRecipe } from '../first-recipe.ts';
import type { NextAdditionQuestion } from '../next-addition-question.ts';
import { colours, type MatchMaterial } from '../shelf/match-material.ts';
import { type ShortPlastic, shortPlastic } from '../shelf/short-stock.ts';
import { standIns } from './flakes-now.ts';
import type { Proposal } from './proposal.ts';
import type { RecipeProposal } from './recipe-proposal.ts';

/**
 * The colour of a cup in a new one, from plain plastic, with what looks have taught, and with the flake that is wanted: the best proposal
 * alone, if there is any.
 */
export function freshRecipe(question: NextAdditionQuestion): FirstRecipe {
  const { cup, target, shelf, optics, belief, bench, tolerance, limits } = question;
  const { inStock, effects, without } = limits ?? {};
  const cuts = new Map(shelf.flatMap((material) => (material.cuts ?? []).map((cut) => [cut.id, cut] as const)));
  // What came with a cut comes again with one, or not at all.
  const contents = concentrations(withoutCuts(cup, (name) => cuts.get(name)));
  const byName = new Map(shelf.map((material) => [material.id, material]));
  const flakes = (question.flakes ?? []).filter(({ coverage }) => coverage !== undefined);
  const wanted = new Set(standIns(question, byName).map(({ material }) => material.id));
  const kept = (name: string): boolean => !colours(required(byName, name)) && !wanted.has(name);
  const keep = Object.fromEntries(Object.entries(contents).filter(([name]) => kept(name)));
  return firstRecipe({
    parts: [{ ...target, flakes }],
    plastic: plasticOf(cup),
    plasticMl: freshMl(question),
    // The flake that this cup has stays the one of the next.
    shelf: shelf.filter(({ id, flake }) => !flake || wanted.has(id) || Object.hasOwn(keep, id)),
    optics,
    bench,
    tolerance,
    belief,
    keep,
    limits: defined({ inStock, effects, without }),
    finishes: true,
    proposals: 1,
  });
}

/** The best of `freshRecipe`; undefined where there is none. */
export function freshCup(question: NextAdditionQuestion): RecipeProposal | undefined {
  const [best] = freshRecipe(question).proposals;
  return best;
}

/** Whether the shelf may get to the colour from plain plastic, by all that is in doubt. */
export function mayReach({ advice }: FirstRecipe): boolean {
  return advice.kind === 'make' || advice.kind === 'leave-plain';
}

/** The plastic that a new cup has too little of, where only what is on the shelf may be used; undefined where there is enough. */
export function freshShort(question: NextAdditionQuestion): ShortPlastic | undefined {
  const { cup, shelf, limits } = question;
  if (!limits?.inStock) return undefined;
  const anew = { plastic: plasticOf(cup), plasticMl: freshMl(question) };
  return shortPlastic([anew], new Map(shelf.map((material) => [material.id, material])));
}

/** The plastic that most of a cup is. */
function plasticOf({ plastics }: CupState): string {
  const [most] = Object.keys(plastics).sort((one, other) => plastics[other]! - plastics[one]!);
  return most!;
}

/** Plastic that a new cup is started with, ml: never more than a cup is filled to. */
export function freshMl({ cup, startMl = total(cup.plastics), limits }: NextAdditionQuestion): number {
  return Math.min(startMl, limits?.roomMl ?? Number.POSITIVE_INFINITY);
}

/** Whether an addition is so large that a new cup has to be thought of: more than all that colours this one, or a cup of plastic. */
export function isLarge({ additions, thin }: Proposal, question: NextAdditionQuestion): boolean {
  const shelf = new Map(question.shelf.map((material) => [material.id, material]));
  const inCup = colourGrams(
    Object.entries(question.cup.materials).map(([material, grams]) => ({ material, grams })),
    shelf,
  );
  const more = inCup > 0 && colourGrams(additions, shelf) > inCup;
  return more || (thin?.ml ?? 0) > freshMl(question);
}

// So much more material than a new cup takes: a cup that was hardly begun needs about as much. Convention of this book.
const OUT_OF_PROPORTION = 1.5;

/** Whether an addition is out of proportion: it takes far more material than a new cup, or more plastic. */
export function takesMore(
  { additions, thin }: Proposal,
  { cups }: RecipeProposal,
  question: NextAdditionQuestion,
): boolean {
  const shelf = new Map(question.shelf.map((material) => [material.id, material]));
  const anew = colourGrams(
    cups.flatMap(({ amounts }) => amounts),
    shelf,
  );
  return colourGrams(additions, shelf) > OUT_OF_PROPORTION * anew || (thin?.ml ?? 0) > freshMl(question);
}

function colourGrams(
  amounts: readonly { readonly material: string; readonly grams: number }[],
  shelf: ReadonlyMap<string, MatchMaterial>,
): number {
  return amounts.reduce((sum, { material, grams }) => sum + (colours(required(shelf, material)) ? grams : 0), 0);
}
