/**
 * The questions of matching, asked of a match in the making.
 *
 * @packageDocumentation
 */

import { cupLimits } from '../../book/match/cup-limits.ts';
import { steadiedBench } from '../../matching/belief/steadied-bench.ts';
import { type CupAnswer, type CupAsked, nextForCup } from '../../matching/cup-question.ts';
import { type FirstRecipe, firstRecipe } from '../../matching/first-recipe.ts';
import type { PartAsked } from '../../matching/first-recipe-question.ts';
import type { Proposal } from '../../matching/proposals/proposal.ts';
import type { RecipeAmount, RecipeProposal } from '../../matching/proposals/recipe-proposal.ts';
import { withWrongLog } from '../../matching/rounds/seen-and-believed.ts';
import type { WantedFlake } from '../../matching/substitutes/flake-match.ts';
import { seenWith } from '../../matching/target/seen-with.ts';
import type { MatchPageData, TaughtMatchData } from '../../render/pages/match.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import { bookPart } from './book-part.ts';
import { bookAmount, fileDose } from './dose-text.ts';
import { within } from './limits.ts';
import { bodyOf, logShelf } from './page-shelf.ts';
import { shelfLeft } from './shelf-left.ts';
import type { WorkFlake } from './side-flake.ts';
import { begunAnew, partOfSide, sideOf, type Work, type WorkAmount, type WorkSide, type WorkStep } from './work.ts';
import { keyOfWorkCup, knownCamera, type TaughtWork, taughtBeforeRound, taughtByWork } from './work-belief.ts';
import { bookColour } from './work-colour.ts';
import { type CupNow, cupNow, doubtOfSide, triedRounds } from './work-log.ts';
import { wrongLogOfWork } from './wrong-log.ts';

/** Recipes for one side, or for both together. */
export interface FirstAnswer {
  readonly part: string;
  readonly recipe: FirstRecipe;
}

/** All that is worked out of a cup. */
export interface CupAdvice extends CupAnswer {
  readonly now: CupNow;
  /** The other cup of a finished bait. */
  readonly other?: CupNow;
  readonly taught: TaughtWork;
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
    [{ name: 'body', thicknessMm: within('thicknessMm', mold.bodyMm) }],
  );
}

/** A new match with the mold, the plastic and the shelf of the one before: they seldom change. */
export function withCupOf(work: Work, { mold, plastic, plasticMl, tolerance, without, inStock, sides }: Work): Work {
  const thicknessMm = sides[0]!.thicknessMm;
  const same = { mold, plastic, plasticMl, tolerance, without, inStock };
  return { ...work, ...same, sides: work.sides.map((side) => ({ ...side, thicknessMm })) };
}

function withTarget(work: Work, sides: readonly WorkSide[]): Work {
  return { ...work, sides, cups: sides.map(({ name }) => ({ name, steps: [] })) };
}

/** The match begun with a target of the book. */
export function withBookTarget(work: Work, id: string, data: MatchPageData): Work {
  const target = data.targets.find((each) => each.id === id);
  if (!target) {
    const { target: _, whole: __, ...rest } = work;
    return rest;
  }
  // A laminate has two sides; of a target with more parts the first two are taken.
  const parts = target.parts.slice(0, 2);
  const isPlastic = (id: string | undefined): id is string =>
    data.materials.some((each) => each.id === id && each.kind === 'plastic');
  const [{ plastic: own }] = parts as [(typeof parts)[number]];
  const sides = parts.map(
    ({ name, overWhite, overBlack, thicknessMm, flakes, plastic }): WorkSide => ({
      name,
      overWhite: bookColour(overWhite),
      ...(overBlack && { overBlack: bookColour(overBlack) }),
      thicknessMm: within('thicknessMm', thicknessMm),
      flakes: flakes.map((flake) => keptFlake(flake)),
      ...(parts.length > 1 && isPlastic(plastic) ? { plastic } : {}),
    }),
  );
  const mold = data.molds.some((each) => each.id === target.mold) ? target.mold! : work.mold;
  const { whole: _, ...others } = work;
  return withTarget(
    {
      ...others,
      target: id,
      title: work.title,
      arrangement: sides.length === 1 ? 'solid' : target.apart || target.parts.length > 2 ? 'apart' : 'together',
      tolerance: within('tolerance', target.tolerance),
      mold,
      ...(parts.length === 1 && isPlastic(own) ? { plastic: own } : {}),
      ...(target.apart === false ? { whole: true } : {}),
    },
    sides,
  );
}

function keptFlake({ hex, sizeMm, coverage }: WantedFlake): WorkFlake {
  const kept = coverage === undefined ? {} : { coverage: within('coverage', coverage) };
  return { hex, sizeMm: within('flakeMm', sizeMm), ...kept };
}

/** A side as matching takes it; what was measured of the target's part counts while the side has its colours. */
function asked(side: WorkSide, work: Work, data: MatchPageData): PartAsked {
  const part = bookPart(side, work, data);
  const { flakes = part?.flakes, plastic } = side;
  return {
    ...partOfSide(side),
    ...(part
      ? seenWith(part.doubt, part.cameraNumber)
      : seenWith(doubtOfSide(side), knownCamera(side.measured, work, data))),
    ...defined({ reflectance: part?.reflectance, flakes, plastic }),
  };
}

/** What the target does beside being of a colour; one that is described on the page does nothing. */
function effectOf({ target }: Work, data: MatchPageData): MatchPageData['targets'][number]['effect'] {
  return data.targets.find(({ id }) => id === target)?.effect;
}

/** First recipes for the sides of a match. */
export function firstAnswers(work: Work, data: TaughtMatchData): readonly FirstAnswer[] {
  const { belief, optics, shelf } = taughtByWork(work, data);
  const ask = (sides: readonly WorkSide[], anew: readonly number[]): FirstRecipe =>
    firstRecipe({
      parts: sides.map((side) => asked(side, work, data)),
      mold: required(data.molds, work.mold),
      plastic: work.plastic,
      plasticMl: work.plasticMl,
      shelf: shelfLeft(work, { materials: shelf }, anew),
      optics,
      belief,
      bench: steadiedBench(data.settings, belief, shelf),
      tolerance: work.tolerance,
      limits: cupLimits(data.settings, { ...work, effect: effectOf(work, data) }),
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
  amounts: readonly Pick<RecipeAmount, 'material' | 'cut' | 'grams' | 'text' | 'weighed'>[],
  data: MatchPageData,
  weighing = false,
): readonly WorkAmount[] {
  return amounts.map((amount) => {
    const { grams: bottle, text, cut } = weighing ? (amount.weighed ?? amount) : amount;
    const dosed = cut ?? required(data.materials, amount.material);
    const grams = bottle / (cut?.bottlePerGram ?? 1);
    return bookAmount({ material: dosed.id, dose: fileDose({ grams, text }, dosed), grams }, dosed);
  });
}

/** A cup of a match as it is asked about, judged as the book judges the recipe that is taken away. */
function askedCup(
  work: Work,
  index: number,
  { now, other }: Pick<CupAdvice, 'now' | 'other'>,
  data: MatchPageData,
): CupAsked {
  const bodyMm = bodyOf(work, data);
  const { flakes, plastic: _, ...part } = asked(sideOf(work, index), work, data);
  return {
    start: now.start,
    rounds: triedRounds(now, bodyMm, other),
    key: keyOfWorkCup(work, index, now.rounds),
    part,
    ...defined({ flakes }),
    other: other && {
      cup: other.last,
      share: HALF,
    },
    bodyMm,
    startMl: work.plasticMl,
    heats: now.heats,
  };
}

// The recipe's file gives no shares, so both cups of a laminate have half of the bait.
const HALF = 0.5;

/** What a cup is to show, what it is like now, and what to add to it. */
export function adviceFor(work: Work, index: number, data: TaughtMatchData): CupAdvice {
  const { settings } = data;
  const now = cupNow(work, index, logShelf(data));
  const other = work.arrangement === 'together' ? cupNow(work, 1 - index, logShelf(data)) : undefined;
  const taught = taughtByWork(work, data);
  const { belief, optics, shelf } = taught;
  const answer = nextForCup(askedCup(work, index, { now, ...defined({ other }) }, data), {
    shelf: shelfLeft(work, { materials: shelf }),
    before: (cup, round) => {
      const then = taughtBeforeRound(work, data, cup, round);
      return { ...then, shelf: shelfLeft(work, { materials: then.shelf }) };
    },
    optics,
    belief,
    bench: steadiedBench(settings, belief, shelf),
    tolerance: work.tolerance,
    limits: cupLimits(settings, { ...work, effect: effectOf(work, data) }),
  });
  const key = keyOfWorkCup(work, index, now.rounds);
  return {
    now,
    ...defined({ other }),
    taught,
    ...answer,
    next: withWrongLog(answer.next, () => wrongLogOfWork(taught.learned, key, now, data)),
  };
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
