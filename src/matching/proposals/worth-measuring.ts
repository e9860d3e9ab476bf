import { WORKED_OUT } from '../conventions.ts';
import type { FoundDoses } from '../search/find-doses.ts';
import type { DoseFigures } from './figures.ts';
import { inOrder } from './order.ts';

// How many of those that come nearest are put in order, of all and of as many bottles each, and how many of the nearest are measured
// whatever the order. Conventions of this book.
const PUT_IN_ORDER = 48;
const OF_AS_MANY = 8;
const NEAREST = 5;

/** Of exact doses, nearest first, those that are worth being measured: the first by the order of proposals, and the few that come nearest. */
export function worthMeasuring(
  found: readonly FoundDoses[],
  figuresOf: (doses: Float64Array) => DoseFigures,
  tolerance: number,
): readonly FoundDoses[] {
  if (found.length <= WORKED_OUT) return found;
  const chosen = new Set(found.slice(0, NEAREST));
  const ordered = inReach(found)
    .map((each) => ({ each, figures: { ...figuresOf(each.doses), cost: 0, names: each.set.map(String) } }))
    .sort((one, other) => inOrder(one.figures, other.figures, tolerance));
  for (const { each } of ordered) {
    if (chosen.size >= WORKED_OUT) break;
    chosen.add(each);
  }
  return found.filter((each) => chosen.has(each));
}

/** The nearest of all, and the nearest of each number of bottles: of four there are always many that come nearer than the best of two. */
function inReach(found: readonly FoundDoses[]): readonly FoundDoses[] {
  const ofAsMany = new Map<number, number>();
  return found.filter(({ set }, place) => {
    const before = ofAsMany.get(set.length) ?? 0;
    ofAsMany.set(set.length, before + 1);
    return place < PUT_IN_ORDER || before < OF_AS_MANY;
  });
}
