import { MOST } from './limits.ts';
import type { Work } from './work.ts';

/**
 * A match as it can be kept and read again: without the oldest of the cups that were given up, where they are too many or too long.
 * Undefined where the log of a cup itself is.
 */
export function fittedWork(work: Work): Work | undefined {
  if (work.cups.some(({ steps }) => steps.length > MOST.steps)) return undefined;
  const givenUp = Math.max(0, ...work.cups.map(({ earlier = [] }) => earlier.length));
  for (let most = Math.min(MOST.earlier, givenUp); most >= 0; most--) {
    const fitted = withLatest(work, most);
    if (exportedText(fitted).length <= MOST.exported) return fitted;
  }
  return undefined;
}

/** A match as it is exported. */
export function exportedText(work: Work): string {
  return `${JSON.stringify(work, null, 2)}\n`;
}

function withLatest(work: Work, most: number): Work {
  if (work.cups.every(({ earlier = [] }) => earlier.length <= most)) return work;
  const cups = work.cups.map((cup) =>
    cup.earlier === undefined ? cup : { ...cup, earlier: most === 0 ? [] : cup.earlier.slice(-most) },
  );
  return { ...work, cups };
}
