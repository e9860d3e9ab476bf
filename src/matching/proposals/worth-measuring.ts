import type { ExpectedDoses } from '../belief/expecting.ts';
import { WORKED_OUT } from '../conventions.ts';
import type { Ingredient } from '../measure/measure-doses.ts';
import type { Measuring } from '../measure/measuring.ts';
import type { FoundDoses } from '../search/find-doses.ts';
import { smallerDoses } from '../search/smaller-doses.ts';
import type { figuring } from './figures.ts';
import { inOrder, yardstickFor } from './order.ts';
import { toolsOf } from './proposal.ts';

// How many sets are judged, of all and of as many bottles each; of how many of those less is thought of; and how many of the nearest, and
// of the first that try no bottle, are proposed whatever the order. Conventions of this book.
const JUDGED = 40;
const OF_AS_MANY = 8;
const THOUGHT_SMALLER = 8;
const NEAREST = 5;
const OF_KNOWN = 3;

/** Doses, and what is to be expected of them. */
interface JudgedDoses {
  readonly each: FoundDoses;
  /** As they are measured, and what is to be expected of that. */
  readonly doses: Float64Array;
  readonly expectation: ExpectedDoses;
}

/**
 * Of exact doses, nearest first, those that are worth being proposed, whole or in part (see `smallerDoses`): the first by the order of
 * proposals, and the few that are expected nearest, all as they come out of drops, spoons or the scale: a set that is nearest in exact doses
 * may be far off in the drops that there are.
 */
export function worthMeasuring(
  found: readonly FoundDoses[],
  ingredients: readonly Ingredient[],
  { expect, figuresOf }: ReturnType<typeof figuring>,
  tolerance: number,
  measure: Measuring,
  plasticMl: readonly number[],
): readonly FoundDoses[] {
  const judge = (each: FoundDoses): readonly JudgedDoses[] => {
    const measured = measure(each);
    if (!measured) return [];
    const { doses, ingredients: amounts } = measured;
    return [{ each, doses, expectation: expect(doses, { toolOf: toolsOf(amounts), plasticMl }) }];
  };
  const whole = inReach(found).flatMap(judge).sort(byExpected);
  // Of one set what is expected nearest counts: no order takes less of it for less liquid.
  const judged = whole
    .map((each, place) =>
      place < THOUGHT_SMALLER
        ? [each, ...smallerDoses(each.each, ingredients).flatMap(judge)].reduce((best, next) =>
            byExpected(best, next) <= 0 ? best : next,
          )
        : each,
    )
    .sort(byExpected);
  const chosen = new Set(judged.slice(0, NEAREST));
  const figured = judged.map((each) => ({
    each,
    figures: {
      ...figuresOf(each.doses, { expectation: each.expectation }),
      cost: 0,
      names: each.each.set.map(String),
    },
  }));
  const yardstick = yardstickFor(
    figured.map(({ figures }) => figures),
    tolerance,
  );
  figured.sort((one, other) => inOrder(one.figures, other.figures, yardstick));
  // Nobody has to try a bottle.
  const known = figured.filter(({ figures }) => figures.untried === 0).slice(0, OF_KNOWN);
  for (const { each } of known) chosen.add(each);
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
