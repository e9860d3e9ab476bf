import type { SeenPair } from '../physics/eye.ts';
import type { SizedSlip } from './slips.ts';
import type { Promised } from './what-to-do.ts';

/** A round of a course. */
export interface RoundResult {
  /** What the cup was really off its target by, ΔE00, the larger of both views. */
  readonly deltaE: number;
  /** What went wrong in it. */
  readonly slips?: readonly SizedSlip[];
  /** Its look is not of what is logged, by a slip of this round or of one before. */
  readonly isFaulty?: true;
  /** What the book told of the log then. */
  readonly told?: readonly string[];
}

/** What came of one match. */
export interface CourseResult {
  readonly number: number;
  /** Of the first pour; missing where plain plastic was poured. */
  readonly promised?: Promised;
  readonly rounds: readonly RoundResult[];
  /** What its last cup really looks like, where it was looked at without a slip. */
  readonly shown?: SeenPair;
  /** What the book tells of its log once all recipes are made. */
  readonly toldAtLast?: readonly string[];
  /** How the book ended it, and how likely it then said it was that the cup is right, 0 to 1; missing where it says no such thing. */
  readonly ended: string;
  readonly likely?: number;
}
