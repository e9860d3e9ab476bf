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
import { withWrongLog } from '../../matching/rounds/seen-and-believed.ts';
import { seenWith } from '../../matching/target/seen-with.ts';
import type { MatchPageData, TaughtMatchData } from '../../render/pages/match.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import { bookPart } from './book-part.ts';
import { bodyOf, logShelf } from './page-shelf.ts';
import { shelfLeft } from './shelf-left.ts';
import { partOfSide, sideOf, type Work, type WorkSide } from './work.ts';
import { keyOfWorkCup, knownCamera, type TaughtWork, taughtBeforeRound, taughtByWork } from './work-belief.ts';
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
