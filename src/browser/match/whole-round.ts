/**
 * A shot of a finished bait as a round of both cups: plastic leaves each, and each side is seen with the other cup behind it.
 *
 * @packageDocumentation
 */
import type { MeasuredBy } from './measured-by.ts';
import { doings, type Work, type WorkStep, withCup, withoutLastDone, withSteps } from './work.ts';
import { cupNow, type LogShelf, roundOfStep } from './work-log.ts';

/**
 * The match with a shot of both cups.
 *
 * @param sides what was done to each cup, its pour and its look among it
 * @param by how the colours of each side were measured, if photos did
 */
export function withWholeRound(
  work: Work,
  sides: readonly (readonly WorkStep[])[],
  shelf: LogShelf,
  by: readonly ({ readonly measured?: MeasuredBy | undefined } | undefined)[],
): Work {
  const add = (steps: (at: number) => readonly WorkStep[]): Work =>
    sides.reduce((all, _, at) => withSteps(all, at, ...steps(at)), work);
  const poured = add((at) => sides[at]!.filter((step) => step.do !== 'see'));
  const rounds = sides.map((_, at) => cupNow(poured, at, shelf).rounds.at(-1)!.number);
  return add((at) =>
    sides[at]!.map((step): WorkStep => {
      if (step.do === 'pour') return { ...step, whole: true };
      if (step.do !== 'see') return step;
      const measured = step.overWhite || step.overBlack ? by[at]?.measured : undefined;
      return { ...step, behind: rounds[1 - at]!, ...(measured && { measured }) };
    }),
  );
}

/** Whether a shot was looked at after the same rounds of both cups as one before it: nothing went in between, as far as the log says. */
export function isLoggedTwice(before: Work, after: Work, shelf: LogShelf): boolean {
  return after.cups.some((_, at) => {
    const looks = cupNow(before, at, shelf).whole;
    const [now] = cupNow(after, at, shelf).whole.slice(looks.length);
    return now !== undefined && looks.some(({ round, behind }) => round === now.round && behind === now.behind);
  });
}

/** The last shot of both cups, taken back. */
export interface TakenBack {
  readonly work: Work;
  /** What the shot was in the log of the other cup. */
  readonly other: readonly WorkStep[];
}

/**
 * The match without what was done last to a cup, where that was a shot of both: the other cup gets its plastic and its look back too,
 * whatever was done to it since. Undefined where what was done last was done to that cup alone.
 */
export function withoutWholeRound(work: Work, index: number, shelf: LogShelf): TakenBack | undefined {
  if (work.cups.length < 2) return undefined;
  const last = shotsOf(work, index, shelf).at(-1);
  const same = shotsOf(work, 1 - index, shelf).at(-1);
  if (!last || !same || last.at !== doings(work.cups[index]!.steps).length - 1 || !isSameShot(last, same))
    return undefined;
  const other = doings(work.cups[1 - index]!.steps);
  return {
    work: withCup(withoutLastDone(work, index), 1 - index, (cup) => ({
      ...cup,
      steps: other.toSpliced(same.at, 1).flat(),
    })),
    other: other[same.at]!,
  };
}

/** A shot of both cups in the log of one. */
interface Shot {
  /** Which of the things that were done to the cup it is. */
  readonly at: number;
  readonly ml: number;
  readonly round: number;
  /** Round of the other cup before which its side was seen; undefined where it was not. */
  readonly behind: number | undefined;
}

function shotsOf(work: Work, index: number, shelf: LogShelf): readonly Shot[] {
  const { rounds } = cupNow(work, index, shelf);
  let steps = 0;
  return doings(work.cups[index]!.steps).flatMap((done, at): Shot[] => {
    steps += done.length;
    const pour = done.find((step) => step.do === 'pour');
    const behind = done.find((step) => step.do === 'see')?.behind;
    if (!pour || (!pour.whole && behind === undefined)) return [];
    return [{ at, ml: pour.ml, round: roundOfStep(rounds, steps - 1), behind }];
  });
}

/** Whether nothing speaks against it that two pours are one shot. */
function isSameShot(one: Shot, other: Shot): boolean {
  const seenBefore = ({ behind }: Shot, { round }: Shot): boolean => behind === undefined || behind === round;
  return one.ml === other.ml && seenBefore(one, other) && seenBefore(other, one);
}
