import { MOST } from './limits.ts';
import { cupLogs, joinedLogs, type Work, type WorkCup } from './work.ts';

/**
 * A match as it can be kept and read again: without the oldest of the cups that were given up, where they are too many or too long.
 * Undefined where the log of a cup itself is.
 */
export function fittedWork(work: Work): Work | undefined {
  const logs = work.cups.map(({ steps }) => cupLogs(steps));
  if (logs.some((cups) => cups.at(-1)!.length > MOST.steps)) return undefined;
  const givenUp = Math.max(0, ...logs.map((cups) => cups.length - 1));
  for (let most = Math.min(MOST.earlier, givenUp); most >= 0; most--) {
    const fitted = most === givenUp ? work : withLatest(work, most);
    if (exportedText(fitted).length <= MOST.exported) return fitted;
  }
  return undefined;
}

/** A match as it is exported. */
export function exportedText(work: Work): string {
  return `${JSON.stringify(work, null, 2)}\n`;
}

function withLatest(work: Work, givenUp: number): Work {
  // With the cups that go, rounds get other numbers, by which looks at finished baits know them.
  const kept = (steps: WorkCup['steps']): WorkCup['steps'] =>
    steps.filter((step) => step.do !== 'see' || step.behind === undefined);
  const cups = work.cups.map((cup) => ({
    ...cup,
    steps: joinedLogs(cupLogs(kept(cup.steps)).slice(-1 - givenUp)),
  }));
  return { ...work, cups };
}
