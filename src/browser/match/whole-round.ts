/**
 * A shot of a finished bait as a round of both cups: plastic leaves each, and each side is seen with the other cup behind it.
 *
 * @packageDocumentation
 */
import type { MeasuredBy } from './measured-by.ts';
import { type Work, type WorkStep, withSteps } from './work.ts';
import { cupNow, type LogShelf } from './work-log.ts';

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
