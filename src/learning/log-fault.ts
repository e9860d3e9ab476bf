/**
 * What is told of a log that cannot be right.
 *
 * @packageDocumentation
 */

/** What may have gone wrong in the log of a cup, or with a look at it. */
export type LogSlip =
  /** It is logged, and did not go in. */
  | ({ readonly kind: 'left-out' } & Slipped)
  /** So much of it went in, and is not logged. */
  | ({ readonly kind: 'extra' } & Slipped)
  /** Another bottle was taken than is logged: so much of `instead`. */
  | ({ readonly kind: 'swapped'; readonly instead: string } & Slipped)
  /** It went in so many times as often as is logged: so much of it in all. */
  | ({ readonly kind: 'miscounted'; readonly times: number } & Slipped)
  /** The log is right, and the look is not: at another cup, or by another light. */
  | { readonly kind: 'bad-look'; readonly likely: number };

interface Slipped {
  /** As it is logged; of what is not logged, what went in. */
  readonly material: string;
  /** Place of the cup among the layers of what was looked at. */
  readonly layer: number;
  /** g per ml of the plastic that was in the cup at the first look that does not fit. */
  readonly gramsPerMl: number;
  /** How likely it is among all that was thought of: together they are 1. */
  readonly likely: number;
}

/** A cup whose looks do not fit its log, from some look on. */
export interface LogFault {
  readonly cup: string;
  /** The round of the first look that does not fit. */
  readonly round: number;
  /** The round of the last look before, which does. Unset: none is before. */
  readonly since?: number;
  /** Keys of the looks that do not fit, by round: one, or all from some round on. */
  readonly looks: readonly string[];
  /** How likely a log and looks that are right are as unlike all the rest as these. */
  readonly p: number;
  /** By how much the first of them is another colour than what is logged should be: ΔE00, the larger of its views. */
  readonly deltaE: number;
  /** How far that look is believed: 1 as noted, 0 not at all. */
  readonly weight: number;
  /** The likeliest first, three at most. */
  readonly slips: readonly LogSlip[];
}
