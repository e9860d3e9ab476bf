/**
 * The part of Match that works out: loaded when the first cup is to be judged, since until then it is half of the page's program.
 *
 * What the page itself needs of it are types alone.
 *
 * @packageDocumentation
 */
import type { adviceFor, firstAnswers } from './ask.ts';
import type { aloneNow, lookNow, roundsSeen } from './cup-looks.ts';
import type { taughtData } from './taught-data.ts';

/** What is left in the window of the page that has loaded it. */
export interface Solver {
  readonly adviceFor: typeof adviceFor;
  readonly firstAnswers: typeof firstAnswers;
  readonly aloneNow: typeof aloneNow;
  readonly lookNow: typeof lookNow;
  readonly roundsSeen: typeof roundsSeen;
  readonly taughtData: typeof taughtData;
}

/** Under this name. */
export const SOLVER_AS = 'cupbookSolver';
