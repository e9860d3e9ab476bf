/**
 * The questions of matching, asked of a match in the making.
 *
 * @packageDocumentation
 */

import type { CupAim } from '../../book/match/cup-aim.ts';
import { cupLimits } from '../../book/match/cup-limits.ts';
import { type FirstRecipe, firstRecipe } from '../../matching/first-recipe.ts';
import { type NextAddition, nextAddition } from '../../matching/next-addition.ts';
import { addedText, type Proposal } from '../../matching/proposals/proposal.ts';
import type { RecipeAmount, RecipeProposal } from '../../matching/proposals/recipe-proposal.ts';
import { unloggedMove, unloggedQuestion } from '../../matching/rounds/unlogged.ts';
import type { TargetPart } from '../../matching/target/target-part.ts';
import type { MatchPageData } from '../../render/pages/match.ts';
import type { VolumeUnit } from '../../units/volume-text.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import { aimFor, bodyOf, densityIn } from './aim-for.ts';
import { bookAmount, fileDose } from './dose-text.ts';
import { leadsByWeight } from './leads-by-weight.ts';
import { within } from './limits.ts';
import { shelfLeft } from './shelf-left.ts';
import {
  beforeLastLook,
  begunAnew,
  type CupNow,
  cupNow,
  partOfSide,
  type Work,
  type WorkAmount,
  type WorkSide,
  type WorkStep,
} from './work.ts';
import { bookColour, colourText, type WorkColour } from './work-colour.ts';

/** Recipes for one side, or for both together. */
export interface FirstAnswer {
  readonly part: string;
  readonly recipe: FirstRecipe;
}

/** All that is worked out of a cup. */
export interface CupAdvice {
  readonly now: CupNow;
  readonly aim: CupAim;
  readonly next: NextAddition;
  /** The last round moved with nothing logged: what had been proposed before it, if anything was. */
  readonly unlogged?: { readonly proposed?: Proposal };
}

/** A new match: a target that is to be described. */
export function newWork(data: MatchPageData): Work {
  const mold = data.molds[0]!;
  return withTarget(
    {
      format: 1,
      title: '',
      arrangement: 'solid',
      sides: [],
      tolerance: within('tolerance', data.settings.tolerance),
      mold: mold.id,
      plastic: data.plastic,
      plasticMl: data.plasticMl,
      without: [],
      inStock: false,
      cups: [],
    },
    [{ name: 'body', overWhite: '#8a6a44', overBlack: '#5d4c36', thicknessMm: within('thicknessMm', mold.bodyMm) }],
  );
}

function withTarget(work: Work, sides: readonly WorkSide[]): Work {
  return { ...work, sides, cups: sides.map(({ name }) => ({ name, steps: [] })) };
}

/** The match begun with a target of the book. */
export function withBookTarget(work: Work, id: string, data: MatchPageData): Work {
  const target = data.targets.find((each) => each.id === id);
  if (!target) {
    const { target: _, ...rest } = work;
    return rest;
  }
  // A laminate has two sides; of a target with more parts the first two are taken.
  const parts = target.parts.slice(0, 2);
  const sides = parts.map(
    ({ name, overWhite, overBlack, thicknessMm }): WorkSide => ({
      name,
      overWhite: bookColour(overWhite),
      ...(overBlack && { overBlack: bookColour(overBlack) }),
      thicknessMm: within('thicknessMm', thicknessMm),
    }),
  );
  const mold = data.molds.some((each) => each.id === target.mold) ? target.mold! : work.mold;
  return withTarget(
    {
      ...work,
      target: id,
      title: work.title,
      arrangement: sides.length === 1 ? 'solid' : target.apart || target.parts.length > 2 ? 'apart' : 'together',
      tolerance: within('tolerance', target.tolerance),
      mold,
    },
    sides,
  );
}

/** A side as matching takes it; what was measured of the target's part counts while the side has its colours. */
function asked(side: WorkSide, { target }: Work, data: MatchPageData): TargetPart {
  const part = data.targets
    .find(({ id }) => id === target)
    ?.parts.find(({ name, overWhite, overBlack }) => {
      const same = (one?: WorkColour, other?: WorkColour): boolean =>
        (one && colourText(one)) === (other && colourText(other));
      return (
        name === side.name &&
        same(bookColour(overWhite), side.overWhite) &&
        same(overBlack && bookColour(overBlack), side.overBlack)
      );
    });
  return { ...partOfSide(side), ...(part?.reflectance && { reflectance: part.reflectance }) };
}

/** First recipes for the sides of a match. */
export function firstAnswers(work: Work, data: MatchPageData): readonly FirstAnswer[] {
  const ask = (sides: readonly WorkSide[], anew: readonly number[]): FirstRecipe =>
    firstRecipe({
      parts: sides.map((side) => asked(side, work, data)),
      flakes: data.targets.find(({ id }) => id === work.target)?.flakes ?? [],
      plastic: work.plastic,
      plasticMl: work.plasticMl,
      shelf: shelfLeft(work, data, anew),
      bench: data.settings,
      tolerance: work.tolerance,
      limits: cupLimits(data.settings, work),
    });
  if (work.arrangement === 'together')
    return [{ part: work.sides.map(({ name }) => name).join(' and '), recipe: ask(work.sides, [0, 1]) }];
  return work.sides.map((side, index) => ({ part: side.name, recipe: ask([side], [index]) }));
}

/** The match with the cups of a proposal begun, by drops and spoons or by weight. */
export function withRecipe(
  work: Work,
  answer: number,
  recipe: RecipeProposal,
  data: MatchPageData,
  weighing = false,
): Work {
  const { cups } = recipe;
  return cups.reduce(
    (all, cup, at) =>
      begunAnew(all, cups.length > 1 ? at : answer, [
        { do: 'add', recipe: true, amounts: amountsOf(cup.amounts, data, weighing) },
      ]),
    work,
  );
}

/** Measured amounts as the log keeps them: as drops and spoons, or as what was weighed instead. */
export function amountsOf(
  amounts: readonly Pick<RecipeAmount, 'material' | 'grams' | 'text' | 'weighed'>[],
  data: MatchPageData,
  weighing = false,
): readonly WorkAmount[] {
  return amounts.map((amount) => {
    const material = required(data.materials, amount.material);
    const { grams, text } = weighing ? (amount.weighed ?? amount) : amount;
    return bookAmount({ material: amount.material, dose: fileDose({ grams, text }, material), grams }, material);
  });
}

/** What a cup is to show, what it is like now, and what to add to it. */
export function adviceFor(work: Work, index: number, data: MatchPageData): CupAdvice {
  const now = cupNow(work, index, densityIn(data), bodyOf(work, data));
  const aim = aimFor(work, index, data);
  const { settings } = data;
  const unlogged = unloggedIn(work, index, now, data);
  const next = nextAddition({
    cup: now.cup,
    target: aim.part,
    shelf: shelfLeft(work, data),
    bench: settings,
    tolerance: work.tolerance,
    rounds: now.rounds,
    ...(now.seen ? { seen: aim.asTarget(now.seen, now.looked) } : {}),
    startMl: work.plasticMl,
    limits: cupLimits(settings, work),
    asks: unlogged?.asks,
  });
  return { now, aim, next, ...defined({ unlogged }) };
}

/** What is to be asked of the last round, with what had been proposed before it; undefined where nothing is. */
function unloggedIn(
  work: Work,
  index: number,
  now: CupNow,
  data: MatchPageData,
): { readonly asks: string; readonly proposed?: Proposal } | undefined {
  const move = now.seen && unloggedMove(now.rounds);
  if (!move) return undefined;
  const [proposed] = adviceFor(beforeLastLook(work, index), index, data).next.proposals;
  const words = proposed && addedWords(proposed, data.settings);
  return { asks: unloggedQuestion(move, now.rounds.at(-2)!.number, words), ...defined({ proposed }) };
}

/** What a proposal adds, in the way of measuring it that leads. */
function addedWords({ additions, thin, left, weighedDeltaE }: Proposal, settings: VolumeUnit): string {
  const asMeasured = leadsByWeight(left.deltaE, left.within, weighedDeltaE)
    ? additions.map(({ title, text, weighed }) => ({ title, text: weighed?.text ?? text }))
    : additions;
  return addedText(asMeasured, thin, settings);
}

/** A proposal as steps of the log. */
export function stepsOf(
  { additions, thin }: Pick<Proposal, 'additions' | 'thin'>,
  data: MatchPageData,
  weighing: boolean,
): readonly WorkStep[] {
  return [
    ...(thin ? [{ do: 'plastic' as const, ml: thin.ml }] : []),
    ...(additions.length > 0 ? [{ do: 'add' as const, amounts: amountsOf(additions, data, weighing) }] : []),
  ];
}
