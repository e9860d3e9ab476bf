/**
 * The questions of matching, asked of a compiled book.
 *
 * @packageDocumentation
 */

import { type CutBack, cutBack } from '../../matching/cut-back.ts';
import { type FirstRecipe, firstRecipe } from '../../matching/first-recipe.ts';
import { type NextAddition, type NextAdditionQuestion, nextAddition } from '../../matching/next-addition.ts';
import { addedText } from '../../matching/proposals/proposal.ts';
import { unloggedMove, unloggedQuestion } from '../../matching/rounds/unlogged.ts';
import { shelfByName } from '../../matching/shelf/match-material.ts';
import { substitutes } from '../../matching/substitutes/substitutes.ts';
import type { Substitution } from '../../matching/substitutes/substitution.ts';
import type { TargetPart } from '../../matching/target/target-part.ts';
import { required } from '../../values/required.ts';
import type { Book, Cup, Recipe, Target } from '../model.ts';
import { cupAim, partFor, seenWhole } from './cup-aim.ts';
import { cupLimits } from './cup-limits.ts';
import { cupLeft, cupState, observationsOf, seenViews } from './cup-states.ts';

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
  const parts = target.parts.flatMap(({ name }) => partFor(target, name, 1) ?? []);
  const plastic = book.settings.plastic ?? book.materials.find(({ kind }) => kind === 'plastic')?.id ?? '';
  const ask = (asked: readonly TargetPart[]): FirstRecipe =>
    firstRecipe({
      parts: asked,
      flakes: target.flakes,
      plastic,
      plasticMl,
      shelf: book.materials,
      bench: book.settings,
      tolerance: target.tolerance,
      most,
      limits: cupLimits(book.settings, { inStock }),
    });
  if (seenWhole(target)) return [{ part: parts.map(({ name }) => name).join(' and '), recipe: ask(parts) }];
  return parts.map((part) => ({ part: part.name, recipe: ask([part]) }));
}

/** What to add to a cup of a recipe now. */
export function nextAdditionFor(
  book: Book,
  recipe: Recipe,
  cup: Cup,
  target: Target,
  asking: Asking = {},
): NextAddition {
  return nextAddition(question(book, recipe, cup, target, asking));
}

/** Whether a cup of a recipe can be thinned back. */
export function thinningFor(book: Book, recipe: Recipe, cup: Cup, target: Target): CutBack {
  return cutBack(question(book, recipe, cup, target, {}));
}

/** What can stand for a material in a cup of a recipe. */
export function substitutesFor(
  book: Book,
  recipe: Recipe,
  cup: Cup,
  material: string,
  { inStock = false }: Asking = {},
): Substitution {
  const thicknessMm = bodyMm(book, recipe);
  return substitutes({
    cup: cupState(cup, cup.startMl, cup.contents),
    thicknessMm,
    rounds: observationsOf(cup, thicknessMm),
    material,
    shelf: book.materials,
    bench: book.settings,
    tolerance: book.settings.tolerance,
    limits: { inStock },
  });
}

/** What is to be asked of the last round of a cup before anything is added: see `unloggedMove`. */
function askedOf(book: Book, recipe: Recipe, cup: Cup, target: Target, asking: Asking): string | undefined {
  if (!cup.rounds.at(-1) || !seenViews(cup.rounds.at(-1)!)) return undefined;
  const move = unloggedMove(observationsOf(cup, bodyMm(book, recipe)));
  if (!move) return undefined;
  const before = cup.rounds.slice(0, -1).findLastIndex((round) => seenViews(round) !== undefined);
  const then = { ...cup, rounds: cup.rounds.slice(0, before + 1) };
  const [proposed] = nextAdditionFor(book, recipe, then, target, asking).proposals;
  const asks = unloggedQuestion(
    move,
    cup.rounds[before]!.number,
    proposed && addedText(proposed.additions, proposed.thin, book.settings),
  );
  return `${asks} Write what went in before that pour into the log, under \`add\`; if nothing did, write \`add: {}\` there. Until then leave the cup as it is.`;
}

function question(book: Book, recipe: Recipe, cup: Cup, target: Target, asking: Asking): NextAdditionQuestion {
  const { inStock = false } = asking;
  const thickness = bodyMm(book, recipe);
  const aim = cupAim(recipe, cup, target, { shelf: shelfByName(book.materials), bodyMm: thickness });
  if (!aim) throw new RangeError(`no part of ${target.id} is for ${recipe.id}/${cup.name}; ask cupForMatching first`);
  const last = cup.rounds.at(-1);
  const left = cupLeft(cup);
  const poured = last !== undefined && left === undefined;
  const seen = last && left && seenViews(last);
  return {
    cup: poured ? { plastics: {}, materials: {} } : (left ?? cupState(cup, cup.startMl, cup.contents)),
    target: aim.part,
    shelf: book.materials,
    bench: book.settings,
    tolerance: target.tolerance,
    rounds: observationsOf(cup, thickness),
    ...(seen && left ? { seen: aim.asTarget(seen, left) } : {}),
    startMl: Math.round(cup.rounds[0]?.plasticMl ?? cup.startMl),
    limits: cupLimits(book.settings, { inStock }),
    asks: left && askedOf(book, recipe, cup, target, asking),
  };
}

function bodyMm(book: Book, recipe: Recipe): number {
  return required(book.molds, recipe.mold).bodyMm;
}
