/**
 * The questions of matching, asked of a compiled book.
 *
 * @packageDocumentation
 */
import { steadiedBench } from '../../matching/belief/steadied-bench.ts';
import { type CupAsked, nextForCup, questionAskedFirst } from '../../matching/cup-question.ts';
import { type CutBack, cutBack } from '../../matching/cut-back.ts';
import { type FirstRecipe, firstRecipe } from '../../matching/first-recipe.ts';
import type { PartAsked } from '../../matching/first-recipe-question.ts';
import type { NextAddition } from '../../matching/next-addition.ts';
import { withWrongLog } from '../../matching/rounds/seen-and-believed.ts';
import type { WrongLog } from '../../matching/rounds/wrong-log.ts';
import { substitutes } from '../../matching/substitutes/substitutes.ts';
import type { Substitution } from '../../matching/substitutes/substitution.ts';
import type { TargetPart } from '../../matching/target/target-part.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import { keyOfCup } from '../learning/cup-keys.ts';
import { beliefOf } from '../learning/eye-of.ts';
import { taughtBefore } from '../learning/taught-before.ts';
import type { Cup } from '../model/cup.ts';
import type { Recipe } from '../model/recipe.ts';
import type { Target } from '../model/target.ts';
import type { Book } from '../model.ts';
import { askedCup, askedWith, cupOf, partFor, seenWhole } from './asked-cup.ts';
import { cupLimits } from './cup-limits.ts';
import { matchPlastic } from './match-cup.ts';
import { shelfAfter } from './shelf-after.ts';

/** What of the shelf may be used. */
export interface Asking {
  readonly inStock?: boolean;
}

/** Recipes for a part of a target, or for its two sides together. */
export interface PartRecipe {
  readonly part: string;
  readonly recipe: FirstRecipe;
}

/** A target for a cup that was named: one colour is that of the cup, whatever other cups there are. */
export function targetForCup(target: Target, cup: Cup): Target {
  const [only, ...others] = target.parts;
  return only && others.length === 0 ? { ...target, parts: [{ ...only, name: cup.name }] } : target;
}

/** The part of a target that a cup is for. */
export function cupForMatching(target: Target, cup: Cup, recipe: Recipe): TargetPart | undefined {
  return partFor(target, cup.name, recipe.cups.length);
}

/**
 * First recipes for a target: one answer for both sides of a finished bait, each with the other behind it (see `seenWhole`); else one
 * for each part, as it was seen by itself.
 */
export function firstRecipeFor(
  book: Book,
  target: Target,
  { most, inStock = false, plasticMl }: Asking & { readonly most: number; readonly plasticMl: number },
): readonly PartRecipe[] {
  const parts = target.parts.flatMap(({ name, flakes, plastic: own }): readonly PartAsked[] => {
    const part = partFor(target, name, 1);
    return part ? [{ ...part, flakes, ...defined({ plastic: own }) }] : [];
  });
  const belief = beliefOf(book.learned);
  const bench = steadiedBench(book.settings, belief, book.materials);
  const plastic = matchPlastic(book) ?? '';
  const mold = book.molds.find(({ id }) => id === target.mold);
  const ask = (asked: readonly PartAsked[], shelf = book.materials): FirstRecipe =>
    firstRecipe({
      parts: asked,
      ...defined({ mold }),
      plastic,
      plasticMl,
      shelf,
      optics: book.optics,
      belief,
      bench,
      tolerance: target.tolerance,
      most,
      limits: cupLimits(book.settings, { inStock, effect: target.effect }),
    });
  if (seenWhole(target)) return [{ part: parts.map(({ name }) => name).join(' and '), recipe: ask(parts) }];
  let shelf = book.materials;
  return parts.map((part): PartRecipe => {
    const recipe = ask([part], shelf);
    // The next cup is filled from the same bottles.
    const [first] = recipe.proposals;
    if (first) shelf = shelfAfter(shelf, first.cups);
    return { part: part.name, recipe };
  });
}

/** What to add to a cup of a recipe now. */
export function nextAdditionFor(
  book: Book,
  recipe: Recipe,
  cup: Cup,
  target: Target,
  { inStock = false }: Asking = {},
): NextAddition {
  const { next } = nextForCup(requiredCup(book, recipe, cup, target), askedWith(believing(book), target, inStock));
  return withWrongLog(next, () => wrongLogOf(book, recipe, cup));
}

/** Whether a cup of a recipe can be let down. */
export function lettingDownFor(book: Book, recipe: Recipe, cup: Cup, target: Target): CutBack {
  const asked = requiredCup(book, recipe, cup, target);
  const answer = cutBack(questionAskedFirst(asked, askedWith(believing(book), target)).question);
  return withWrongLog(answer, () => wrongLogOf(book, recipe, cup));
}

/** What is wrong with the log of a cup as it is now, as far as the book knows. */
function wrongLogOf({ doubted = [] }: Book, { id }: Recipe, { name, rounds }: Cup): WrongLog | undefined {
  const begun = rounds.findLast(({ newCup }) => newCup !== undefined)?.number ?? 1;
  return doubted.findLast(
    ({ of, id: recipe, at, wrong }) =>
      wrong && of === 'recipe' && recipe === id && 'cup' in at && at.cup === name && at.round >= begun,
  )?.wrong;
}

/** What can stand for a material in a cup of a recipe. */
export function substitutesFor(
  book: Book,
  recipe: Recipe,
  cup: Cup,
  material: string,
  { inStock = false }: Asking = {},
): Substitution {
  const mold = required(book.molds, recipe.mold);
  const thicknessMm = mold.bodyMm;
  const belief = beliefOf(book.learned);
  return substitutes({
    mold,
    cup: cupOf(cup, cup.startMl),
    thicknessMm,
    key: keyOfCup(recipe.id, cup),
    belief,
    material,
    shelf: book.materials,
    optics: book.optics,
    bench: steadiedBench(book.settings, belief, book.materials),
    tolerance: book.settings.tolerance,
    limits: { inStock },
  });
}

/** A book with what its looks have taught. */
function believing(book: Book): Parameters<typeof askedWith>[0] {
  const { learned, materials } = book;
  return {
    ...book,
    belief: beliefOf(learned),
    before: (cup, round) => taughtBefore(learned, materials, cup, round),
  };
}

function requiredCup(book: Book, recipe: Recipe, cup: Cup, target: Target): CupAsked {
  const asked = askedCup(recipe, cup, target, bodyMm(book, recipe));
  if (!asked) throw new RangeError(`no part of ${target.id} is for ${recipe.id}/${cup.name}; ask cupForMatching first`);
  return asked;
}

function bodyMm(book: Book, recipe: Recipe): number {
  return required(book.molds, recipe.mold).bodyMm;
}
