import type { ExpectedDoses } from '../belief/expecting.ts';
import { WORKED_OUT } from '../conventions.ts';
import type { Ingredient } from '../measure/measure-doses.ts';
import type { FoundDoses } from '../search/find-doses.ts';
import { smallerDoses } from '../search/smaller-doses.ts';
import type { figuring } from './figures.ts';
import { inOrder, yardstickFor } from './order.ts';

// How many sets are judged, of all and of as many bottles each; of how many of those less is thought of; and how many of the nearest are
// measured whatever the order. Conventions of this book.
const JUDGED = 40;
const OF_AS_MANY = 8;
const THOUGHT_SMALLER = 16;
const NEAREST = 5;

/** Doses, and what is to be expected of them. */
interface JudgedDoses {
  readonly each: FoundDoses;
  readonly expectation: ExpectedDoses;
}

/**
 * Of exact doses, nearest first, those that are worth being measured, whole or in part (see `smallerDoses`): the first by the order of
 * proposals, and the few that are expected nearest.
 */
export function worthMeasuring(
  found: readonly FoundDoses[],
  ingredients: readonly Ingredient[],
  { expect, figuresOf }: ReturnType<typeof figuring>,
  tolerance: number,
): readonly FoundDoses[] {
  const judge = (each: FoundDoses): JudgedDoses => ({ each, expectation: expect(each.doses) });
  const whole = inReach(found).map(judge).sort(byExpected);
  // Of one set what is expected nearest counts: no order takes less of it for less liquid.
  const judged = whole
    .map((each, place) =>
      place < THOUGHT_SMALLER
        ? [each, ...smallerDoses(each.each, ingredients).map(judge)].reduce((best, next) =>
            byExpected(best, next) <= 0 ? best : next,
          )
        : each,
    )
    .sort(byExpected);
  const chosen = new Set(judged.slice(0, NEAREST));
  const figured = judged.map((each) => ({
    each,
    figures: {
      ...figuresOf(each.each.doses, { expectation: each.expectation }),
      cost: 0,
      names: each.each.set.map(String),
    },
  }));
  const yardstick = yardstickFor(
    figured.map(({ figures }) => figures),
    tolerance,
  );
  figured.sort((one, other) => inOrder(one.figures, other.figures, yardstick));
  for (const { each } of figured) {
    if (chosen.size >= WORKED_OUT) break;
    chosen.add(each);
  }
  return judged.flatMap((each) => (chosen.has(each) ? [each.each] : []));
}

function byExpected(one: JudgedDoses, other: JudgedDoses): number {
  return one.expectation.expected - other.expectation.expected;
}

/** The nearest of all, and the nearest of each number of bottles: of four there are always many that come nearer than the best of two. */
function inReach(found: readonly FoundDoses[]): readonly FoundDoses[] {
  const ofAsMany = new Map<number, number>();
  return found.filter(({ set }, place) => {
    const before = ofAsMany.get(set.length) ?? 0;
    ofAsMany.set(set.length, before + 1);
    return place < JUDGED || before < OF_AS_MANY;
  });
}
